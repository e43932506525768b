import { describe, expect, test } from "vitest";
import { readRecipe } from "../../../shared/recipe/read.ts";
import { readUptake } from "../../../shared/recipe/read-uptake.ts";
import type { LineChoice, Recipe } from "../../../shared/recipe/types.ts";
import { figuresOf, textOf } from "../../kit/cooked.ts";
import { FOODS, recipeOf } from "../../kit/recipes-and-context.ts";

function choices(recipe: Recipe): readonly LineChoice[] {
  return recipe.components.flatMap(({ lines }) => lines.map(({ main }) => main));
}
const first = (line: string): LineChoice | undefined => choices(recipeOf(textOf([line])))[0];

function remarksOn(lines: readonly string[]): readonly string[] {
  const read = readRecipe(textOf(lines), FOODS);
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  return read.value.remarks.map(({ code }) => code);
}

describe("how much of a line is eaten", () => {
  test.each([
    ["- 500 g sunflower oil, for deep frying, about 40 g taken up", 0.08],
    ["- 500 ml sunflower oil, for deep frying, about 40 ml taken up", 0.08],
    ["- 500 g sunflower oil (about 50 g is absorbed)", 0.1],
    ["- 200 g soy sauce, 30 % taken up", 0.3],
    ["- 200 g soy sauce, 30% of it is taken up", 0.3],
    ["- 200 g soy sauce, half of it is poured off", 0.5],
    ["- 200 g soy sauce, a third is poured off", 2 / 3],
    ["- 200 g soy sauce, 150 g discarded", 0.25],
    ["- 200 g soy sauce, two thirds left in the pan", 1 / 3],
    ["- 200 g soy sauce, none of it is poured off", 1],
    ["- 200 g soy sauce, 90 g of it taken up", 0.45],
    ["- 100 g soy sauce, 250 g taken up", 1],
    ["- 200 g soy sauce", 1],
    ["- 400 g canned kidney beans, drained and rinsed", 1],
    ["- 300 g red bell pepper, seeds discarded", 1],
  ])("%s", (line, share) => {
    expect(first(line)?.uptake).toBeCloseTo(share, 9);
  });

  test("the amount of the line stays whole: it has to be bought", () => {
    expect(first("- 200 g soy sauce, 30 % taken up")?.grams).toBe(200);
    const figures = figuresOf(["- 200 g soy sauce, 30 % taken up"]);
    expect(figures.togetherG).toBe(200);
    // USDA SR28 16123: 53 kcal and 5493 mg of sodium in 100 g.
    expect(figures.whole.energyKcal.amount).toBeCloseTo(31.8, 6);
    expect(figures.whole.sodiumMg.amount).toBeCloseTo(5493 * 0.6, 6);
    expect(figures.assumptions).toEqual([{ code: "taken up", food: "soy sauce", share: 0.3 }]);
  });

  test("what it is for is no part of the food's name", () => {
    expect(first("- 500 ml sunflower oil for deep frying")).toMatchObject({
      foodText: "sunflower oil",
      preparation: "for deep frying",
    });
  });

  test("deep-frying oil without a figure: a tenth of what is fried, with a remark", () => {
    const lines = ["- 400 g cod", "- 100 g plain flour", "- 1000 g sunflower oil, for deep frying"];
    const oil = choices(recipeOf(textOf(lines)))[2];
    expect((oil?.grams ?? 0) * (oil?.uptake ?? 0)).toBeCloseTo(50, 6);
    expect(remarksOn(lines)).toContain("oil uptake assumed");
  });

  test("never more oil than there is, and all of it when nothing is fried in it", () => {
    const little = ["- 900 g cod", "- 20 g sunflower oil, for deep frying"];
    expect(choices(recipeOf(textOf(little)))[1]?.uptake).toBe(1);
    const alone = ["- 500 g sunflower oil, for deep frying"];
    expect(choices(recipeOf(textOf(alone)))[0]?.uptake).toBe(1);
    expect(remarksOn(alone)).toContain("counted in full");
  });

  test("a marinade that is discarded without a figure is counted in full and said so", () => {
    const line = "- 200 g soy sauce, discarded";
    expect(first(line)?.uptake).toBe(1);
    expect(remarksOn([line])).toContain("counted in full");
    expect(figuresOf([line]).assumptions).toEqual([{ code: "counted in full", food: "soy sauce" }]);
  });

  test("a whole part may say what is taken up of it; a line's own figure goes before", () => {
    const lines = [
      "Base:",
      "- 500 g chicken breast",
      "Marinade, 30 % taken up:",
      "- 100 g soy sauce",
      "- 20 g honey, half of it is poured off",
    ];
    expect(choices(recipeOf(textOf(lines))).map(({ uptake }) => uptake)).toEqual([1, 0.3, 0.5]);
  });

  test("a share above all of it is not understood", () => {
    expect(readUptake("300 % taken up")).toBeNull();
  });
});
