import { describe, expect, it } from "vitest";
import { cookedFromDry, dryFoodOf } from "../../shared/cooking/dry-foods.ts";
import { meatYield } from "../../shared/cooking/meat-yield.ts";
import type { HeatMethod } from "../../shared/cooking/types.ts";
import { vegetableBalance } from "../../shared/cooking/vegetable-balance.ts";
import type { Food } from "../../shared/food/types.ts";
import { loadFoodBook } from "../../src/foods/load.ts";
import { lineIn, massOf } from "../kit/cooked.ts";

const { foods } = loadFoodBook();
function food(number: string): Food {
  const found = foods.find((one) => one.source.number === number);
  if (found === undefined) throw new Error(`the table lacks ${number}`);
  return found;
}

describe("cooking yields of meat, poultry and fish", () => {
  // US Department of Agriculture, Agricultural Research Service: USDA Table of Cooking Yields for Meat and
  // Poultry, Release 2 (September 2014). Our food, what the line says, method, published per cent, its row.
  const PUBLISHED: readonly (readonly [
    number: string,
    line: string,
    method: HeatMethod,
    percent: number,
    row: string,
  ])[] = [
    ["05091", "", "roast", 69, "05094"],
    ["05091", "", "braise", 68, "05677"],
    ["05057", "", "roast", 72, "05060"],
    ["05057", "", "poach", 77, "05061"],
    ["23567", "", "fry", 67, "23575"],
    ["23567", "meatloaf", "roast", 70, "23576"],
    ["23567", "burgers", "grill", 69, "23573"],
    ["23567", "made into patties", "fry", 73, "23574"],
    ["23557", "", "fry", 69, "23565"],
    ["23557", "patties", "grill", 73, "23563"],
    ["23562", "", "roast", 72, "23566"],
    ["13068", "", "grill", 81, "13948"],
    ["23354", "", "grill", 72, "13893"],
    ["23611", "", "grill", 80, "13930"],
    ["23372", "", "roast", 82, "23345"],
    ["23372", "", "grill", 80, "13918"],
    ["10060", "", "roast", 77, "10061"],
    ["10066", "", "fry", 77, "10186"],
    ["10066", "", "braise", 73, "10063"],
    ["10972", "", "fry", 67, "10975"],
    ["10973", "", "fry", 68, "10976"],
    ["10123", "", "fry", 32, "10862"],
    ["10123", "", "roast", 32, "10860"],
    ["05219", "", "roast", 72, "05733"],
  ];
  it.each(PUBLISHED)("%s %s, %s: %d per cent", (number, line, method, percent, row) => {
    const basis = meatYield(food(number), line, method);
    expect(basis?.factor).toBeCloseTo(percent / 100, 9);
    expect(basis?.source).toContain(row);
  });

  // The same table has no row for these. USDA National Nutrient Database for Standard Reference, Release 28
  // (2015), raw and cooked weight of one piece in grams: our own quotient of two published figures.
  const PIECES: readonly (readonly [
    raw: string,
    method: HeatMethod,
    rawG: number,
    cookedG: number,
  ])[] = [
    ["05062", "grill", 272, 196],
    ["05062", "braise", 272, 181],
    ["05096", "roast", 149, 116],
    ["05305", "fry", 453.6, 330],
  ];
  it.each(PIECES)("a piece of %s, %s: %d g become %d g", (raw, method, rawG, cookedG) => {
    expect(meatYield(food(raw), "", method)?.factor).toBeCloseTo(cookedG / rawG, 2);
  });

  // Same database: protein in 100 g raw and cooked. If no protein is lost, cooked/raw mass is their quotient.
  const PROTEIN: readonly (readonly [
    raw: string,
    method: HeatMethod,
    rawG: number,
    cookedG: number,
  ])[] = [
    ["15015", "roast", 17.81, 22.83],
    ["15261", "roast", 20.08, 26.15],
    ["15240", "roast", 19.94, 23.8],
    ["15046", "roast", 18.6, 23.85],
    ["15127", "grill", 24.4, 29.15],
    ["15270", "boil", 20.1, 23.98],
    ["05665", "fry", 18.73, 27.1],
    ["05332", "fry", 17.44, 23.28],
  ];
  it.each(PROTEIN)("%s, %s, by its protein: %d and %d g", (raw, method, rawG, cookedG) => {
    expect(meatYield(food(raw), "", method)?.factor).toBeCloseTo(rawG / cookedG, 2);
  });

  // Farmed salmon would give 92 % by its protein: the two rows are of different fish. We take the wild one's
  // 78 % (15076 and 15209) for it, and list that here.
  it("farmed salmon goes by wild salmon", () => {
    expect(meatYield(food("15236"), "", "roast")?.factor).toBeCloseTo(19.84 / 25.44, 2);
  });

  it("poached fish and roast duck have no published yield, so none is given", () => {
    expect(meatYield(food("15015"), "", "poach")).toBeNull();
    expect(meatYield({ ...food("10972"), name: "duck breast, raw" }, "", "roast")).toBeNull();
  });
});

describe("what dry foods take up", () => {
  const dry = foods.filter((one) => dryFoodOf(one) !== null);

  // USDA SR28 (2015), water in 100 g of the dry and of the cooked food: dry matter is the same before and after.
  it.each(dry.map((one) => [one.name, one] as const))("%s: by the water of both rows", (_, one) => {
    const known = dryFoodOf(one);
    const cooked = foods.find((other) => other.source.number === known?.cooked);
    // Red lentils have no cooked row, and go by the other lentils.
    const dryWaterG = cooked === undefined ? null : one.waterG;
    if (dryWaterG === null || cooked === undefined || cooked.waterG === null) {
      expect(known?.basis.factor).toBeGreaterThan(2);
      return;
    }
    const balance = (100 - dryWaterG) / (100 - cooked.waterG);
    expect(known?.basis.factor).toBeCloseTo(balance, 1);
    expect(cookedFromDry(cooked)?.basis.factor).toBeCloseTo(balance, 1);
  });

  // US Department of Agriculture, recipe D-25 (schools), marketing guide: 7 oz of dry black beans make 1 lb
  // 2 oz cooked.
  it("black beans: 7 oz make 18 oz", () => {
    expect((dryFoodOf(food("16014"))?.basis.factor ?? 0) * 7).toBeCloseTo(18, 0);
  });

  // USDA SR28 (2015): 2 oz (57 g) of dry pasta is about a cup cooked, 107 to 151 g by shape and packing.
  it("pasta: 57 g make a cup", () => {
    const cupG = (dryFoodOf(food("20120"))?.basis.factor ?? 0) * 57;
    expect(cupG).toBeGreaterThan(107);
    expect(cupG).toBeLessThan(151);
  });

  // US Department of Agriculture, Standards for schools: "Cooking rice", 50 servings from 3 lb 10 oz of dry
  // brown rice finish at about 8 lb 4 oz (2.28); commodity sheet B545 (2007): 1 lb makes 8 cups of 196 g
  // (3.46). Ours is 2.97. The three disagree, as recipes with less and more water do; none is widened to fit.
  it("brown rice: two published yields lie on either side of ours", () => {
    const factor = dryFoodOf(food("20036"))?.basis.factor ?? 0;
    expect(factor).toBeGreaterThan(132 / 58);
    expect(factor).toBeLessThan((8 * 196) / 453.59237);
  });

  it("what the recipe's own water limits comes out nearer to the baked rice", () => {
    // A covered tray has only the water that is poured over it.
    const mass = massOf(
      ["- 1000 g dry brown rice", "- 1500 g water"],
      ["Pour the boiling water over the rice, cover and bake for 40 minutes."],
    );
    expect(mass.grams).toBe(2500);
  });
});

describe("vegetables by their dry matter", () => {
  // USDA SR28 (2015), water in 100 g raw and cooked.
  const PAIRS: readonly (readonly [
    raw: string,
    method: HeatMethod,
    rawWaterG: number,
    cookedWaterG: number,
  ])[] = [
    ["11282", "boil", 89.11, 87.86],
    ["11260", "boil", 92.45, 91.08],
    ["11090", "boil", 89.3, 89.25],
    ["11352", "boil", 79.25, 77.46],
    ["11352", "roast", 79.25, 74.89],
    ["11507", "roast", 77.28, 75.78],
    ["11457", "boil", 91.4, 91.21],
  ];
  it.each(PAIRS)("%s, %s: water %d before, %d after", (raw, method, rawWaterG, cookedWaterG) => {
    const balance = (100 - rawWaterG) / (100 - cookedWaterG);
    expect(vegetableBalance(food(raw), method)?.factor).toBeCloseTo(balance, 2);
  });

  // Same source: kale 84.04 raw and 91.20 boiled would make 1 g into 1.81 g, carrot 88.29 and 90.17 into 1.19:
  // the rows are of different samples, so neither is used.
  it.each(["11233", "11124"])("%s has no usable pair", (raw) => {
    expect(vegetableBalance(food(raw), "boil")).toBeNull();
  });
});

describe("a whole dish", () => {
  // Mississippi Department of Education, Mississippi Recipes for Success (2014), recipe 1341: 6 lb of brown rice
  // and 5 quarts of water, 100 half cups. SR28 20037: a cup of cooked brown rice weighs 202 g, so 10.1 kg; the
  // recipe's own rice and water are 7.45 kg. It cannot weigh more than goes in: the panel's half cup is lighter.
  it("steamed brown rice weighs what goes in", () => {
    const mass = massOf(
      ["- 6 lb brown rice", "- 5 quarts water"],
      ["Pour the boiling water over the rice, cover and bake for 40 minutes."],
    );
    expect(mass.grams).toBeCloseTo(6 * 453.59237 + 5 * 946.352946, 0);
    expect(lineIn(mass, "water").cookedG).toBeCloseTo(0, 6);
  });
});
