import type { FoodBook } from "../food/book.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import type { SpoonSet } from "../quantity/types.ts";
import { type InHand, readInHand } from "./in-hand.ts";
import type { ScaleProblem } from "./problems.ts";
import type { Recipe } from "./types.ts";

/** More foods than any cook counts out; keeps the work bounded. */
const FOODS_MAX = 12;

/** Between two foods; not the comma of "1,5 kg". */
const BETWEEN = /\s*(?:;|\n|\+|&|,(?!\d)|(?<!\d),(?=\d)|\band\b)\s*/iu;
/** What starts a food in hand: an amount somewhere, or a number word at the start. */
const HAS_AMOUNT = /[\d¼½¾⅓⅔⅛]|^(?:an?|half|one|two|three|four|five|six|seven|eight|nine|ten) /iu;

/**
 * Reads what a member has of one food or of several: "850 g thigh", "850 g thigh, 400 g beans; 2 onions",
 * each as `readInHand` does. "Salt and pepper" with one amount stays one.
 */
export function readHandList(
  text: string,
  recipe: Recipe,
  foods: FoodBook,
  spoons: SpoonSet = "us",
): Outcome<readonly InHand[], ScaleProblem> {
  const pieces = piecesOf(text.slice(0, 400));
  if (pieces.length > FOODS_MAX) return fail({ code: "too many in hand", max: FOODS_MAX });
  const list: InHand[] = [];
  for (const piece of pieces) {
    const read = readInHand(piece, recipe, foods, spoons);
    if (!read.ok) return read;
    list.push(read.value);
  }
  return ok(list);
}

/** A piece without an amount belongs to the one before ("850 g thigh, diced"). */
function piecesOf(text: string): readonly string[] {
  const pieces: string[] = [];
  for (const piece of text.split(BETWEEN)) {
    const last = pieces.length - 1;
    const before = pieces[last];
    if (piece === "") continue;
    if (before === undefined || HAS_AMOUNT.test(piece)) pieces.push(piece);
    else pieces[last] = `${before} ${piece}`;
  }
  return pieces.length === 0 ? [text] : pieces;
}
