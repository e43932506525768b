/**
 * Advance widths of the font "DejaVu Sans" in hundredths of the size, rounded up to five: letters without
 * accents of the Latin, Greek and Cyrillic scripts, and signs.
 */
const WIDTHS: readonly (readonly [number, string])[] = [
  [30, "'IJijlıłΙІЈіј"],
  [35, " \u00A0,./:;\\|·ι‘’‚"],
  [40, "()-[]ft‐‑"],
  [45, "!r¡²³¹"],
  [50, '"*_`ª°º–'],
  [55, "?csz¿εζгзсэєѕґ“”„"],
  [60, "FLkvxyĸŁΓγκλνξςυχвтухчь•"],
  [65, "$0123456789EPSTYabdeghnopqu{}£«»ÞßðøþŋΕΞΡΣΤΥβδηθμοπρστЅГЕЗРТУабеиклоряђҐ€"],
  [70, "ABCKRVXZΑΒΔΖΚΛΧαφψЄАБВСХЧЬЭЯднпцћџ"],
  [75, "NUŊΝИКъ"],
  [80, "&DGHOQÐØΗΘΟΠΦΨΩЂЋЏДЛНОПЦмы"],
  [85, "#+<=>^w~±×÷ωЪю←→≤≥"],
  [90, "MΜМФЫфњ"],
  [95, "жшщљ"],
  [110, "œЊŒЉЖШЩЮ"],
  [135, "‰"],
];
const WIDTH_OF = new Map(WIDTHS.flatMap(([width, all]) => [...all].map((one) => [one, width])));
/** Of everything that is not in the list: as wide as an "m". */
const WIDEST = 100;
/** Some Arabic letters that stand alone are wider than any other. */
const ARABIC = /\p{Script=Arabic}/u;
const ARABIC_WIDEST = 125;
/** The bold face is wider, and of some letters wider still. */
const BOLD = 1.15;
const BOLD_MOST = 1.25;
const MUCH_BOLDER = new Set("IJtłΙκπσІЈУЦЧЩЫдщ“”„");

/** The font of a line of text. */
export interface Face {
  readonly sizePx: number;
  readonly bold?: boolean;
}

/** About how wide a line will be, in pixels; rather too wide than too narrow. */
export function widthPx(text: string, { sizePx, bold = false }: Face): number {
  // An accent takes no room of its own.
  const plain = text.normalize("NFD").replace(/\p{M}/gu, "");
  const hundredths = [...plain].reduce((sum, one) => sum + hundredthsOf(one, bold), 0);
  return (hundredths / 100) * sizePx;
}

function hundredthsOf(one: string, bold: boolean): number {
  const width = WIDTH_OF.get(one) ?? (ARABIC.test(one) ? ARABIC_WIDEST : WIDEST);
  if (!bold) return width;
  return width * (MUCH_BOLDER.has(one) ? BOLD_MOST : BOLD);
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
