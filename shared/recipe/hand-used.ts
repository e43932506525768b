import { foodKeyOf } from "./in-hand.ts";
import type { ScaledLine } from "./scale.ts";
import type { HandFood } from "./scale-size.ts";

/** What became of one food in hand. */
export interface UsedInHand {
  readonly food: string;
  /** Edible grams in hand, and how much of them the recipe takes; never more. */
  readonly grams: number;
  readonly usedG: number;
  /** What one weighs where the recipe counts it in pieces; null where it is weighed. */
  readonly onePieceG: number | null;
  /** The recipe as written takes so much. */
  readonly neededG: number;
}

export function usedInHand(food: HandFood, lines: readonly ScaledLine[]): UsedInHand {
  const own = lines.filter(({ choice }) => foodKeyOf(choice) === food.key);
  const usedG = own.reduce((sum, { grams }) => sum + (grams ?? 0), 0);
  const counted = own.find(({ choice }) => choice.amount?.unit === "piece");
  const amount = counted?.choice.amount ?? null;
  const pieces = amount === null ? 0 : (amount.value + (amount.to ?? amount.value)) / 2;
  return {
    food: food.food,
    grams: food.grams,
    usedG,
    onePieceG: pieces > 0 && counted?.grams ? counted.grams / pieces : null,
    neededG: food.neededG,
  };
}

/** How much more of the scarcest food would use up the next scarcest as well. */
export interface ShortOf {
  readonly food: string;
  readonly moreG: number;
  readonly usesUp: string;
}

/** Less than this share is a matter of the scale's last digit. */
const TELLING_SHARE = 0.02;

/** What the scarcest food is short of; null with one food in hand, or when both run out together. */
export function shortOf(inHand: readonly UsedInHand[]): ShortOf | null {
  const [scarcest, next] = inHand;
  if (scarcest === undefined || next === undefined) return null;
  const times = ({ grams, neededG }: UsedInHand) => grams / neededG;
  const moreG = (times(next) - times(scarcest)) * scarcest.neededG;
  return moreG < scarcest.grams * TELLING_SHARE
    ? null
    : { food: scarcest.food, moreG, usesUp: next.food };
}
