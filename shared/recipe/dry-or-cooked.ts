import { cookedFromDry, dryFoodOf } from "../cooking/dry-foods.ts";
import type { Food } from "../food/types.ts";

/**
 * Grams of the table's food in one gram of a food that is said to be cooked, or dry: 1 when the table's
 * food is in that state, the published factor when it is a dry food in the other. Null when it is in the
 * other state and no factor is published: it is then another food, never the same.
 */
export function tableGPerG(food: Food, said: "cooked" | "dry" | null): number | null {
  if (said === null || food.state === "ready") return 1;
  if (said === "cooked" && food.state === "raw") return inverse(dryFoodOf(food)?.basis.factor);
  if (said === "dry" && food.state === "cooked") return cookedFromDry(food)?.basis.factor ?? null;
  return 1;
}

function inverse(factor: number | undefined): number | null {
  return factor === undefined ? null : 1 / factor;
}

/** Grams cooked per gram dry, for a food of the table in either state; null where none is published. */
export function cookedPerDryG(food: Food): number | null {
  return (dryFoodOf(food) ?? cookedFromDry(food))?.basis.factor ?? null;
}
