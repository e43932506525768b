import { describe, expect, test } from "vitest";
import { readRecipe } from "../../shared/recipe/read.ts";
import { type ScaledRecipe, scaleRecipe } from "../../shared/recipe/scale.ts";
import { loadFoodBook } from "../../src/foods/load.ts";

const FOODS = loadFoodBook();

function scaled(text: string, portions: number): ScaledRecipe {
  const read = readRecipe(text, FOODS);
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  const by = { kind: "portions", portions } as const;
  const outcome = scaleRecipe(read.value.recipe, FOODS, { by, without: [], swaps: {} });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
  return outcome.value;
}

function written(text: string, portions: number): readonly string[] {
  return scaled(text, portions).components.flatMap(({ lines }) =>
    lines.map((line) => line.written),
  );
}

describe("US Army, Navy, Air Force and Marine Corps, TM 10-412, Armed Forces Recipe Service, 2003, section A-1(2)", () => {
  test("100 portions take 1 lb 4 oz: 348 are a factor of 3.48 and take 4 lb 5½ oz", () => {
    const recipe = "Worked example\nMakes 100 portions\n- 1 lb 4 oz onions";
    expect(scaled(recipe, 348).factor).toBeCloseTo(3.48, 10);
    expect(written(recipe, 348)).toEqual(["4 lb 5½ oz"]);
  });

  test("2 lb 10 oz are 2.63 lb as a decimal", () => {
    const line = scaled("Worked example\nMakes 1\n- 2 lb 10 oz onions", 1).components[0]?.lines[0];
    expect(line?.choice.amount?.value.toFixed(2)).toBe("2.63");
  });
});

// Culinary mathematics course slides on the recipe conversion factor (RCF = new yield / old yield).
describe("the recipe conversion factor of culinary schools", () => {
  test.each([
    [40, 2],
    [6, 0.3],
  ])("a recipe for 20 made for %d has the factor %d", (portions, factor) => {
    expect(scaled("Worked example\nMakes 20\n- 100 g onions", portions).factor).toBeCloseTo(
      factor,
      10,
    );
  });
});

// US Department of Agriculture and Institute of Child Nutrition, standardized recipes for child care,
// "Red Beans and Rice", home recipe (6 servings) and quantity recipe (25 servings).
describe("USDA standardized recipe, red beans and rice, from 6 to 25 servings", () => {
  const recipe = `Worked example
Makes 6 servings
- 1 1/2 cups onion, diced
- 1 1/2 cups green bell pepper, diced
- 3 cups canned kidney beans, drained`;

  test("onion and pepper go from 1½ to 6¼ cups and beans from 3 to 12½ cups", () => {
    expect(written(recipe, 25)).toEqual(["6¼ cups", "6¼ cups", "12½ cups"]);
  });

  test("rice goes from ¾ cup to the 3⅛ cups printed, to the nearest quarter", () => {
    const rice = scaled("Worked example\nMakes 6\n- 3/4 cup brown rice", 25).components[0]
      ?.lines[0];
    expect(rice?.choice.amount?.value).toBeCloseTo(3.125, 10);
    expect(["3 cups", "3¼ cups"]).toContain(rice?.written);
  });

  test("oil, spices and salt stay within a twentieth of the measures printed for 25", () => {
    const small =
      "Worked example\nMakes 6\n- 1 tbsp olive oil\n- 2 tsp ground cumin\n- 1/2 tsp salt";
    const exact = scaled(small, 25).components[0]?.lines.map(
      (line) => line.choice.amount?.value ?? 0,
    );
    const printed = [4, 8, 2];
    exact?.forEach((value, at) => {
      expect(Math.abs(value / (printed[at] ?? 0) - 1)).toBeLessThan(0.05);
    });
  });
});
