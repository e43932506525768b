import { describe, expect, it } from "vitest";
import type { NutrientKey } from "../../shared/nutrition/types.ts";
import { loadFoodBook } from "../../src/foods/load.ts";

// US Department of Agriculture, Agricultural Research Service: USDA National Nutrient Database for
// Standard Reference, Release 28 (2015, slightly revised May 2016). Per 100 g edible portion, by NDB
// number; saturated fat rounded to two decimals. null: the source has no figure.
const PUBLISHED: readonly (readonly [
  number: string,
  kcal: number,
  protein: number,
  fat: number,
  saturated: number,
  carbohydrate: number,
  fibre: number,
  sugars: number | null,
  sodium: number,
  refuse: number,
])[] = [
  ["04053", 884, 0, 100, 13.81, 0, 0, 0, 2, 0],
  ["01001", 717, 0.85, 81.11, 51.37, 0.06, 0, 0.06, 643, 0],
  ["01077", 61, 3.15, 3.25, 1.86, 4.8, 0, 5.05, 43, 0],
  ["01088", 40, 3.31, 0.88, 0.55, 4.79, 0, 4.79, 190, 0],
  ["01116", 61, 3.47, 3.25, 2.1, 4.66, 0, 4.66, 46, 0],
  ["01256", 59, 10.19, 0.39, 0.12, 3.6, 0, 3.24, 36, 0],
  ["01056", 198, 2.44, 19.35, 10.14, 4.63, 0, 3.41, 31, 0],
  ["01009", 404, 22.87, 33.31, 18.87, 3.09, 0, 0.48, 653, 0],
  ["01123", 143, 12.56, 9.51, 3.13, 0.72, 0, 0.37, 142, 12],
  ["04025", 680, 0.96, 74.85, 11.7, 0.57, 0, 0.57, 635, 0],
  ["20081", 364, 10.33, 0.98, 0.15, 76.31, 2.7, 0.27, 2, 0],
  ["19335", 387, 0, 0, 0, 99.98, 0, 99.8, 1, 0],
  ["19296", 304, 0.3, 0, 0, 82.4, 0.2, 82.12, 4, 0],
  ["16123", 53, 8.14, 0.57, 0.07, 4.93, 0.8, 0.4, 5493, 0],
  ["02047", 0, 0, 0, 0, 0, 0, 0, 38758, 0],
  ["08120", 379, 13.15, 6.52, 1.11, 67.7, 10.1, 0.99, 6, 0],
  ["20044", 365, 7.13, 0.66, 0.18, 79.95, 1.3, 0.12, 5, 0],
  ["20045", 130, 2.69, 0.28, 0.08, 28.17, 0.4, 0.05, 1, 0],
  ["20035", 368, 14.12, 6.07, 0.71, 64.16, 7, null, 5, 0],
  ["16335", 121, 8.12, 0.93, 0.33, 20.8, 6, null, 208, 0],
  ["11282", 40, 1.1, 0.1, 0.04, 9.34, 1.7, 4.24, 4, 10],
  ["11215", 149, 6.36, 0.5, 0.09, 33.06, 2.1, 1, 17, 13],
  ["11090", 34, 2.82, 0.37, 0.04, 6.64, 2.6, 1.7, 33, 39],
  ["11333", 20, 0.86, 0.17, 0.06, 4.64, 1.7, 2.4, 3, 18],
  ["09037", 160, 2, 14.66, 2.13, 8.53, 6.7, 0.66, 7, 26],
  ["05062", 120, 22.5, 2.62, 0.56, 0, 0, 0, 45, 0],
  ["05747", 151, 30.54, 3.17, 0.99, 0, 0, 0, 52, 0],
  ["05665", 150, 18.73, 8.34, 2.17, 0, 0, 0, 69, 0],
  ["23567", 215, 18.59, 15, 5.71, 0, 0, 0, 66, 0],
  ["15236", 208, 20.42, 13.42, 3.05, 0, 0, 0, 59, 0],
  ["15015", 82, 17.81, 0.67, 0.13, 0, 0, 0, 54, 0],
];

// Same source, file WEIGHT: grams of one US cup, tablespoon or teaspoon (millilitres beside).
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
    const refuse = figures.pop();
    for (const [index, key] of KEYS.entries()) {
      const ours = food.per100g[key];
      const published = figures[index] ?? null;
      if (ours === null || published === null) expect(ours, key).toBe(published);
      else expect(Math.abs(ours - published), `${food.name} ${key}`).toBeLessThanOrEqual(0.0051);
    }
    expect(food.refusePct).toBe(refuse);
  });

  it.each(WEIGHTS)("%s fills %d ml with %d g", (number, ml, grams) => {
    expect((byNumber(number).densityGPerMl ?? 0) * ml).toBeCloseTo(grams, 1);
  });

  it.each(ONES)("one of %s weighs %d g", (number, grams) => {
    expect(byNumber(number).one?.grams).toBe(grams);
  });
});
