import type { FoodBook } from "../food/book.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import { findLineInHand } from "./in-hand.ts";
import { RECIPE_LIMITS, type ScaleProblem } from "./problems.ts";
import type { LineChoice, Recipe } from "./types.ts";

export interface Size {
  readonly factor: number;
  readonly portions: number;
  readonly portionShare: number;
}

type By =
  | { readonly kind: "as written" }
  | { readonly kind: "portions"; readonly portions: number }
  | { readonly kind: "have"; readonly grams: number; readonly foodText: string };

/** How many times the recipe, and how many portions of what size. */
export function sizeOf(
  recipe: Recipe,
  choices: readonly LineChoice[],
  foods: FoodBook,
  by: By,
): Outcome<Size, ScaleProblem> {
  if (by.kind === "as written")
    return ok({ factor: 1, portions: recipe.portions, portionShare: 1 });
  return by.kind === "portions"
    ? byPortions(recipe, by.portions)
    : byHave(recipe, choices, foods, by.grams, by.foodText);
}

function byPortions(recipe: Recipe, portions: number): Outcome<Size, ScaleProblem> {
  const max = RECIPE_LIMITS.portions;
  if (!Number.isFinite(portions) || portions <= 0 || portions > max) {
    return fail({ code: "portions out of range", asked: portions, max });
  }
  if (!Number.isInteger(portions)) return fail({ code: "portions not whole", asked: portions });
  return ok({ factor: portions / recipe.portions, portions, portionShare: 1 });
}

/**
 * Factor = available / required. Portions go to the nearest whole number and take up the difference in
 * their size, so that the mass is conserved.
 */
function byHave(
  recipe: Recipe,
  choices: readonly LineChoice[],
  foods: FoodBook,
  grams: number,
  text: string,
): Outcome<Size, ScaleProblem> {
  const line = findLineInHand(choices, foods, text);
  if (!line.ok) return line;
  const { food, neededG } = line.value;
  if (neededG === null || neededG <= 0) return fail({ code: "food cannot be weighed", food });
  const exact = (grams / neededG) * recipe.portions;
  const max = RECIPE_LIMITS.portions;
  // Written so that not-a-number is too little, too.
  if (!(exact >= 0.5)) {
    return fail({
      code: "too little in hand",
      grams,
      onePortionG: neededG / recipe.portions,
      food,
    });
  }
  const portions = Math.max(1, Math.round(exact));
  if (portions > max) return fail({ code: "too much in hand", portions, max });
  return ok({ factor: grams / neededG, portions, portionShare: exact / portions });
}
