import { describe, expect, it } from "vitest";
import { foodId } from "../../../shared/ids.ts";
import { readRecipe } from "../../../shared/recipe/read.ts";
import type { TakenFoods } from "../../../shared/recipe/types.ts";
import { FOODS } from "../../kit/recipes-and-context.ts";

const text = (...lines: readonly string[]) =>
  ["Pot", "Makes 2 portions", "Ingredients", ...lines.map((line) => `- ${line}`)].join("\n");

function foodsOf(takenFor: TakenFoods, ...lines: readonly string[]) {
  const read = readRecipe(text(...lines), FOODS, "us", takenFor);
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  const choices = read.value.recipe.components.flatMap((part) =>
    part.lines.flatMap((line) => [line.main, ...line.swaps]),
  );
  return choices.map((choice) => choice.foodId);
}

const named = (name: string) => {
  const food = FOODS.foods.find((one) => one.name === name);
  if (food === undefined) throw new Error(`no food ${name}`);
  return food.id;
};

describe("what the coach says that a name means", () => {
  it("goes before the finder, whatever the case, and before nothing else of the name", () => {
    const spinach = named("spinach, raw");
    const taken = { nettles: spinach };
    expect(foodsOf(taken, "100 g Nettles, washed", "100 g young nettles")).toEqual([spinach, null]);
    expect(foodsOf({ kale: spinach }, "100 g kale", "100 g kale leaves")[0]).toBe(spinach);
  });

  it("counts for swaps, and for a name that goes on after its first comma", () => {
    const spinach = named("spinach, raw");
    expect(foodsOf({ nettles: spinach }, "100 g kale or 100 g nettles")[1]).toBe(spinach);
    expect(foodsOf({ "wild, tender greens": spinach }, "100 g wild, tender greens")).toEqual([
      spinach,
    ]);
  });

  it("is passed over for a food that is gone, and for a name that no one gave", () => {
    expect(foodsOf({ nettles: foodId("own-gone") }, "100 g nettles")).toEqual([null]);
    expect(foodsOf({}, "100 g constructor", "100 g __proto__")).toEqual([null, null]);
  });

  it("never lets a raw food stand for a cooked one without a published factor", () => {
    const raw = named("chicken breast, skinless, raw");
    expect(foodsOf({ "cooked xyz": raw, xyz: raw }, "100 g cooked xyz", "100 g xyz")).toEqual([
      null,
      raw,
    ]);
  });
});
