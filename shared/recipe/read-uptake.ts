import { readAmount } from "../quantity/read-amount.ts";
import type { Amount } from "../quantity/types.ts";
import { fold } from "../words/fold.ts";

/** What a line says about how much of it is eaten. */
export type ReadUptake =
  /** This share of it, 0 to 1. */
  | { readonly kind: "share"; readonly share: number }
  /** This amount is eaten, or is not. */
  | { readonly kind: "amount"; readonly amount: Amount; readonly eaten: boolean }
  | { readonly kind: "deep frying" }
  /** Not all is eaten, and nothing says how much. */
  | { readonly kind: "no figure" };

const KEPT = "(?:taken up|taken in|absorbed|soaked up|soaks in|kept|eaten)";
const GONE =
  "(?:poured (?:off|away)|drained off|discarded|thrown away|tipped away|left (?:behind|over|in the (?:pan|tin|tray|bowl|pot|fryer|bag))|not eaten)";
const ABOUT = "(?:about|approx\\.?|approximately|roughly|around|some|~) ?";
const OF_IT = "(?: of (?:it|this|that|the [a-z]{1,20}))?(?: (?:is|are|gets?|will be))?";
const SHARE = new RegExp(
  `^(?:${ABOUT})?(\\d{1,3}(?:\\.\\d{1,2})?) ?(?:%|per ?cent)${OF_IT} (?:(${KEPT})|(${GONE}))\\b`,
  "u",
);
const WORDED: readonly (readonly [words: string, share: number])[] = [
  ["half", 1 / 2],
  ["(?:a|one) third", 1 / 3],
  ["two thirds", 2 / 3],
  ["(?:a|one) quarter", 1 / 4],
  ["three quarters", 3 / 4],
  ["(?:a|one) tenth", 1 / 10],
  ["none|nothing", 0],
];
const WORDED_SHARES = WORDED.map(([words, share]): readonly [RegExp, number] => [
  new RegExp(`^(?:${ABOUT})?(?:${words})${OF_IT} (?:(${KEPT})|(${GONE}))\\b`, "u"),
  share,
]);
const AFTER_AMOUNT = new RegExp(`^${OF_IT} (?:(${KEPT})|(${GONE}))\\b`, "u");
const ABOUT_FIRST = new RegExp(`^${ABOUT}`, "u");
/** Most lines say nothing of the kind: a look that costs nothing. */
const MAY_SAY =
  /taken|absorb|soak|kept|eaten|pour|drain|discard|thrown|tipped|left|fr(?:y|ier)|for /iu;
const DEEP_FRYING = /\bdeep[- ]?fr(?:y|ying|ier|yer)\b/u;
/** "seeds discarded" speaks of something else: nothing but small words may stand before. */
const NO_FIGURE = new RegExp(
  `^(?:(?:then|and|all|it|the|rest|most|is|are|of|to|be|which|that|marinade|brine|afterwards|later) ?)*${GONE}$|^for the (?:[a-z]{1,12} )?(?:water|brine|marinade)$|^for (?:brining|marinating)\\b`,
  "u",
);

/** Reads how much of a line is eaten from what stands after the food; null when all of it is. */
export function readUptake(text: string): ReadUptake | null {
  if (!MAY_SAY.test(text)) return null;
  const pieces = fold(text.slice(0, 300))
    .split(/; ?|, /u)
    .map((piece) => piece.trim());
  for (const piece of pieces) {
    const read = shareIn(piece) ?? amountIn(piece);
    if (read !== null) return read;
  }
  if (pieces.some((piece) => DEEP_FRYING.test(piece))) return { kind: "deep frying" };
  return pieces.some((piece) => NO_FIGURE.test(piece)) ? { kind: "no figure" } : null;
}

function shareIn(piece: string): ReadUptake | null {
  const match = SHARE.exec(piece);
  if (match !== null) return eatenShare(Number(match[1]) / 100, match[2] !== undefined);
  for (const [pattern, share] of WORDED_SHARES) {
    const worded = pattern.exec(piece);
    if (worded !== null) return eatenShare(share, worded[1] !== undefined);
  }
  return null;
}

function eatenShare(share: number, isKept: boolean): ReadUptake | null {
  if (share > 1) return null;
  // "None of it is poured off" is all of it eaten.
  return { kind: "share", share: isKept ? share : 1 - share };
}

function amountIn(piece: string): ReadUptake | null {
  const read = readAmount(piece.replace(ABOUT_FIRST, ""));
  if (!read.ok || read.value.amount.unit === "piece") return null;
  const match = AFTER_AMOUNT.exec(` ${read.value.rest}`);
  if (match === null) return null;
  return { kind: "amount", amount: read.value.amount, eaten: match[1] !== undefined };
}
