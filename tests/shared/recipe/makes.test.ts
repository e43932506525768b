import { describe, expect, test } from "vitest";
import { sayReadRemark } from "../../../commands/kit/say-recipe-problem.ts";
import { type ReadRecipe, readRecipe } from "../../../shared/recipe/read.ts";
import { scaleRecipe } from "../../../shared/recipe/scale.ts";
import { loadFoodBook } from "../../../src/foods/load.ts";

const FOODS = loadFoodBook();

function read(text: string): ReadRecipe {
  const outcome = readRecipe(text, FOODS);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
  return outcome.value;
}

/** A wrap with a sauce of 200 g yoghurt and 100 g mayonnaise below this heading. */
function wrap(heading: string): ReadRecipe {
  return read(
    `Bean wraps\nMakes 4 wraps\n\nFilling:\n- 400 g canned kidney beans\n\n${heading}\n- 200 g yoghurt\n- 100 g mayonnaise\n\nSteps\n1. Stir.`,
  );
}

describe("a part that makes more than is used", () => {
  test.each([
    ["Sauce (makes 300 g, 180 g used):", 300, 180],
    ["Sauce (makes 300 g, 180 g used)", 300, 180],
    ["For the sauce (makes about 300 g; use 180 g)", 300, 180],
    ["## Sauce (makes 0.3 kg, you need 180 g)", 300, 180],
    ["**Sauce** (makes 300 g, of which 180 g is used)", 300, 180],
    ["Sauce, makes 300 g, 180 g used:", 300, 180],
    ["Sauce – makes 350 g, uses half:", 350, 175],
    ["Sauce (makes 10 oz, 5 oz used):", 283.5, 141.7],
    ["Sauce (makes more than you need: use half)", 300, 150],
    ["Sauce: makes more than you need, use two thirds", 300, 200],
    ["Sauce (makes more than needed, use 120 g):", 300, 120],
    ["Sauce (makes double what you need):", 300, 150],
    ["Sauce (makes extra; 60 % is used):", 300, 180],
    ["Sauce (makes 300 ml, 100 ml used):", 300, 100],
    ["Sauce:\nMakes 300 g, 180 g used", 300, 180],
    ["Sauce:\nThis makes more than you need: use half.", 300, 150],
  ])("%s", (heading, madeG, usedG) => {
    const { recipe, remarks } = wrap(heading);
    expect(recipe.components.map(({ name }) => name)).toEqual(["Filling", "Sauce"]);
    expect(recipe.components[0]).not.toHaveProperty("makes");
    expect(recipe.components[1]?.makes).toEqual({ madeG, usedG });
    expect(remarks.map(({ code }) => code)).not.toContain("used not clear");
  });

  test("may be optional as well", () => {
    expect(wrap("Sauce (makes 300 g, 180 g used) (optional):").recipe.components[1]).toMatchObject({
      name: "Sauce",
      optional: true,
      makes: { madeG: 300, usedG: 180 },
    });
  });

  test.each([
    "Sauce (makes more than you need)",
    "Sauce (makes 300 g, 400 g used):",
    "Sauce (makes 300 g, 50 ml used):",
    "Sauce (makes more than you need; use half)\n- 1 handful spinach",
  ])("of which nobody can tell how much is used is counted in full and said so: %s", (heading) => {
    const { recipe, remarks } = wrap(heading);
    expect(recipe.components[1]).not.toHaveProperty("makes");
    const remark = remarks.find(({ code }) => code === "used not clear");
    expect(remark === undefined ? "" : sayReadRemark(remark)).toBe(
      "Line 7: “Sauce” makes more than is used, and all of it is counted; say how much is, such as “(makes 300 g, 180 g used)”.",
    );
  });

  test.each([
    ["Pancakes (makes 12):", "Pancakes (makes 12)"],
    ["Dough (makes 8 wraps):", "Dough (makes 8 wraps)"],
    ["Sauce:", "Sauce"],
  ])("a part that only says what it makes is used whole: %s", (heading, name) => {
    expect(wrap(heading).recipe.components[1]).toMatchObject({ name });
    expect(wrap(heading).recipe.components[1]).not.toHaveProperty("makes");
  });

  test("an ingredient is no heading for being made of something", () => {
    const { recipe } = read(
      "T\nMakes 2\nIngredients\n200 g stock, made with 1 cube, half of it used",
    );
    expect(recipe.components).toMatchObject([{ name: "Base", lines: [{ main: { grams: 200 } }] }]);
  });

  test("at another size what is left grows with it", () => {
    const { recipe } = wrap("Sauce (makes 300 g, 180 g used):");
    const scaled = scaleRecipe(recipe, FOODS, {
      by: { kind: "portions", portions: 8 },
      without: [],
      swaps: {},
    });
    expect(scaled.ok && scaled.value.leftover).toEqual([
      { component: "Sauce", madeG: 600, leftG: 240 },
    ]);
  });
});
