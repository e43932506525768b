import { describe, expect, it } from "vitest";
import type { NutrientKey } from "../../shared/nutrition/types.ts";
import { loadFoodBook } from "../../src/foods/load.ts";
import { secondCopy } from "./food-second-copy.ts";

const { foods } = loadFoodBook();

const KEYS: readonly NutrientKey[] = [
  "energyKcal",
  "proteinG",
  "fatG",
  "saturatedFatG",
  "carbohydrateG",
  "fibreG",
  "sugarsG",
  "sodiumMg",
];

/** Where our refuse is neither the source's nor 0, and why. */
const OWN_REFUSE: Readonly<Record<string, string>> = {
  "05066": "66 in the source, whose own words count the drumstick's bone twice, 33 % each",
};

/** What the source says is thrown away when a food is bought with it: not so of trimmed or shelled food. */
const BOUGHT_WITH_IT = /paring|peel|core|husk|top|stem|seed|stone|pit|root|rind|end/iu;

describe("every food against a second copy of USDA SR28", () => {
  it("has each figure as the copy has it, digit for digit, and blank where it is blank", () => {
    const differences = foods.flatMap((food) => {
      const copy = secondCopy(food.source.number);
      return [
        ...KEYS.filter((key) => food.per100g[key] !== copy.per100g[key]),
        ...(food.waterG === copy.waterG ? [] : ["waterG"]),
      ].map((key) => `${food.source.number} ${food.name}: ${key}`);
    });
    expect(differences).toEqual([]);
  });

  it("takes the source's refuse or none, but for what is listed", () => {
    const differences = foods.filter((food) => {
      const refuse = secondCopy(food.source.number).refusePct;
      return food.refusePct !== 0 && food.refusePct !== refuse;
    });
    expect(differences.map((food) => food.source.number)).toEqual(Object.keys(OWN_REFUSE));
  });

  it("takes the refuse of every raw vegetable and fruit that is bought with it", () => {
    const forgotten = foods.filter((food) => {
      const { refusePct, refuseIs } = secondCopy(food.source.number);
      const plant = /^(?:vegetable|salad-leaf|fruit|fresh-herb)$/u.test(food.keepingClass);
      return (
        plant &&
        food.state === "raw" &&
        BOUGHT_WITH_IT.test(refuseIs) &&
        food.refusePct !== refusePct
      );
    });
    expect(forgotten.map((food) => food.name)).toEqual([]);
  });

  it("has the published alcohol of the four foods that hold any", () => {
    // Same source, NUT_DATA: alcohol in grams per 100 g. The copy has no such column.
    const withAlcohol = foods.filter((food) => food.alcoholG > 0);
    expect(withAlcohol.map((food) => [food.source.number, food.alcoholG]).sort()).toEqual([
      ["02050", 34.4],
      ["14003", 3.9],
      ["14096", 10.6],
      ["14106", 10.3],
    ]);
  });
});
