import { describe, expect, test } from "vitest";
import { readRecipe } from "../../../shared/recipe/read.ts";
import { figuresOf, textOf } from "../../kit/cooked.ts";
import { FOODS, recipeOf } from "../../kit/recipes-and-context.ts";

const grams = (line: string) => recipeOf(textOf([line])).components[0]?.lines[0]?.main.grams;

describe("weights as bought", () => {
  // USDA SR28 refuse: potato 25 %, broccoli 39 %, avocado 26 %, banana 36 %.
  test.each([
    ["- 1 kg unpeeled potatoes", 750],
    ["- 1 kg potatoes, unpeeled", 750],
    ["- 1 kg potatoes, as bought", 750],
    ["- 1000 g broccoli, whole, untrimmed", 610],
    ["- 400 g avocado, stone in", 296],
    ["- 1 kg potatoes", 1000],
    ["- 1 kg peeled potatoes", 1000],
    ["- 1 kg potatoes, unpeeled and scrubbed", 1000],
  ])("%s has %d edible grams", (line, edible) => {
    expect(grams(line)).toBeCloseTo(edible, 6);
  });

  test("a count is edible already", () => {
    expect(grams("- 2 avocados, unpeeled")).toBe(402);
  });

  test("where the table has no refuse the line is counted in full and that is said", () => {
    const line = "- 500 g bone-in chicken thighs";
    expect(grams(line)).toBe(500);
    const read = readRecipe(textOf([line]), FOODS);
    expect(read.ok && read.value.remarks.map(({ code }) => code)).toContain("refuse not known");
    expect(figuresOf([line]).assumptions).toEqual([
      { code: "refuse not known", food: "bone-in chicken thighs" },
    ]);
  });
});

describe("which food a line means", () => {
  const idOf = (line: string) => recipeOf(textOf([line])).components[0]?.lines[0]?.main.foodId;

  test.each([
    ["- 500 g beef mince, 5 % fat", "beef-mince-5-fat-raw"],
    ["- 500 g beef mince, 20% fat", "beef-mince-20-fat-raw"],
    ["- 500 g beef mince", "beef-mince-15-fat-raw"],
    ["- 500 g chicken thighs, skin-on", "chicken-thigh-with-skin-raw"],
    ["- 500 g chicken thighs, diced", "chicken-thigh-skinless-raw"],
  ])("%s", (line, id) => {
    expect(idOf(line)).toBe(id);
  });
});

describe("counts by size", () => {
  // USDA SR28 household weights.
  test.each([
    ["- 2 large onions", 300],
    ["- 1 small courgette", 118],
    ["- 3 medium carrots", 183],
    ["- 2 extra-large eggs", 112],
    ["- 2 medium eggs", 88],
    ["- 2 onions", 220],
    ["- 2 large celery stalks", 128],
  ])("%s weighs %d g", (line, expected) => {
    expect(grams(line)).toBe(expected);
  });

  test("a large slice of something is not a large one", () => {
    expect(grams("- 2 large slices onion")).toBeNull();
  });
});
