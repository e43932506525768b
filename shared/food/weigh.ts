import type { Amount, SpoonSet } from "../quantity/types.ts";
import { massUnitG, volumeUnitMl } from "../quantity/unit.ts";
import type { Food } from "./types.ts";

/**
 * A pinch as a share of a teaspoon: common practice, no published source. With the published spoon
 * weights it gives 0.4 g of salt and 0.1 g of black pepper, the figures that USDA SR28 (2015) has
 * for "1 dash" of either.
 */
const PINCH_TEASPOONS = 1 / 16;

/**
 * Grams of an amount of a food, exact and unrounded; of a range, its middle. A mass needs no food; a
 * volume needs the food's density, a count the weight of one. Null where that is not known: never a
 * guess, the line then counts as unmeasured.
 */
export function weigh(amount: Amount, food: Food | null, spoons: SpoonSet): number | null {
  const count = amount.to === null ? amount.value : (amount.value + amount.to) / 2;
  if (!Number.isFinite(count) || count < 0) return null;
  const each = gramsOfOneUnit(amount, food, spoons);
  return each === null ? null : count * each;
}

function gramsOfOneUnit(amount: Amount, food: Food | null, spoons: SpoonSet): number | null {
  const massG = massUnitG(amount.unit);
  if (massG !== null) return massG;
  if (food === null) return null;
  if (amount.unit === "piece") return food.one?.grams ?? null;
  if (amount.unit === "pinch") return pinchG(food);
  const volumeMl = volumeUnitMl(amount.unit, spoons);
  return volumeMl === null || food.densityGPerMl === null ? null : volumeMl * food.densityGPerMl;
}

/** Only what is taken between two fingers has one: seasonings and the like, not meat or vegetables. */
function pinchG(food: Food): number | null {
  const pinched = food.keepingClass === "shelf-stable" || food.keepingClass === "fresh-herb";
  const teaspoonMl = volumeUnitMl("tsp", "us");
  if (!pinched || food.densityGPerMl === null || teaspoonMl === null) return null;
  return PINCH_TEASPOONS * teaspoonMl * food.densityGPerMl;
}
