import type { Food } from "../food/types.ts";
import type { NutrientKey, NutrientSum, NutrientSums } from "./types.ts";

/** Builds sums by asking for each nutrient. */
export function sumsBy(of: (key: NutrientKey) => NutrientSum): NutrientSums {
  return {
    energyKcal: of("energyKcal"),
    proteinG: of("proteinG"),
    fatG: of("fatG"),
    saturatedFatG: of("saturatedFatG"),
    carbohydrateG: of("carbohydrateG"),
    fibreG: of("fibreG"),
    sugarsG: of("sugarsG"),
    sodiumMg: of("sodiumMg"),
  };
}

/** Nothing at all: a true zero. */
export const NOTHING: NutrientSums = sumsBy(() => ({ amount: 0, atLeast: false }));

/** Something that could not be weighed: zero, and every figure only a lower bound. */
export const UNMEASURED: NutrientSums = sumsBy(() => ({ amount: 0, atLeast: true }));

/**
 * What `grams` of the edible part hold. A figure that the table lacks adds nothing and makes the sum
 * "at least", unless there are no grams at all.
 */
export function nutrientsOf(food: Food, grams: number): NutrientSums {
  return sumsBy((key) => {
    const per100g = food.per100g[key];
    return per100g === null
      ? { amount: 0, atLeast: grams > 0 }
      : { amount: (per100g * grams) / 100, atLeast: false };
  });
}

/** The sum of parts; "at least" where any of them is. */
export function addSums(parts: readonly NutrientSums[]): NutrientSums {
  return sumsBy((key) => ({
    amount: parts.reduce((sum, part) => sum + part[key].amount, 0),
    atLeast: parts.some((part) => part[key].atLeast),
  }));
}

/** A share or multiple of a sum. */
export function timesSums(sums: NutrientSums, factor: number): NutrientSums {
  return sumsBy((key) => ({ amount: sums[key].amount * factor, atLeast: sums[key].atLeast }));
}

/** Marks some figures as lower bounds. */
export function atLeastFor(sums: NutrientSums, keys: readonly NutrientKey[]): NutrientSums {
  return sumsBy((key) => ({
    amount: sums[key].amount,
    atLeast: sums[key].atLeast || keys.includes(key),
  }));
}

/** Salt in grams from sodium in milligrams: sodium x 2.5 (Regulation (EU) 1169/2011, Annex I). */
export function saltG(sodium: NutrientSum): NutrientSum {
  return { amount: (sodium.amount * 2.5) / 1000, atLeast: sodium.atLeast };
}
