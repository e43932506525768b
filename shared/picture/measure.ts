/** Advance widths of the font "DejaVu Sans" in hundredths of the size, rounded up to five. */
const WIDTHS: readonly (readonly [number, string])[] = [
  [30, "'IJijl"],
  [35, " ,./:;\\|"],
  [40, "()-[]ft"],
  [45, "!r"],
  [50, '"*_`'],
  [55, "?csz"],
  [60, "FLkvxy"],
  [65, "$0123456789EPSTYabdeghnopqu{}"],
  [70, "ABCKRVXZ"],
  [75, "NU"],
  [80, "&DGHOQ"],
  [85, "#+<=>^w~≥"],
  [90, "M"],
];
const WIDTH_OF = new Map(WIDTHS.flatMap(([width, all]) => [...all].map((one) => [one, width])));
/** Of everything that is not in the list: as wide as an "m". */
const WIDEST = 100;
/** The bold face is wider. */
const BOLD = 1.15;

/** The font of a line of text. */
export interface Face {
  readonly sizePx: number;
  readonly bold?: boolean;
}

/** About how wide a line will be, in pixels; rather too wide than too narrow. */
export function widthPx(text: string, { sizePx, bold = false }: Face): number {
  // An accent takes no room of its own.
  const plain = text.normalize("NFD").replace(/\p{M}/gu, "");
  const hundredths = [...plain].reduce((sum, one) => sum + (WIDTH_OF.get(one) ?? WIDEST), 0);
  return (hundredths / 100) * sizePx * (bold ? BOLD : 1);
}

/** Text that fits, its end given up for "…" where it does not. */
export function shorten(text: string, face: Face, maxPx: number): string {
  if (widthPx(text, face) <= maxPx) return text;
  const kept: string[] = [];
  for (const one of text) {
    if (widthPx(`${[...kept, one].join("")}…`, face) > maxPx) break;
    kept.push(one);
  }
  return `${kept.join("").trimEnd()}…`;
}

/** Text broken at spaces into at most `linesMax` lines; what is left over is given up for "…". */
export function breakLines(
  text: string,
  face: Face,
  maxPx: number,
  linesMax: number,
): readonly string[] {
  const lines: string[] = [];
  let rest = text.trim().split(" ");
  while (rest.length > 0 && lines.length < linesMax - 1) {
    const taken = wordsThatFit(rest, face, maxPx);
    lines.push(shorten(rest.slice(0, taken).join(" "), face, maxPx));
    rest = rest.slice(taken);
  }
  return rest.length === 0 ? lines : [...lines, shorten(rest.join(" "), face, maxPx)];
}

/** At least one, even when it is too long. */
function wordsThatFit(words: readonly string[], face: Face, maxPx: number): number {
  let taken = 1;
  while (taken < words.length && widthPx(words.slice(0, taken + 1).join(" "), face) <= maxPx) {
    taken += 1;
  }
  return taken;
}
