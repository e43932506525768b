import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { allergensInRecipe } from "../../../shared/allergen/find.ts";
import { fromJsonLd } from "../../../shared/json-ld/from-json-ld.ts";
import { toJsonLd } from "../../../shared/json-ld/to-json-ld.ts";
import { UNMEASURED } from "../../../shared/nutrition/sum.ts";
import { readRecipe } from "../../../shared/recipe/read.ts";
import type { Recipe } from "../../../shared/recipe/types.ts";
import { anyBuiltRecipe, anyRecipeText, FOODS, readOrThrow } from "./any-recipe.ts";
import { noisyRecipeText } from "./noisy-text.ts";

const SEEDS = "prisma/seed/recipes";

function outAndIn(recipe: Recipe): Recipe {
  const allergens = allergensInRecipe(recipe, FOODS);
  const document = JSON.stringify(toJsonLd(recipe, { perPortion: UNMEASURED, allergens }));
  const outcome = fromJsonLd(document);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
  return readOrThrow(outcome.value.text);
}

describe("out as JSON-LD and in again", () => {
  test.each(readdirSync(SEEDS))("%s is the same recipe", (file) => {
    const recipe = readOrThrow(readFileSync(`${SEEDS}/${file}`, "utf8"));
    expect(outAndIn(recipe)).toEqual(recipe);
  });

  test("whatever text was read is the same recipe", () => {
    let read = 0;
    fc.assert(
      fc.property(fc.oneof(anyRecipeText, noisyRecipeText), (text) => {
        const outcome = readRecipe(text, FOODS);
        if (!outcome.ok) return;
        read += 1;
        expect(outAndIn(outcome.value.recipe)).toEqual(outcome.value.recipe);
      }),
      { numRuns: 300 },
    );
    // Else the property would hold of nothing.
    expect(read).toBeGreaterThan(75);
  });

  test("a recipe put together from pieces is the same", () => {
    fc.assert(
      fc.property(anyBuiltRecipe, (recipe) => {
        expect(outAndIn(recipe)).toEqual(recipe);
      }),
      { numRuns: 200 },
    );
  });

  test("an optional swap stands behind its line and comes back as it was", () => {
    const recipe = readOrThrow("Pot\nMakes 1\n- 5 g butter\n  or 4 g oil (optional)");
    const document = toJsonLd(recipe, { perPortion: UNMEASURED });
    expect(document).toHaveProperty("recipeIngredient", ["5 g butter; or 4 g oil (optional)"]);
    expect(outAndIn(recipe)).toEqual(recipe);
  });
});
