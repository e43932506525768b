import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nutritionOf } from "../../../shared/nutrition/portion.ts";
import { addSums } from "../../../shared/nutrition/sum.ts";
import { NUTRIENT_KEYS } from "../../../shared/nutrition/types.ts";
import { type ScaleRequest, scaleRecipe } from "../../../shared/recipe/scale.ts";
import type { Recipe } from "../../../shared/recipe/types.ts";
import { FOODS, recipeOf } from "../../kit/recipes-and-context.ts";

const BEAN_POT = `Bean pot
Makes 4 portions, 1600 g cooked
Ingredients
Base:
- 600 g chicken thighs
- 400 g kidney beans
- 200 g onion
- 20 g olive oil
  or 25 g butter
- 10 g sesame seeds (optional)
Yoghurt sauce (optional):
- 200 g Greek yoghurt
- 5 g garlic
`;

function figures(
  recipe: Recipe,
  request: Partial<ScaleRequest> = {},
  cookedWeightG: number | null = null,
) {
  const scaled = scaleRecipe(recipe, FOODS, {
    by: { kind: "as written" },
    without: [],
    swaps: {},
    ...request,
  });
  if (!scaled.ok) throw new Error(JSON.stringify(scaled.problem));
  return nutritionOf(scaled.value, FOODS, { cookedWeightG });
}

describe("a recipe's figures", () => {
  const pot = recipeOf(BEAN_POT);

  it("are the sum of what its foods have, shared by the portions", () => {
    const plain = recipeOf(
      "Rice\nMakes 2 portions\nIngredients\n- 100 g white rice\n- 10 g olive oil",
    );
    // 100 g of rice has 365 kcal and 10 g of oil 88.4 (USDA SR28 20044 and 04053).
    expect(figures(plain).whole.energyKcal.amount).toBeCloseTo(453.4, 6);
    expect(figures(plain).perPortion.energyKcal.amount).toBeCloseTo(226.7, 6);
    expect(figures(plain).per100g.energyKcal.amount).toBeCloseTo((453.4 / 110) * 100, 6);
  });

  it("add up over the components", () => {
    const { perPortion, components } = figures(pot);
    const sum = addSums(components.map((part) => part.perPortion));
    for (const key of NUTRIENT_KEYS) expect(sum[key].amount).toBeCloseTo(perPortion[key].amount, 9);
  });

  it("per 100 g are of the cooked food where its weight is known, and say of what", () => {
    expect(figures(pot).per100gOf).toBe("cooked, as the recipe states");
    expect(figures(pot).cookedWeightG).toBe(1600);
    const weighed = figures(pot, {}, 1500);
    expect(weighed.per100gOf).toBe("cooked, weighed");
    expect(weighed.per100g.energyKcal.amount * 15).toBeCloseTo(weighed.whole.energyKcal.amount, 6);
    const without = figures(pot, { without: ["Yoghurt sauce"] });
    expect(without.per100gOf).toBe("as put together");
    expect(without.cookedWeightG).toBeNull();
    expect(without.togetherG).toBe(1230);
  });

  it("are told without each optional part that is in", () => {
    const { without, perPortion } = figures(pot);
    expect(without.map(({ name }) => name)).toEqual(["sesame seeds", "Yoghurt sauce"]);
    const sauceless = figures(pot, { without: ["Yoghurt sauce"] });
    const told = without.find(({ name }) => name === "Yoghurt sauce");
    for (const key of NUTRIENT_KEYS) {
      expect(told?.perPortion[key].amount).toBeCloseTo(sauceless.perPortion[key].amount, 9);
      expect(sauceless.perPortion[key].amount).toBeLessThanOrEqual(perPortion[key].amount);
    }
  });

  it("follow a swap", () => {
    const swapped = figures(pot, { swaps: { "0.3": 1 } });
    // 25 g of butter (717 kcal) for 20 g of olive oil (884 kcal).
    expect(swapped.whole.energyKcal.amount - figures(pot).whole.energyKcal.amount).toBeCloseTo(
      179.25 - 176.8,
      6,
    );
  });

  it("stay the same per portion and per 100 g at any number of portions", () => {
    const written = figures(pot);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), (portions) => {
        const scaled = figures(pot, { by: { kind: "portions", portions } });
        for (const key of NUTRIENT_KEYS) {
          expect(scaled.perPortion[key].amount).toBeCloseTo(written.perPortion[key].amount, 6);
          expect(scaled.per100g[key].amount).toBeCloseTo(written.per100g[key].amount, 6);
          expect(scaled.perPortion[key].atLeast).toBe(written.perPortion[key].atLeast);
        }
      }),
    );
  });

  it("never rise when something is left out", () => {
    const keys = pot.components.flatMap((part) => part.lines.map((line) => line.key));
    const whole = figures(pot).whole;
    fc.assert(
      fc.property(fc.subarray(keys, { maxLength: keys.length - 1 }), (without) => {
        const less = figures(pot, { without }).whole;
        for (const key of NUTRIENT_KEYS) {
          expect(less[key].amount).toBeLessThanOrEqual(whole[key].amount + 1e-9);
        }
      }),
    );
  });

  it("become lower bounds when a line is not known or cannot be weighed, and name it", () => {
    const soup = recipeOf(
      "Soup\nMakes 2 portions\nIngredients\n- 300 g nettles\n- 1 handful rocket\n- 200 g potato",
    );
    const { perPortion, unmeasured } = figures(soup);
    expect(unmeasured[0]).toBe("nettles");
    expect(unmeasured).toHaveLength(2);
    expect(perPortion.energyKcal).toEqual({ amount: 77, atLeast: true });
  });

  it("leave out what is to taste and name it; only sodium becomes a lower bound", () => {
    const soup = recipeOf(
      "Soup\nMakes 2 portions\nIngredients\n- 200 g potato\n- salt, to taste\n- 1 g black pepper",
    );
    const { perPortion, toTaste, unmeasured } = figures(soup);
    expect(toTaste).toEqual(["salt"]);
    expect(unmeasured).toEqual([]);
    expect(perPortion.energyKcal.atLeast).toBe(false);
    expect(perPortion.sodiumMg.atLeast).toBe(true);
  });
});
