import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { nutritionOf } from "../../shared/nutrition/portion.ts";
import { NUTRIENT_KEYS } from "../../shared/nutrition/types.ts";
import { withOtherScale } from "../../shared/recipe/both-scales.ts";
import { readHandList } from "../../shared/recipe/hand-list.ts";
import { type ScaledRecipe, type ScaleRequest, scaleRecipe } from "../../shared/recipe/scale.ts";
import { readTray } from "../../shared/recipe/tray.ts";
import type { Recipe } from "../../shared/recipe/types.ts";
import { FOODS, recipeOf } from "../kit/recipes-and-context.ts";

function scaled(recipe: Recipe, by: ScaleRequest["by"]): ScaledRecipe {
  const outcome = scaleRecipe(recipe, FOODS, { by, without: [], swaps: {} });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
  return outcome.value;
}

const portions = (n: number) => ({ kind: "portions", portions: n }) as const;
const gramsOf = ({ components }: ScaledRecipe) =>
  components.flatMap(({ lines }) => lines.map(({ grams }) => grams ?? 0));

// Culinary mathematics course slides on the recipe conversion factor: with an ingredient in short supply
// factor = available / required, and new yield = old yield x factor.
describe("scaling by an available ingredient, as culinary schools teach it", () => {
  const recipe = recipeOf("Worked example\nMakes 20\n- 2 kg onions\n- 1 kg carrots");

  test.each([
    ["1 kg onions", 0.5, 10],
    ["3 kg onions", 1.5, 30],
    ["3 kg onions, 500 g carrots", 0.5, 10],
  ])("%s: factor %d, yield %d", (text, factor, made) => {
    const have = readHandList(text, recipe, FOODS);
    if (!have.ok) throw new Error(JSON.stringify(have.problem));
    const one = scaled(recipe, { kind: "have", foods: have.value });
    expect(one.factor).toBeCloseTo(factor, 10);
    expect(one.portions).toBe(made);
  });
});

// Arithmetic of pans at equal depth: 9 x 13 in is 117 square inches, 8 x 8 in is 64.
describe("pans at equal depth", () => {
  const areaCm2 = (text: string) => {
    const tray = readTray(text);
    return tray.ok ? tray.value.widthCm * tray.value.depthCm : Number.NaN;
  };

  test("9 x 13 in holds 1.83 times as much as 8 x 8 in", () => {
    expect(areaCm2("9x13 in") / areaCm2("8 x 8 inches")).toBeCloseTo(117 / 64, 10);
  });
});

// US Department of Agriculture and Institute of Child Nutrition, standardized recipes: brown rice baked at
// 350 °F takes 40 minutes for 6 servings in one 8 x 8 x 2 in dish, for 25 in one 12 x 20 x 2 1/2 in pan, and
// for 50 and 100 in two and four such pans.
describe("USDA standardized recipes, baked brown rice", () => {
  const rice = recipeOf(
    "Worked example\nMakes 6 servings\n- 1 1/2 cups brown rice\n- 2 cups water\nSteps\n1. Bake the rice in the water in a covered dish at 350 °F for 40 minutes.",
  );
  const codes = (n: number) => scaled(rice, portions(n)).cautions.map(({ code }) => code);

  test.each([25, 50, 100])("for %d servings the time stays as written, and the area grows", (n) => {
    expect(codes(n)).toContain("times do not scale");
    const depth = scaled(rice, portions(n)).cautions.find(({ code }) => code === "same depth");
    expect(depth).toMatchObject({ factor: n / 6 });
    expect(rice.steps[0]?.minutes).toEqual([40]);
  });

  test("the area we give for 25 lies between the printed pan's area and its volume, by that of the dish", () => {
    const area = (12 * 20) / (8 * 8);
    const volume = area * (2.5 / 2);
    expect(25 / 6).toBeGreaterThan(area);
    const depth = scaled(rice, portions(25)).cautions.find(({ code }) => code === "same depth");
    const factor = depth?.code === "same depth" ? depth.factor : Number.NaN;
    expect(factor).toBeGreaterThan(area);
    expect(factor).toBeLessThan(volume);
  });
});

// USDA FSIS / FoodSafety.gov, "Safe minimum internal temperatures" (2019-04-12), Fahrenheit and Celsius as printed.
describe("USDA safe minimum internal temperatures", () => {
  const check = (line: string) => {
    const recipe = recipeOf(`T\nMakes 2\n- ${line}\nSteps\n1. Roast at 200 °C for 30 minutes.`);
    const caution = scaled(recipe, portions(4)).cautions.find(
      ({ code }) => code === "times do not scale",
    );
    return caution?.code === "times do not scale" ? caution.checks : [];
  };

  test.each([
    ["500 g chicken breast", 74, 0],
    ["500 g chicken thighs", 74, 0],
    ["500 g ground turkey", 74, 0],
    ["500 g ground beef", 71, 0],
    ["500 g ground pork", 71, 0],
    ["500 g pork loin", 63, 3],
    ["500 g lamb, diced", 63, 3],
    ["500 g salmon", 63, 0],
    ["500 g cod", 63, 0],
    ["6 eggs", 71, 0],
  ])("%s: %d °C, then %d minutes of rest", (line, coreC, restMinutes) => {
    expect(check(line)).toMatchObject([{ by: "thermometer", coreC, restMinutes }]);
  });

  test("shrimp by its look", () => {
    expect(check("500 g shrimp")).toMatchObject([{ by: "look" }]);
  });

  test.each([
    [165, 74],
    [160, 71],
    [145, 63],
    [140, 60],
    // FDA Food Code 2022, 3-401.11, 3-501.14, 3-501.16.
    [155, 68],
    [135, 57],
    [70, 21],
    [41, 5],
  ])("%d °F and %d °C are one temperature, either way", (f, c) => {
    expect(withOtherScale(`to ${f} °F`, "both")).toBe(`to ${f} °F / ${c} °C`);
    expect(withOtherScale(`to ${c} °C`, "both")).toBe(`to ${c} °C / ${f} °F`);
  });
});

describe("laws of the recipe conversion factor", () => {
  const grams = fc.integer({ min: 5, max: 3000 });
  const recipes = fc
    .tuple(fc.array(grams, { minLength: 1, maxLength: 6 }), fc.integer({ min: 1, max: 40 }))
    .map(([some, n]) =>
      recipeOf(
        `T\nMakes ${n}\n- ${some[0]} g chicken thighs\n${some.map((g) => `- ${g} g rice`).join("\n")}`,
      ),
    );
  const size = fc.integer({ min: 1, max: 500 });

  test("scaled there and back is the recipe as written", () => {
    fc.assert(
      fc.property(recipes, size, (recipe, n) => {
        const there = scaled(recipe, portions(n));
        const larger: Recipe = {
          ...recipe,
          portions: n,
          components: recipe.components.map((part, at) => ({
            ...part,
            lines: part.lines.map((line, index) => ({
              ...line,
              main: there.components[at]?.lines[index]?.choice ?? line.main,
            })),
          })),
        };
        const back = gramsOf(scaled(larger, portions(recipe.portions)));
        const written = gramsOf(scaled(recipe, { kind: "as written" }));
        back.forEach((value, at) => {
          expect(value).toBeCloseTo(written[at] ?? Number.NaN, 6);
        });
      }),
    );
  });

  test("portions times the figures of one are the figures of the whole, by portions and by boxes", () => {
    const boxes = fc.record({ boxes: fc.integer({ min: 1, max: 20 }), boxG: grams }).map((one) => ({
      kind: "fill" as const,
      boxes: one.boxes,
      boxG: Math.max(20, one.boxG),
    }));
    fc.assert(
      fc.property(recipes, fc.oneof(size.map(portions), boxes), (recipe, by) => {
        const outcome = scaleRecipe(recipe, FOODS, { by, without: [], swaps: {} });
        // More than 500 portions are refused.
        fc.pre(outcome.ok);
        if (!outcome.ok) return;
        const { whole, perPortion, togetherG } = nutritionOf(outcome.value, FOODS);
        for (const key of NUTRIENT_KEYS) {
          expect(perPortion[key].amount * outcome.value.portions).toBeCloseTo(whole[key].amount, 4);
        }
        if (by.kind === "fill") expect(togetherG).toBeCloseTo(by.boxes * by.boxG, 4);
      }),
    );
  });
});
