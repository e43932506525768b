import type { PieceSize } from "../food/weigh.ts";
import { fold, foldWords } from "../words/fold.ts";

/** Weighed with what is not eaten: shell, bone, peel, stone. */
const AS_BOUGHT =
  /\b(?:unpeeled|untrimmed|unshelled|unpitted|unhusked|bone[- ]?in|(?:with|on) (?:the |its |their )?(?:bones?|shells?|stones?|husks?)|in (?:the |its |their )?(?:shells?|pods?|husks?)|shells?[- ]on|stones?[- ]in|as (?:bought|purchased)|gross weight)\b/u;
/** Eaten as it is: the weight is edible although nothing was taken off. */
const EATEN_WHOLE = /\b(?:scrubbed|skins? left on|bones? removed|boned|shells? removed|peeled)\b/u;

/** Whether a line's weight is that of the food as bought, refuse and all. */
export function isAsBought(text: string): boolean {
  const said = fold(text.slice(0, 300));
  return AS_BOUGHT.test(said) && !EATEN_WHOLE.test(said);
}

/** "2 large onions": the size of what is counted; null when the line does not say. */
export function sizeIn(text: string): PieceSize | null {
  const words = foldWords(text.slice(0, 200));
  if (/\b(?:extra large|xl)\b/u.test(words)) return "extra large";
  const match = /\b(small|medium|large|jumbo)\b/u.exec(words);
  return match === null ? null : (match[1] as PieceSize);
}

const COOKED =
  /(?<!\b(?:un|half|part|par|pre|semi)[- ]?)\b(?:cooked|boiled|leftover)\b|\b(?:steamed|microwave|ready[- ]to[- ]eat)\b(?=.*\b(?:rice|grains?|quinoa|couscous|bulgur|barley|lentils?|noodles?)\b)/gu;
const DRY = /\b(?:dry|dried|uncooked|raw)\b/gu;

/** The state that a cook names: cooked, or dry; null when none is said, or both. */
export function saidState(text: string): "cooked" | "dry" | null {
  const said = fold(text.slice(0, 300));
  const isCooked = said.search(COOKED) >= 0;
  const isDry = said.search(DRY) >= 0;
  if (isCooked === isDry) return null;
  return isCooked ? "cooked" : "dry";
}

/** A name without the words for cooked and dry. */
export function withoutState(text: string): string {
  return fold(text.slice(0, 300))
    .replace(COOKED, " ")
    .replace(DRY, " ")
    .replace(/\s+/gu, " ")
    .trim();
}
