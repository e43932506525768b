import { cleanLine } from "../picture/svg.ts";

/** What the fonts of a label have a glyph for, both in regular and in bold. */
const RANGES: readonly (readonly [number, number])[] = [
  [0x20, 0x7e],
  [0xa0, 0x24f],
  // Accents that stand on a letter.
  [0x300, 0x30c],
  [0x323, 0x328],
  // Greek, Cyrillic, Armenian, Hebrew, Arabic and Persian, Georgian.
  [0x386, 0x38a],
  [0x38c, 0x38c],
  [0x38e, 0x3a1],
  [0x3a3, 0x3ce],
  [0x400, 0x525],
  [0x531, 0x556],
  [0x561, 0x587],
  [0x5d0, 0x5ea],
  [0x621, 0x63a],
  [0x641, 0x64a],
  [0x67e, 0x67e],
  [0x686, 0x686],
  [0x698, 0x698],
  [0x6a9, 0x6a9],
  [0x6af, 0x6af],
  [0x6cc, 0x6cc],
  [0x10d0, 0x10f0],
  [0x1e00, 0x1ef9],
  // Dashes, quotes, and a few signs.
  [0x2010, 0x2026],
  [0x2030, 0x2030],
  [0x20ac, 0x20ac],
  [0x2190, 0x2193],
  [0x2264, 0x2265],
];
const RIGHT_TO_LEFT = /[\u0590-\u06FF]/u;
const LEFT_TO_RIGHT = /[\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{N}]/u;
const LETTER = /[\p{L}\p{N}]/gu;
/** Nobody reads more on a label, and time must be bounded. */
const CHARACTERS_MAX = 600;

/** One line of text as far as a label can print it. */
interface Printable {
  readonly text: string;
  /** False where letters had to be left out. */
  readonly isWhole: boolean;
}

/**
 * What of a member's text can be printed. Empty where less than half of its letters are left, and where
 * writing from the left and from the right are mixed in one word, which would come out in the wrong order.
 */
export function printable(text: string): Printable {
  const clean = cleanLine(text.slice(0, CHARACTERS_MAX));
  const kept = [...clean].filter(hasGlyph).join("");
  const [before, after] = [lettersIn(clean), lettersIn(kept)];
  const isMixed = kept
    .split(" ")
    .some((word) => RIGHT_TO_LEFT.test(word) && LEFT_TO_RIGHT.test(word));
  if (isMixed || after === 0 || after * 2 < before) return { text: "", isWhole: before === 0 };
  return { text: cleanLine(kept), isWhole: after === before && text.length <= CHARACTERS_MAX };
}

function hasGlyph(one: string): boolean {
  const point = one.codePointAt(0) ?? 0;
  return RANGES.some(([from, to]) => point >= from && point <= to);
}

function lettersIn(text: string): number {
  return text.match(LETTER)?.length ?? 0;
}
