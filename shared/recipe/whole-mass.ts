import { cookedMassOf } from "../cooking/cooked-mass.ts";
import type { FoodBook } from "../food/book.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import type { ScaleProblem } from "./problems.ts";
import type { ScaledRecipe } from "./scale.ts";
import type { WholeMass } from "./scale-size.ts";

/**
 * What a whole weighs cooked: as the coach states it, else estimated from published yields, else what goes
 * in and is eaten. Lines to taste weigh nothing; any other line without a weight leaves it unknown.
 */
export function wholeMassOf(
  scaled: ScaledRecipe,
  foods: FoodBook,
): Outcome<WholeMass, ScaleProblem> {
  if (scaled.yieldG !== null) return ok({ grams: scaled.yieldG, of: "stated" });
  const lines = scaled.components
    .flatMap((part) => part.lines)
    .filter(({ choice }) => choice.amount !== null);
  const unweighed = lines.filter(({ grams }) => grams === null);
  const grams = lines.reduce((sum, line) => sum + (line.grams ?? 0) * line.choice.uptake, 0);
  if (unweighed.length > 0 || grams <= 0) {
    return fail({
      code: "whole cannot be weighed",
      foods: unweighed.map(({ choice }) => choice.foodText),
    });
  }
  const estimate = cookedMassOf(scaled, foods);
  if (estimate !== null) return ok({ grams: estimate.grams, of: "estimated" });
  const isHeated = lines.some(({ cooking }) => cooking.method !== null);
  return ok({ grams, of: isHeated ? "raw" : "as put together" });
}
