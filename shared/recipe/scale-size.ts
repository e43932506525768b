import type { FoodBook } from "../food/book.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import { inBounds, outOfBounds } from "./containers-to-fill.ts";
import { findLineInHand, type InHand, type LineInHand } from "./in-hand.ts";
import { RECIPE_LIMITS, type ScaleProblem } from "./problems.ts";
import type { LineChoice, Recipe } from "./types.ts";

/** By what a recipe is scaled. */
export type ScaleBy =
  | { readonly kind: "as written" }
  | { readonly kind: "portions"; readonly portions: number }
  /** As much as these edible grams make: the scarcest decides. */
  | { readonly kind: "have"; readonly foods: readonly InHand[] }
  /** As much as fills so many boxes with so many cooked grams. */
  | { readonly kind: "fill"; readonly boxes: number; readonly boxG: number };

/** What the cooked mass of a whole rests on. */
export interface WholeMass {
  readonly grams: number;
  /** "as put together" where nothing is heated; "raw" where no published figure says what cooking takes. */
  readonly of: "stated" | "estimated" | "as put together" | "raw";
}

/** One food in hand beside what the recipe as written takes of it. */
export interface HandFood extends LineInHand {
  readonly grams: number;
  readonly neededG: number;
}

export interface Size {
  readonly factor: number;
  readonly portions: number;
  readonly portionShare: number;
  /** The foods in hand, the scarcest first; empty when they do not decide. */
  readonly inHand: readonly HandFood[];
  /** What the boxes were filled by; null when they do not decide. */
  readonly filledBy: WholeMass | null;
}

/** What a size is worked out from. */
export interface Sizing {
  readonly recipe: Recipe;
  readonly choices: readonly LineChoice[];
  readonly foods: FoodBook;
  /** The cooked mass of what is taken, as written. */
  readonly wholeMass: () => Outcome<WholeMass, ScaleProblem>;
}

/** How many times the recipe, and how many portions of what size. */
export function sizeOf(sizing: Sizing, by: ScaleBy): Outcome<Size, ScaleProblem> {
  const { recipe } = sizing;
  switch (by.kind) {
    case "as written":
      return ok({ ...PLAIN, factor: 1, portions: recipe.portions });
    case "portions":
      return byPortions(recipe, by.portions);
    case "have":
      return byHave(sizing, by.foods);
    case "fill":
      return byFill(sizing, by.boxes, by.boxG);
  }
}

const PLAIN = { portionShare: 1, inHand: [], filledBy: null } as const;

function byPortions(recipe: Recipe, portions: number): Outcome<Size, ScaleProblem> {
  const max = RECIPE_LIMITS.portions;
  if (!Number.isFinite(portions) || portions <= 0 || portions > max) {
    return fail({ code: "portions out of range", asked: portions, max });
  }
  if (!Number.isInteger(portions)) return fail({ code: "portions not whole", asked: portions });
  return ok({ ...PLAIN, factor: portions / recipe.portions, portions });
}

/**
 * Factor = available / required, of the food of which that is least. Portions go to the nearest whole
 * number and take up the difference in their size, so that the mass is conserved.
 */
function byHave(
  { recipe, choices, foods }: Sizing,
  have: readonly InHand[],
): Outcome<Size, ScaleProblem> {
  const inHand = handFoods(choices, foods, have);
  if (!inHand.ok) return inHand;
  const [scarcest, ...rest] = [...inHand.value].sort((a, b) => timesOf(a) - timesOf(b));
  if (scarcest === undefined) return fail({ code: "in hand not understood", text: "" });
  const { grams, neededG, food } = scarcest;
  const factor = timesOf(scarcest);
  const exact = factor * recipe.portions;
  const max = RECIPE_LIMITS.portions;
  // Written so that not-a-number is too little, too.
  if (!(exact >= 0.5)) {
    const onePortionG = neededG / recipe.portions;
    return fail({ code: "too little in hand", grams, onePortionG, food });
  }
  const portions = Math.max(1, Math.round(exact));
  if (portions > max) return fail({ code: "too much in hand", portions, max });
  const portionShare = exact / portions;
  return ok({
    factor,
    portions,
    portionShare,
    inHand: [scarcest, ...rest],
    filledBy: null,
  });
}

function timesOf({ grams, neededG }: HandFood): number {
  return grams / neededG;
}

/** Each food once: what was typed twice is added up. */
function handFoods(
  choices: readonly LineChoice[],
  foods: FoodBook,
  have: readonly InHand[],
): Outcome<readonly HandFood[], ScaleProblem> {
  const found = new Map<string, HandFood>();
  for (const { grams, foodText } of have) {
    const line = findLineInHand(choices, foods, foodText);
    if (!line.ok) return line;
    const { key, food, neededG } = line.value;
    if (neededG === null || neededG <= 0) return fail({ code: "food cannot be weighed", food });
    const before = found.get(key)?.grams ?? 0;
    found.set(key, { ...line.value, neededG, grams: before + grams });
  }
  return ok([...found.values()]);
}

/** A box is one portion of its own size; together they are all that is cooked. */
function byFill(
  { recipe, wholeMass }: Sizing,
  boxes: number,
  boxG: number,
): Outcome<Size, ScaleProblem> {
  if (!inBounds(boxes, boxG)) return outOfBounds(boxes, boxG);
  const whole = wholeMass();
  if (!whole.ok) return whole;
  const factor = (boxes * boxG) / whole.value.grams;
  const exact = factor * recipe.portions;
  const max = RECIPE_LIMITS.portions;
  if (exact > max) return fail({ code: "too much to fill", portions: Math.ceil(exact), max });
  return ok({
    factor,
    portions: boxes,
    portionShare: exact / boxes,
    inHand: [],
    filledBy: whole.value,
  });
}
