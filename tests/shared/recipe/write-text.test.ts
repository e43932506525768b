import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readRecipe } from "../../../shared/recipe/read.ts";
import { writeRecipeText } from "../../../shared/recipe/write-text.ts";
import { anyBuiltRecipe, anyRecipeText, FOODS, readOrThrow } from "../json-ld/any-recipe.ts";
import { noisyRecipeText } from "../json-ld/noisy-text.ts";

const SEEDS = "prisma/seed/recipes";

function rewritten(text: string): string {
  return writeRecipeText(readOrThrow(text));
}

describe("a recipe written as text", () => {
  test.each(readdirSync(SEEDS))("%s is read again as the same recipe", (file) => {
    const recipe = readOrThrow(readFileSync(`${SEEDS}/${file}`, "utf8"));
    expect(readOrThrow(writeRecipeText(recipe))).toEqual(recipe);
  });

  test("whatever text was read is read again as the same recipe", () => {
    let read = 0;
    fc.assert(
      fc.property(fc.oneof(anyRecipeText, noisyRecipeText), (text) => {
        const outcome = readRecipe(text, FOODS);
        if (!outcome.ok) return;
        read += 1;
        expect(readOrThrow(writeRecipeText(outcome.value.recipe))).toEqual(outcome.value.recipe);
      }),
      { numRuns: 400 },
    );
    // Else the property would hold of nothing.
    expect(read).toBeGreaterThan(100);
  });

  test("a recipe put together from pieces is read as it is", () => {
    fc.assert(
      fc.property(anyBuiltRecipe, (recipe) => {
        expect(readOrThrow(writeRecipeText(recipe))).toEqual(recipe);
      }),
      { numRuns: 300 },
    );
  });

  test("has a bullet a line, swaps below their line and one statement about keeping a line", () => {
    const text = [
      "Pot\nserves 2",
      "200 g rice; or 180 g quinoa, swap: couscous",
      "Keeps 3 days in the fridge and freezes badly, because it dries out.",
    ].join("\nIngredients\n");
    expect(rewritten(text)).toBe(
      [
        "Pot\n",
        "Makes 2 portions\n",
        "Ingredients\n",
        "- 200 g rice",
        "  or 180 g quinoa, swap: couscous\n",
        "Keeping",
        "Keeps 3 days in the fridge",
        "Freezes badly: it dries out\n",
      ].join("\n"),
    );
  });

  test.each([
    ["Title: Makes 4 happy", "Title: Makes 4 happy"],
    ["# - Dashes", "Title: - Dashes"],
    ["Soup", "Soup"],
  ])("the title %s stays one", (title, first) => {
    const written = rewritten(`${title}\nMakes 1\n- 1 g salt`);
    expect(written.split("\n")[0]).toBe(first);
    expect(readOrThrow(written).title).toBe(first.replace("Title: ", ""));
  });

  test("a part named like a heading stays a part, a note like a step a note", () => {
    const written = rewritten(
      "Soup\nMakes 1\nFor the notes:\n- 1 g salt\nSteps\n1. Stir.\nNote: 2. Not a step",
    );
    expect(written).toContain("For the Notes:\n- 1 g salt");
    expect(readOrThrow(written)).toMatchObject({ steps: [{}], notes: ["2. Not a step"] });
  });

  test("a cooked weight in pounds and thirds comes back to the last place", () => {
    const recipe = readOrThrow("Soup\nMakes 4 bowls, 1 1/3 lb cooked\n- 1 g salt");
    expect(readOrThrow(writeRecipeText(recipe)).yieldG).toBe(recipe.yieldG);
  });

  test("a text at the limits is still within them", () => {
    const line = "600 g canned kidney beans, drained and rinsed in cold water";
    const longest = `${line}, ${"x".repeat(600 - line.length - 2)}`;
    const step = `${"stir ".repeat(119)}well.`;
    const text = [
      "Soup\nMakes 1\nIngredients",
      longest,
      ...Array.from({ length: 196 }, () => "1 g salt"),
      "Steps",
      ...Array.from({ length: 196 }, (_, at) => (at === 0 ? step : "Stir.")),
      "Keeps 1 day",
    ].join("\n");
    const recipe = readOrThrow(text);
    expect(recipe.steps).toHaveLength(196);
    expect(readOrThrow(writeRecipeText(recipe))).toEqual(recipe);
  });

  test("a step longer than a line is broken where no piece looks like something else", () => {
    const pieces = Array.from(
      { length: 40 },
      (_, at) => `Stir for ${at + 1} minutes and then 1. rest`,
    );
    const text = `Soup\nMakes 1\n- 1 g salt\nSteps\n1. ${pieces.join("\nand ")}`;
    const recipe = readOrThrow(text);
    expect(recipe.steps).toHaveLength(1);
    expect(readOrThrow(writeRecipeText(recipe))).toEqual(recipe);
  });
});
