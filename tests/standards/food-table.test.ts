import { describe, expect, it } from "vitest";
import type { NutrientKey } from "../../shared/nutrition/types.ts";
import { loadFoodBook } from "../../src/foods/load.ts";
import { PUBLISHED } from "./food-published.ts";

// US Department of Agriculture, National Nutrient Database for Standard Reference, Release 28 (2015,
// revised May 2016), file WEIGHT: grams of one US cup, tablespoon or teaspoon (millilitres beside).
const CUP_ML = 236.5882365;
const TBSP_ML = 14.78676478125;
const TSP_ML = 4.92892159375;
const WEIGHTS: readonly (readonly [number: string, ml: number, grams: number])[] = [
  ["04053", CUP_ML, 216],
  ["01077", CUP_ML, 244],
  ["01088", CUP_ML, 245],
  ["01056", CUP_ML, 230],
  ["20081", CUP_ML, 125],
  ["20080", CUP_ML, 120],
  ["20027", CUP_ML, 128],
  ["19335", CUP_ML, 200],
  ["19334", CUP_ML, 220],
  ["19296", CUP_ML, 339],
  ["16123", CUP_ML, 255],
  ["20044", CUP_ML, 185],
  ["20035", CUP_ML, 170],
  ["16014", CUP_ML, 194],
  ["11282", CUP_ML, 160],
  ["11935", TBSP_ML, 17],
  ["12166", TBSP_ML, 15],
  ["02047", TSP_ML, 6],
  ["18369", TSP_ML, 4.6],
  ["02028", TSP_ML, 2.3],
  ["02027", TSP_ML, 1],
];

// Same source and file: edible grams of one.
const ONES: readonly (readonly [number: string, grams: number])[] = [
  ["01123", 50],
  ["01124", 33],
  ["01125", 17],
  ["11215", 3],
  ["11282", 110],
  ["11124", 61],
  ["11143", 40],
  ["11333", 119],
  ["05062", 272],
  ["05096", 149],
  ["09037", 201],
  ["11352", 213],
];

// Same source, file FOOD_DES: refuse, per cent.
const REFUSE: readonly (readonly [number: string, refusePct: number])[] = [
  ["11282", 10],
  ["11215", 13],
  ["11090", 39],
  ["11333", 18],
  ["09037", 26],
  ["11124", 11],
  ["11135", 61],
  ["11352", 25],
  ["09040", 36],
  ["09266", 49],
  ["01123", 12],
  ["05006", 32],
  ["05062", 0],
];

// Same source, file WEIGHT: edible grams of one of a size.
const SIZED: readonly (readonly [size: string, number: string, grams: number])[] = [
  ["large", "11282", 150],
  ["medium", "11282", 110],
  ["small", "11282", 70],
  ["large", "01123", 50],
  ["medium", "01123", 44],
  ["large", "11124", 72],
  ["small", "11352", 170],
  ["large", "11333", 164],
  ["large", "11143", 64],
  ["large", "09003", 223],
  ["small", "09040", 101],
  ["large", "11135", 840],
];

const { foods } = loadFoodBook();
function byNumber(number: string) {
  const food = foods.find((one) => one.source.number === number);
  if (food === undefined) throw new Error(`the table lacks ${number}`);
  return food;
}

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

describe("the food table against USDA SR28", () => {
  it.each(PUBLISHED)("%s has the published figures", (number, ...figures) => {
    const food = byNumber(number);
    expect(food.waterG).toBe(figures.pop());
    for (const [index, key] of KEYS.entries()) {
      const ours = food.per100g[key];
      const published = figures[index] ?? null;
      if (ours === null || published === null) expect(ours, key).toBe(published);
      else expect(Math.abs(ours - published), `${food.name} ${key}`).toBeLessThanOrEqual(0.0051);
    }
  });

  it("is checked on at least 60 foods, from at least 15 of the source's groups", () => {
    expect(new Set(PUBLISHED.map(([number]) => number)).size).toBeGreaterThanOrEqual(60);
    expect(new Set(PUBLISHED.map(([number]) => number.slice(0, 2))).size).toBeGreaterThanOrEqual(
      15,
    );
  });

  it.each(REFUSE)("%s loses %d %% before it can be eaten", (number, refusePct) => {
    expect(byNumber(number).refusePct).toBe(refusePct);
  });

  it.each(SIZED)("one %s of %s weighs %d g", (size, number, grams) => {
    expect(byNumber(number).measures.find((one) => one.name === size)?.grams).toBe(grams);
  });

  it.each(WEIGHTS)("%s fills %d ml with %d g", (number, ml, grams) => {
    expect((byNumber(number).densityGPerMl ?? 0) * ml).toBeCloseTo(grams, 1);
  });

  it.each(ONES)("one of %s weighs %d g", (number, grams) => {
    expect(byNumber(number).one?.grams).toBe(grams);
  });
});
