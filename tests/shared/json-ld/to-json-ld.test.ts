import { describe, expect, test } from "vitest";
import { allergensInRecipe } from "../../../shared/allergen/find.ts";
import { isList, isObject } from "../../../shared/json-ld/parse.ts";
import { toJsonLd } from "../../../shared/json-ld/to-json-ld.ts";
import type { JsonObject, JsonValue } from "../../../shared/json-ld/types.ts";
import { sumsBy } from "../../../shared/nutrition/sum.ts";
import type { NutrientSums } from "../../../shared/nutrition/types.ts";
import { FOODS, readOrThrow } from "./any-recipe.ts";

const BOWL = readOrThrow(`Rice bowl
Makes 4 bowls, 1600 g cooked
Tags: cold, lunch
Base:
- 300 g dry long-grain white rice
- 20 g butter; or 15 g sesame oil
Dip (optional):
- 200 g plain low-fat yoghurt
Keeps 4 days in the fridge
Steps
1. Boil the rice for 12 minutes.
Keeps 1 day in the fridge
Reheat: until 74 °C.
Note: Good cold.`);

const SURE: NutrientSums = sumsBy((key) => ({
  amount: { energyKcal: 512.4, proteinG: 40.26, sodiumMg: 819.6 }[key as string] ?? 3,
  atLeast: key === "fibreG" || key === "sugarsG",
}));

function documentOf(perPortion = SURE): JsonObject {
  const document = toJsonLd(BOWL, { perPortion, allergens: allergensInRecipe(BOWL, FOODS) });
  if (!isObject(document)) throw new Error("no object");
  return document;
}

function objectIn(value: JsonValue | undefined): JsonObject {
  if (value === undefined || !isObject(value)) throw new Error("no object");
  return value;
}

describe("a recipe as JSON-LD", () => {
  test("says the yield as a number and in words", () => {
    expect(documentOf()["recipeYield"]).toEqual(["4", "4 bowls, 1600 g cooked"]);
  });

  test("lists every line as the coach wrote it, and the parts as recipes of their own", () => {
    const document = documentOf();
    expect(document["recipeIngredient"]).toEqual([
      "300 g dry long-grain white rice",
      "20 g butter; or 15 g sesame oil",
      "200 g plain low-fat yoghurt",
    ]);
    expect(document["hasPart"]).toMatchObject([
      { name: "Base" },
      { name: "Dip (optional)", description: "Keeps 4 days in the fridge" },
    ]);
  });

  test("has steps, keeping and reheating as sections of the instructions", () => {
    expect(documentOf()["recipeInstructions"]).toMatchObject([
      { name: "Steps", itemListElement: [{ text: "Boil the rice for 12 minutes." }] },
      { name: "Keeping", itemListElement: [{ text: "Keeps 1 day in the fridge" }] },
      { name: "Reheating", itemListElement: [{ text: "Until 74 °C." }] },
    ]);
  });

  test("gives figures with their unit, and names a lower bound instead of stating it", () => {
    const nutrition = objectIn(documentOf()["nutrition"]);
    expect(nutrition).toMatchObject({
      servingSize: "1 bowl (400 g)",
      calories: "512 calories",
      proteinContent: "40.3 g",
      sodiumContent: "820 mg",
    });
    expect(nutrition).not.toHaveProperty("fiberContent");
    expect(nutrition["description"]).toContain("At least: fibre 3 g, sugars 3 g.");
  });

  test("a figure of which nothing is known is not a zero", () => {
    const nothing = sumsBy(() => ({ amount: 0, atLeast: true }));
    const nutrition = objectIn(documentOf(nothing)["nutrition"]);
    expect(Object.keys(nutrition)).toEqual(["@type", "servingSize", "description"]);
    expect(nutrition["description"]).toContain("Not known: energy, protein, fat,");
  });

  test("a lower bound is never rounded up", () => {
    const bound = sumsBy(() => ({ amount: 9.96, atLeast: true }));
    expect(objectIn(documentOf(bound)["nutrition"])["description"]).toContain(
      "energy 9 calories, protein 9.9 g",
    );
  });

  test("tells the allergens and never that it is free of one", () => {
    const said = String(documentOf()["description"]);
    expect(said).toMatch(/contains milk; .*a swap contains sesame; the packs decide/u);
    expect(said).not.toMatch(/free/iu);
  });

  test("claims no times and no diet, which nobody stated", () => {
    const document = documentOf();
    for (const name of ["prepTime", "cookTime", "totalTime", "suitableForDiet"]) {
      expect(document).not.toHaveProperty(name);
    }
  });

  test("markup that a coach wrote is escaped, an ampersand between words is not", () => {
    const recipe = readOrThrow("Fish & chips <b>\nMakes 1\n- 1 g salt & pepper");
    const document = toJsonLd(recipe, { perPortion: SURE });
    expect(document).toMatchObject({
      name: "Fish &amp; chips &lt;b>",
      recipeIngredient: ["1 g salt & pepper"],
    });
    expect(isList(objectIn(document)["recipeIngredient"] ?? null)).toBe(true);
  });
});
