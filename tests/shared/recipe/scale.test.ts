import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readInHand } from "../../../shared/recipe/in-hand.ts";
import { readRecipe } from "../../../shared/recipe/read.ts";
import { resolvePart } from "../../../shared/recipe/resolve-part.ts";
import { type ScaledRecipe, type ScaleRequest, scaleRecipe } from "../../../shared/recipe/scale.ts";
import type { Recipe } from "../../../shared/recipe/types.ts";
import { loadFoodBook } from "../../../src/foods/load.ts";

const FOODS = loadFoodBook();

function read(text: string): Recipe {
  const outcome = readRecipe(text, FOODS);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
  return outcome.value.recipe;
}

const POT = read(`Pepper pot
Makes 6 portions, 1800 g cooked

Base:
- 900 g boneless skinless chicken thighs
- 300 g red bell pepper
- 2 g black pepper
- 6 g salt
- 2 eggs
- ½ lemon
- 30 g olive oil
  or 25 g butter
- 10 g olive oil, for the tray

Yoghurt sauce (optional):
- 240 g plain low-fat yoghurt
- 2 g salt

Steps
1. Roast at 200 °C for 40 minutes.
`);

function scale(
  by: ScaleRequest["by"],
  rest: Partial<ScaleRequest> = {},
  recipe = POT,
): ScaledRecipe {
  const outcome = scaleRecipe(recipe, FOODS, { by, without: [], swaps: {}, ...rest });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
  return outcome.value;
}

function problem(by: ScaleRequest["by"], rest: Partial<ScaleRequest> = {}): string | null {
  const outcome = scaleRecipe(POT, FOODS, { by, without: [], swaps: {}, ...rest });
  return outcome.ok ? null : outcome.problem.code;
}

const portions = (n: number) => ({ kind: "portions", portions: n }) as const;
const have = (grams: number, foodText: string) =>
  ({ kind: "have", foods: [{ grams, foodText }] }) as const;
const lineOf = (scaled: ScaledRecipe, key: string) =>
  scaled.components.flatMap(({ lines }) => lines).find((line) => line.key === key);

describe("by portions", () => {
  test("every weighed line and the yield are multiplied", () => {
    const eight = scale(portions(8));
    expect(eight).toMatchObject({ portions: 8, portionShare: 1, yieldG: 2400 });
    expect(lineOf(eight, "0.0")).toMatchObject({ written: "1.2 kg", grams: 1200 });
    expect(lineOf(eight, "0.1")).toMatchObject({ written: "400 g" });
  });

  test("as written nothing moves, and nothing is rounded", () => {
    const same = scale({ kind: "as written" });
    expect(same).toMatchObject({ factor: 1, portions: 6, cautions: [] });
    expect(lineOf(same, "0.5")).toMatchObject({ written: "½", roundedByG: 0 });
  });

  test("eggs stay whole and say by how many grams that moved the line", () => {
    const eight = scale(portions(8));
    const eggs = lineOf(eight, "0.4");
    // 2 x 8/6 = 2.67 eggs of 50 g: three are taken, 16.7 g more.
    expect(eggs?.written).toBe("3");
    expect(eggs?.grams).toBeCloseTo(150, 6);
    expect(eggs?.roundedByG).toBeCloseTo(50 / 3, 6);
  });

  test("at least one egg is taken, and half a lemon rounds to halves", () => {
    const one = scale(portions(1));
    expect(lineOf(one, "0.4")?.written).toBe("1");
    expect(lineOf(one, "0.5")?.written).toBe("½");
    expect(lineOf(scale(portions(18)), "0.5")?.written).toBe("1½");
  });

  test.each([
    [0, "portions out of range"],
    [-4, "portions out of range"],
    [501, "portions out of range"],
    [Number.NaN, "portions out of range"],
    [2.5, "portions not whole"],
  ])("%d portions are refused", (n, code) => {
    expect(problem(portions(n))).toBe(code);
  });

  test("beyond four times the recipe seasoning is to be held back, not before", () => {
    const held = (n: number) =>
      scale(portions(n)).cautions.flatMap((one) => (one.code === "hold back" ? [one] : []));
    expect(held(24)).toEqual([]);
    expect(held(25)).toEqual([
      {
        code: "hold back",
        seasonings: ["black pepper", "salt"],
        thickeners: [],
        leavenings: [],
      },
    ]);
  });
});

describe("by what is in hand", () => {
  test("portions go to the nearest whole number, and their size takes up the difference", () => {
    const scaled = scale(have(850, "thigh"));
    expect(scaled.portions).toBe(6);
    expect(scaled.portionShare).toBeCloseTo(850 / 900, 9);
    expect(lineOf(scaled, "0.0")).toMatchObject({ written: "850 g" });
    const less = scale(have(700, "chicken"));
    expect(less.portions).toBe(5);
    expect(less.portionShare).toBeCloseTo(700 / 150 / 5, 9);
  });

  test("lines of the same food count together", () => {
    expect(scale(have(80, "olive oil")).factor).toBeCloseTo(2, 9);
  });

  test.each([
    [500, "salmon", "food not in recipe"],
    [500, "pepper", "several foods match"],
    [10, "thigh", "too little in hand"],
    [-10, "thigh", "too little in hand"],
    [Number.NaN, "thigh", "too little in hand"],
    [900_000, "thigh", "too much in hand"],
  ])("%d g of %s is refused", (grams, text, code) => {
    expect(problem(have(grams, text))).toBe(code);
  });

  test("what was left out cannot be in hand", () => {
    expect(problem(have(300, "yoghurt"), { without: ["sauce"] })).toBe("food not in recipe");
  });

  test.each([
    ["850 g of thigh", 850, "thigh"],
    ["2 lb chicken thighs", 907.18474, "chicken thighs"],
    ["thigh 850 g", 850, "thigh"],
    ["3 eggs", 150, "eggs"],
  ])("%s is read", (text, grams, foodText) => {
    const inHand = readInHand(text, POT, FOODS);
    expect(inHand.ok && inHand.value.foodText).toBe(foodText);
    expect(inHand.ok && inHand.value.grams).toBeCloseTo(grams, 6);
  });

  test.each(["850 g", "thigh", "", "-5 g thigh", "0 g thigh"])("%s is not understood", (text) => {
    expect(readInHand(text, POT, FOODS)).toMatchObject({
      problem: { code: "in hand not understood" },
    });
  });
});

describe("parts and swaps", () => {
  test("an optional part is in unless it is left out, and then the yield is not known", () => {
    const without = scale(portions(6), { without: ["sauce"] });
    expect(scale(portions(6)).components).toHaveLength(2);
    expect(without.components).toHaveLength(1);
    expect(without.leftOut).toEqual([{ kind: "component", name: "Yoghurt sauce" }]);
    expect(without.yieldG).toBeNull();
  });

  test("a food left out goes from every part", () => {
    const saltless = scale(portions(6), { without: ["salt"] });
    expect(lineOf(saltless, "0.3")).toBeUndefined();
    expect(lineOf(saltless, "1.1")).toBeUndefined();
  });

  test("a few words or the line's key name a part, an unclear one is asked back", () => {
    const named = (text: string) => {
      const part = resolvePart(POT, text);
      return part.ok ? part.value.name : part.problem.code;
    };
    expect(named("the yoghurt sauce")).toBe("Yoghurt sauce");
    expect(named("yoghurt")).toBe("Yoghurt sauce");
    expect(named("0.1")).toBe("red bell pepper");
    expect(named("pepper")).toBe("several parts match");
    expect(named("cheese")).toBe("no such part");
    expect(named("")).toBe("no such part");
  });

  test("nothing left is refused", () => {
    expect(problem(portions(6), { without: ["Base", "Yoghurt sauce"] })).toBe("nothing left");
  });

  test("a swap is taken by its number, and the other choices stay on offer", () => {
    const line = lineOf(scale(portions(12), { swaps: { "0.6": 1 } }), "0.6");
    expect(line).toMatchObject({ swapped: true, written: "50 g", grams: 50 });
    expect(line?.others.map(({ foodText }) => foodText)).toEqual(["olive oil"]);
    expect(problem(portions(6), { swaps: { "0.6": 2 } })).toBe("no such swap");
    expect(problem(portions(6), { swaps: { "9.9": 0 } })).toBe("no such swap");
    expect(problem(portions(6), { swaps: { "0.6": 0.5 } })).toBe("no such swap");
  });
});

describe("laws of scaling", () => {
  const grams = fc.integer({ min: 1, max: 3000 });
  const recipes = fc
    .tuple(fc.array(grams, { minLength: 2, maxLength: 8 }), fc.integer({ min: 1, max: 40 }))
    .map(([some, n]) =>
      read(
        `T\nMakes ${n}\n- ${some[0]} g chicken thighs\n${some.map((g) => `- ${g} g rice`).join("\n")}`,
      ),
    );
  const massOf = (scaled: ScaledRecipe) =>
    scaled.components
      .flatMap(({ lines }) => lines)
      .reduce((sum, line) => sum + (line.grams ?? 0), 0);
  const writtenMass = (recipe: Recipe) => massOf(scale({ kind: "as written" }, {}, recipe));

  test("the mass of a portion is the same at every size", () => {
    fc.assert(
      fc.property(recipes, fc.integer({ min: 1, max: 500 }), (recipe, n) => {
        const scaled = scale(portions(n), {}, recipe);
        expect(massOf(scaled) / n).toBeCloseTo(writtenMass(recipe) / recipe.portions, 6);
      }),
    );
  });

  test("by what is in hand all of it is used, and portions times their size are the whole", () => {
    fc.assert(
      fc.property(recipes, fc.double({ min: 0.6, max: 9, noNaN: true }), (recipe, times) => {
        const needed = recipe.components[0]?.lines[0]?.main.grams ?? 0;
        const scaled = scale(have(needed * times, "chicken thighs"), {}, recipe);
        expect(lineOf(scaled, "0.0")?.grams).toBeCloseTo(needed * times, 6);
        const perWritten = writtenMass(recipe) / recipe.portions;
        expect(scaled.portions * scaled.portionShare * perWritten).toBeCloseTo(massOf(scaled), 4);
        expect(Number.isInteger(scaled.portions) && scaled.portions >= 1).toBe(true);
      }),
    );
  });

  test("pieces are whole and within half a piece of the exact count, but for the least one", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 300 }), (eggs, n) => {
        const scaled = scale(portions(n), {}, read(`T\nMakes 6\n- ${eggs} eggs\n- 1 g salt`));
        const count = lineOf(scaled, "0.0")?.choice.amount?.value ?? 0;
        expect(Number.isInteger(count) && count >= 1).toBe(true);
        expect(Math.abs(count - Math.max(1, (eggs * n) / 6))).toBeLessThanOrEqual(0.5);
      }),
    );
  });
});
