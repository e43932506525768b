import { cookedMassOf } from "../../shared/cooking/cooked-mass.ts";
import type { CookedLine, CookedMass, HowCooked } from "../../shared/cooking/types.ts";
import { type Nutrition, nutritionOf } from "../../shared/nutrition/portion.ts";
import { type ScaledRecipe, type ScaleRequest, scaleRecipe } from "../../shared/recipe/scale.ts";
import type { Recipe } from "../../shared/recipe/types.ts";
import { FOODS, recipeOf } from "./recipes-and-context.ts";

/** A recipe's text from its ingredient lines and steps: two portions, no stated yield. */
export function textOf(lines: readonly string[], steps: readonly string[] = []): string {
  const method = steps.map((step, index) => `${index + 1}. ${step}`);
  return ["Test dish", "Makes 2 portions", "Ingredients", ...lines, "Steps", ...method].join("\n");
}

export function scaledOf(recipe: Recipe, request: Partial<ScaleRequest> = {}): ScaledRecipe {
  const scaled = scaleRecipe(recipe, FOODS, {
    by: { kind: "as written" },
    without: [],
    swaps: {},
    ...request,
  });
  if (!scaled.ok) throw new Error(JSON.stringify(scaled.problem));
  return scaled.value;
}

/** The estimate for a recipe of these lines and steps; throws when there is none. */
export function massOf(lines: readonly string[], steps: readonly string[]): CookedMass {
  const mass = cookedMassOf(scaledOf(recipeOf(textOf(lines, steps))), FOODS);
  if (mass === null) throw new Error("no estimate");
  return mass;
}

export function lineIn(mass: CookedMass, food: string): CookedLine {
  const line = mass.lines.find((one) => one.food.includes(food));
  if (line === undefined) throw new Error(`no line of ${food}`);
  return line;
}

/** What the steps do to the first line that has this word. */
export function howIn(food: string, lines: readonly string[], steps: readonly string[]): HowCooked {
  const scaled = scaledOf(recipeOf(textOf(lines, steps)));
  const line = scaled.components
    .flatMap((part) => part.lines)
    .find(({ choice }) => choice.foodText.includes(food));
  if (line === undefined) throw new Error(`no line of ${food}`);
  return line.cooking;
}

export function figuresOf(
  lines: readonly string[],
  steps: readonly string[] = [],
  cookedWeightG: number | null = null,
): Nutrition {
  return nutritionOf(scaledOf(recipeOf(textOf(lines, steps))), FOODS, { cookedWeightG });
}
