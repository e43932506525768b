import { describe, expect, test } from "vitest";
import { readRecipe } from "../../../shared/recipe/read.ts";
import { writeRecipeText } from "../../../shared/recipe/write-text.ts";
import { loadFoodBook } from "../../../src/foods/load.ts";
import { TYPED_RECIPES } from "./typed-recipes.ts";

const FOODS = loadFoodBook();

describe("a recipe as a coach types it", () => {
  test.each(TYPED_RECIPES)("$about", (typed) => {
    const outcome = readRecipe(typed.text, FOODS);
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
    const { recipe, remarks } = outcome.value;
    expect(recipe.title).toBe(typed.title);
    expect(recipe.portions).toBe(typed.portions);
    expect(recipe.portionWord).toBe(typed.portionWord ?? "portion");
    expect(recipe.yieldG).toBe(typed.yieldG ?? null);
    expect(recipe.components.map(({ name, lines }) => [name, lines.length])).toEqual(typed.parts);
    const optional = recipe.components.filter((part) => part.optional).map(({ name }) => name);
    expect(optional).toEqual(typed.optional ?? []);
    expect(recipe.steps.map(({ text }) => text)).toHaveLength(typed.steps);
    if (typed.minutes !== undefined) {
      expect(recipe.steps.map(({ minutes }) => minutes)).toEqual(typed.minutes);
    }
    expect(recipe.steps.flatMap(({ temperaturesC }) => temperaturesC)).toEqual(
      typed.temperaturesC ?? [],
    );
    expect(recipe.keeping).toMatchObject(typed.keeping ?? {});
    expect(recipe.reheating).toHaveLength(typed.reheating ?? 0);
    expect(recipe.notes).toHaveLength(typed.notes ?? 0);
    const codes = remarks.map(({ code }) => code);
    expect(codes).toEqual(expect.arrayContaining([...(typed.remarks ?? [])]));
    expect(codes).not.toContain("taken as note");
  });

  test.each(TYPED_RECIPES)("written in our form it is read as the same: $title", ({ text }) => {
    const outcome = readRecipe(text, FOODS);
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
    const again = readRecipe(writeRecipeText(outcome.value.recipe), FOODS);
    expect(again.ok && again.value.recipe).toEqual(outcome.value.recipe);
  });

  test("salt & pepper to taste is two foods, and both are named as left out of the weights", () => {
    const outcome = readRecipe("Pot\nMakes 1\n- 500 g carrots\n- salt & pepper to taste", FOODS);
    const lines = outcome.ok ? outcome.value.recipe.components[0]?.lines : [];
    expect(lines?.slice(1).map(({ main }) => [main.foodText, main.amount, main.grams])).toEqual([
      ["salt", null, null],
      ["pepper", null, null],
    ]);
  });

  test.each([
    ["butter or oil, 10 g", ["butter", "oil"]],
    ["600 g chicken thighs or firm tofu", ["chicken thighs", "firm tofu"]],
    ["500 ml chicken or vegetable stock", ["chicken stock", "vegetable stock"]],
    ["1 tbsp rapeseed or olive oil", ["rapeseed oil", "olive oil"]],
    ["600 g chicken thighs, or firm tofu", ["chicken thighs", "firm tofu"]],
    ["100 g fresh or frozen blueberries", ["blueberries"]],
    ["100 ml half and half", ["half and half"]],
    ["20 g butter, or more", ["butter"]],
    ["100 g mac and cheese", ["mac and cheese"]],
  ])("%s", (line, foods) => {
    const outcome = readRecipe(`Pot\nMakes 1\n- ${line}`, FOODS);
    const [read] = outcome.ok ? (outcome.value.recipe.components[0]?.lines ?? []) : [];
    expect([read?.main, ...(read?.swaps ?? [])].map((choice) => choice?.foodText)).toEqual(foods);
    const grams = [read?.main, ...(read?.swaps ?? [])].map((choice) => choice?.amount);
    expect(new Set(grams.map((amount) => JSON.stringify(amount))).size).toBe(1);
  });
});
