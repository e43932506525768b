import { fail, type Outcome, ok } from "../outcome.ts";
import { readAmount } from "../quantity/read-amount.ts";
import { massUnitG } from "../quantity/unit.ts";
import { excerpt } from "../words/problems.ts";
import { RECIPE_LIMITS, type ScaleProblem } from "./problems.ts";

/** Boxes to be filled, and how much cooked food goes into each. */
export interface BoxesToFill {
  readonly boxes: number;
  readonly boxG: number;
}

/** Less is a spoonful, more is a pot: a slip of the unit. */
export const BOX_G = { min: 20, max: 10_000 } as const;

const COUNT_FIRST = /^(\d{1,4}) ?(?:[x×*]|\p{L}{1,20}(?: of| at| à|,)?) ?(?=[\d½¼¾])(.{1,30})$/iu;
const SIZE_WITHIN = /^(\d{1,4}) (\d[\d.,]{0,6} ?\p{L}{1,6}) \p{L}{1,20}$/iu;
const TAIL = /,? ?(?:cooked|each|of food|cooked weight|of cooked food)$/iu;

/** Reads "6 boxes of 400 g", "6 x 400 g", "6 400 g boxes", "4 tubs of 1 lb": cooked food by weight. */
export function readBoxes(text: string): Outcome<BoxesToFill, ScaleProblem> {
  const said = text.slice(0, 80).trim().replace(/\s+/gu, " ").replace(TAIL, "");
  const match = COUNT_FIRST.exec(said) ?? SIZE_WITHIN.exec(said);
  const size = match === null ? null : readAmount(match[2] ?? "");
  const unitG = size?.ok ? massUnitG(size.value.amount.unit) : null;
  const isPlain = size?.ok && size.value.amount.to === null && size.value.rest.trim() === "";
  if (match === null || !size?.ok || unitG === null || !isPlain) {
    return fail({ code: "boxes not understood", text: excerpt(text) });
  }
  const boxes = Number(match[1]);
  const boxG = size.value.amount.value * unitG;
  return inBounds(boxes, boxG) ? ok({ boxes, boxG }) : outOfBounds(boxes, boxG);
}

/** Whether so many boxes of that size can be meant. */
export function inBounds(boxes: number, boxG: number): boolean {
  const isCount = Number.isInteger(boxes) && boxes >= 1 && boxes <= RECIPE_LIMITS.portions;
  return isCount && boxG >= BOX_G.min && boxG <= BOX_G.max;
}

export function outOfBounds(boxes: number, boxG: number): Outcome<never, ScaleProblem> {
  return fail({ code: "boxes out of range", boxes, boxG, maxBoxes: RECIPE_LIMITS.portions });
}
