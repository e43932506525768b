import { describe, expect, it } from "vitest";
import type { Food } from "../../shared/food/types.ts";
import { loadFoodBook } from "../../src/foods/load.ts";
import { secondCopy } from "./food-second-copy.ts";

const { foods } = loadFoodBook();

/** Merrill and Watt, Energy Value of Foods, USDA Agriculture Handbook 74 (1973): alcohol, kcal per gram. */
const ALCOHOL_KCAL = 6.93;

/** Two kilocalories or two per cent: what the rounding of four printed figures can make. */
const bandKcal = (statedKcal: number) => Math.max(2, 0.02 * statedKcal);

/** Rows whose energy the source did not take from its own factors, and what is known of the cause. */
const NOT_BY_ITS_FACTORS: Readonly<Record<string, string>> = {
  "01226":
    "egg substitute, 51 by its factors, 48 printed: macros in whole grams, as on a maker's label",
  "06112": "teriyaki sauce, 86 by its factors, 89 printed: cause not stated",
  "08122": "instant oats, 385 by its factors, 362 printed: a maker's label, cause not stated",
};

function byItsFactors(food: Food): number | null {
  const { factors } = secondCopy(food.source.number);
  const { proteinG, fatG, carbohydrateG } = food.per100g;
  if (factors === null || proteinG === null || fatG === null || carbohydrateG === null) return null;
  return (
    factors.protein * proteinG +
    factors.fat * fatG +
    factors.carbohydrate * carbohydrateG +
    ALCOHOL_KCAL * food.alcoholG
  );
}

describe("the energy of the food table against the source's own factors", () => {
  // USDA SR28 (2015), file FOOD_DES: Pro_Factor, Fat_Factor, CHO_Factor, blank for mixed dishes.
  const withFactors = foods.flatMap((food) => {
    const kcal = byItsFactors(food);
    return kcal === null ? [] : [{ food, kcal, statedKcal: food.per100g.energyKcal ?? -1 }];
  });

  it("can be recomputed for at least 500 foods", () => {
    expect(withFactors.length).toBeGreaterThanOrEqual(500);
  });

  it("comes out as printed, but for the rows listed", () => {
    const misses = withFactors.filter(
      ({ kcal, statedKcal }) => Math.abs(kcal - statedKcal) > bandKcal(statedKcal),
    );
    expect(misses.map(({ food }) => food.source.number).sort()).toEqual(
      Object.keys(NOT_BY_ITS_FACTORS).sort(),
    );
  });

  it.each(["02050", "14003", "14096", "14106"])("needs the alcohol of %s to come out", (number) => {
    const drink = withFactors.find(({ food }) => food.source.number === number);
    if (drink === undefined) throw new Error(`no factors for ${number}`);
    const dry = drink.kcal - ALCOHOL_KCAL * drink.food.alcoholG;
    expect(Math.abs(dry - drink.statedKcal)).toBeGreaterThan(bandKcal(drink.statedKcal));
  });
});
