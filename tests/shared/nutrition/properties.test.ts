import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Nutrition, nutritionOf } from "../../../shared/nutrition/portion.ts";
import { addSums } from "../../../shared/nutrition/sum.ts";
import { NUTRIENT_KEYS } from "../../../shared/nutrition/types.ts";
import type { ScaleRequest } from "../../../shared/recipe/scale.ts";
import type { Recipe } from "../../../shared/recipe/types.ts";
import { scaledOf } from "../../kit/cooked.ts";
import { FOODS, recipeOf } from "../../kit/recipes-and-context.ts";

const WEIGHED = [
  "chicken thighs",
  "beef mince",
  "dry white rice",
  "penne",
  "dried green lentils",
  "cooked red lentils",
  "water",
  "red wine",
  "canned tomatoes",
  "onion",
  "broccoli",
  "potatoes, unpeeled",
  "olive oil",
  "sunflower oil, for deep frying",
  "soy sauce, 40 % taken up",
  "salt",
  "quinoa",
  "nettles",
];
const STEPS = [
  "Boil the penne and potatoes for 12 minutes and drain.",
  "Fry the onion and mince for 10 minutes.",
  "Add the tomatoes, lentils and wine and simmer for 30 minutes.",
  "Cook the rice and quinoa in the water until the water is absorbed.",
  "Roast the thighs for 35 minutes.",
  "Serve.",
];

const line = fc
  .tuple(fc.constantFrom(...WEIGHED), fc.integer({ min: 1, max: 1500 }))
  .map(([food, grams]) => `- ${grams} g ${food}`);
const counted = fc
  .tuple(fc.constantFrom("large onions", "eggs", "garlic cloves"), fc.integer({ min: 1, max: 6 }))
  .map(([food, count]) => `- ${count} ${food}`);

interface Parts {
  readonly portions: number;
  readonly first: readonly string[];
  readonly second: readonly string[];
  readonly steps: readonly string[];
}
const partsOf = (of: fc.Arbitrary<string>): fc.Arbitrary<Parts> =>
  fc.record({
    portions: fc.integer({ min: 1, max: 12 }),
    first: fc.array(of, { minLength: 1, maxLength: 8 }),
    second: fc.array(of, { minLength: 1, maxLength: 5 }),
    steps: fc.subarray(STEPS),
  });

function recipeFrom({ portions, first, second, steps }: Parts): Recipe {
  return recipeOf(
    [
      "Random dish",
      `Makes ${portions} portions`,
      "Base:",
      ...first,
      "Topping:",
      ...second,
      "Steps",
      ...steps.map((step, index) => `${index + 1}. ${step}`),
    ].join("\n"),
  );
}

function figures(recipe: Recipe, request: Partial<ScaleRequest> = {}): Nutrition {
  return nutritionOf(scaledOf(recipe, request), FOODS);
}

const RUNS = { numRuns: 60 };

describe("figures of any recipe", () => {
  it("of a whole are the sum of its components'", () => {
    fc.assert(
      fc.property(partsOf(fc.oneof(line, counted)), (parts) => {
        const { components, perPortion } = figures(recipeFrom(parts));
        const sum = addSums(components.map((part) => part.perPortion));
        for (const key of NUTRIENT_KEYS) {
          expect(sum[key].amount).toBeCloseTo(perPortion[key].amount, 6);
          expect(sum[key].atLeast).toBe(perPortion[key].atLeast);
        }
      }),
      RUNS,
    );
  });

  it("of a whole are the sum of each component made alone", () => {
    fc.assert(
      fc.property(partsOf(fc.oneof(line, counted)), (parts) => {
        const recipe = recipeFrom(parts);
        const whole = figures(recipe).whole;
        const base = figures(recipe, { without: ["Topping"] }).whole;
        const topping = figures(recipe, { without: ["Base"] }).whole;
        const sum = addSums([base, topping]);
        for (const key of NUTRIENT_KEYS) {
          expect(sum[key].amount).toBeCloseTo(whole[key].amount, 6);
        }
      }),
      RUNS,
    );
  });

  it("grow with the portions in total and stay the same per portion and per 100 g", () => {
    fc.assert(
      fc.property(partsOf(line), fc.integer({ min: 1, max: 100 }), (parts, portions) => {
        const recipe = recipeFrom(parts);
        const written = figures(recipe);
        const scaled = figures(recipe, { by: { kind: "portions", portions } });
        const factor = portions / parts.portions;
        expect(scaled.togetherG).toBeCloseTo(written.togetherG * factor, 3);
        for (const key of NUTRIENT_KEYS) {
          const close = (a: number, b: number) =>
            expect(a / (b || 1)).toBeCloseTo(b === 0 ? 0 : 1, 9);
          close(scaled.whole[key].amount, written.whole[key].amount * factor);
          close(scaled.perPortion[key].amount, written.perPortion[key].amount);
          close(scaled.per100g[key].amount, written.per100g[key].amount);
        }
        expect(scaled.per100gOf).toBe(written.per100gOf);
      }),
      RUNS,
    );
  });

  it("move by whole pieces only where foods are counted, and by no more than that rounding", () => {
    fc.assert(
      fc.property(
        fc.array(counted, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 1, max: 24 }),
        (first, portions) => {
          const recipe = recipeFrom({ portions: 4, first, second: ["- 10 g salt"], steps: [] });
          const scaled = scaledOf(recipe, { by: { kind: "portions", portions } });
          const roundedG = scaled.components
            .flatMap(({ lines }) => lines)
            .reduce((sum, { roundedByG }) => sum + Math.abs(roundedByG), 0);
          const exact = figures(recipe).whole.energyKcal.amount * (portions / 4);
          const found = nutritionOf(scaled, FOODS).whole.energyKcal.amount;
          // Garlic has the most energy of the three: 149 kcal in 100 g (USDA SR28 11215).
          expect(Math.abs(found - exact)).toBeLessThanOrEqual((roundedG * 149) / 100 + 1e-6);
        },
      ),
      RUNS,
    );
  });

  it("never rise when lines are left out", () => {
    fc.assert(
      fc.property(
        partsOf(fc.oneof(line, counted)),
        fc.array(fc.nat(12), { maxLength: 6 }),
        (parts, which) => {
          const recipe = recipeFrom(parts);
          const keys = recipe.components.flatMap(({ lines }) => lines.map(({ key }) => key));
          const without = [...new Set(which.flatMap((index) => keys[index] ?? []))];
          const foods = new Set(
            recipe.components.flatMap(({ lines }) =>
              lines.filter(({ key }) => !without.includes(key)).map(({ main }) => main.foodText),
            ),
          );
          // A food is left out with all its lines: something else must stay.
          const stays = recipe.components.some(({ lines }) =>
            lines.some(
              ({ key, main }) =>
                foods.has(main.foodText) &&
                !without.includes(key) &&
                !without.some((out) =>
                  recipe.components
                    .flatMap((part) => part.lines)
                    .some((other) => other.key === out && other.main.foodId === main.foodId),
                ),
            ),
          );
          fc.pre(stays);
          const whole = figures(recipe).whole;
          const less = figures(recipe, { without }).whole;
          for (const key of NUTRIENT_KEYS) {
            expect(less[key].amount).toBeLessThanOrEqual(whole[key].amount + 1e-6);
          }
        },
      ),
      RUNS,
    );
  });

  it("stay certain only where every part is known", () => {
    fc.assert(
      fc.property(partsOf(line), (parts) => {
        const { perPortion, unmeasured } = figures(recipeFrom(parts));
        expect(unmeasured.includes("nettles")).toBe(
          [...parts.first, ...parts.second].some((text) => text.includes("nettles")),
        );
        if (unmeasured.length > 0) expect(perPortion.energyKcal.atLeast).toBe(true);
      }),
      RUNS,
    );
  });

  it("name salt that is to taste, and make sodium a lower bound and nothing else", () => {
    const recipe = recipeOf(
      "Rice\nMakes 2 portions\n- 200 g dry white rice\n- salt, to taste\nSteps\n1. Boil the rice and drain.",
    );
    const { perPortion, toTaste } = figures(recipe);
    expect(toTaste).toEqual(["salt"]);
    expect(perPortion.sodiumMg.atLeast).toBe(true);
    expect(perPortion.proteinG.atLeast).toBe(false);
  });
});
