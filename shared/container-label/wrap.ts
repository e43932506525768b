import { widthPx } from "../picture/measure.ts";
import { MM_PER_PT } from "../picture/print.ts";

/** The type of a line on paper. */
export interface Type {
  readonly sizePt: number;
  readonly bold: boolean;
}

/** How wide a line of text is, rather too much than too little, in millimetres. */
export function widthMm(text: string, { sizePt, bold }: Type): number {
  return widthPx(text, { sizePx: sizePt * MM_PER_PT, bold });
}

/** A figure stays with its unit, and a date in one piece. */
const GLUED =
  /(?<=\d) (?=°|k?g\b|kcal\b|days?\b|foods?\b|(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)\b)|(?<=\b(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun)) (?=\d)/gu;
const GLUE = "\u00A0";

/** Text in lines that fit; a word longer than a line is broken with a hyphen. */
export function wrapText(text: string, type: Type, maxMm: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  let lineMm = 0;
  const spaceMm = widthMm(" ", type);
  for (const word of text
    .replace(GLUED, GLUE)
    .split(" ")
    .flatMap((one) => broken(one, type, maxMm))) {
    const wordMm = widthMm(word, type);
    if (line !== "" && lineMm + spaceMm + wordMm > maxMm) {
      lines.push(line);
      line = "";
    }
    lineMm = line === "" ? wordMm : lineMm + spaceMm + wordMm;
    line = line === "" ? word : `${line} ${word}`;
  }
  const all = line === "" ? lines : [...lines, line];
  return all.map((one) => one.replaceAll(GLUE, " "));
}

/** The first lines; what is left over is given up for "…". */
export function firstLines(
  lines: readonly string[],
  most: number,
  type: Type,
  maxMm: number,
): readonly string[] {
  if (lines.length <= most) return lines;
  const kept = charactersOf(lines[most - 1] ?? "");
  while (kept.length > 0 && widthMm(`${kept.join("")}…`, type) > maxMm) kept.pop();
  return [...lines.slice(0, most - 1), `${kept.join("").replace(/[\s-]+$/u, "")}…`];
}

/** A word in pieces that fit, all but the last with a hyphen. */
function broken(word: string, type: Type, maxMm: number): readonly string[] {
  if (widthMm(word, type) <= maxMm) return [word];
  const pieces: string[] = [];
  const hyphenMm = widthMm("-", type);
  let piece = "";
  let pieceMm = 0;
  for (const one of charactersOf(word)) {
    const oneMm = widthMm(one, type);
    if (piece !== "" && pieceMm + oneMm + hyphenMm > maxMm) {
      pieces.push(`${piece}-`);
      piece = "";
      pieceMm = 0;
    }
    piece += one;
    pieceMm += oneMm;
  }
  return [...pieces, piece];
}

/** Characters with the accents that stand on them. */
function charactersOf(text: string): string[] {
  return text.match(/\P{M}\p{M}*|\p{M}+/gu) ?? [];
}
