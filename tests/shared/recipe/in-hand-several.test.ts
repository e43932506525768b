import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readBoxes } from "../../../shared/recipe/containers-to-fill.ts";
import { readHandList } from "../../../shared/recipe/hand-list.ts";
import { shortOf } from "../../../shared/recipe/hand-used.ts";
import { type ScaledRecipe, type ScaleRequest, scaleRecipe } from "../../../shared/recipe/scale.ts";
import type { Recipe } from "../../../shared/recipe/types.ts";
import { FOODS, recipeOf } from "../../kit/recipes-and-context.ts";

const BAKE = recipeOf(`Thigh and bean bake
Makes 6 portions, 2100 g cooked
- 900 g chicken thighs
- 400 g kidney beans
- 2 onions
- 1 lemon
- 30 g olive oil
- 10 g olive oil, for the tray
Steps
1. Bake at 200 °C for 35 minutes.`);

function scaled(by: ScaleRequest["by"], recipe: Recipe = BAKE): ScaledRecipe {
  const outcome = scaleRecipe(recipe, FOODS, { by, without: [], swaps: {} });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
  return outcome.value;
}

function have(text: string, recipe: Recipe = BAKE): ScaledRecipe {
  const read = readHandList(text, recipe, FOODS);
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  return scaled({ kind: "have", foods: read.value }, recipe);
}

const massOf = ({ components }: ScaledRecipe) =>
  components.flatMap(({ lines }) => lines).reduce((sum, { grams }) => sum + (grams ?? 0), 0);
const written = (one: ScaledRecipe, key: string) =>
  one.components.flatMap(({ lines }) => lines).find((line) => line.key === key)?.written;

describe("reading what is in hand", () => {
  test.each([
    ["850 g thigh", 1],
    ["850 g thigh, 300 g beans; 2 onions", 3],
    ["1,5 kg thigh, 1 lemon", 2],
    ["850 g thigh and 300 g beans", 2],
    ["850 g thigh + 2 onions & half a lemon", 3],
    ["thigh 850 g, beans 300 g", 2],
  ])("“%s” is so many foods: %d", (text, count) => {
    const read = readHandList(text, BAKE, FOODS);
    expect(read.ok && read.value.length).toBe(count);
  });

  test("a decimal comma parts no foods", () => {
    const read = readHandList("1,5 kg thigh", BAKE, FOODS);
    expect(read.ok && read.value[0]?.grams).toBe(1500);
  });

  test("a food that the recipe lacks is refused, and a dozen foods are enough", () => {
    const many = Array.from({ length: 13 }, () => "100 g thigh").join(", ");
    expect(readHandList(many, BAKE, FOODS)).toMatchObject({
      problem: { code: "too many in hand" },
    });
    expect(readHandList("2 onions, 2 salmon", BAKE, FOODS)).toMatchObject({
      problem: { code: "food not in recipe" },
    });
  });

  test("any text is read or refused, never thrown at", () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 500, unit: "grapheme" }), (text) => {
        expect(typeof readHandList(text, BAKE, FOODS).ok).toBe("boolean");
        expect(typeof readBoxes(text).ok).toBe("boolean");
      }),
      { numRuns: 300 },
    );
  });
});

describe("several foods in hand", () => {
  test("the scarcest decides, and what is left of the others is told", () => {
    const one = have("850 g thigh, 300 g beans");
    expect(one.factor).toBeCloseTo(0.75, 9);
    expect(one.inHand.map(({ food }) => food)).toEqual(["kidney beans", "chicken thighs"]);
    // 900 g x 0.75 are used of 850 g.
    expect(one.inHand[1]?.usedG).toBeCloseTo(675, 6);
    expect(one.inHand[0]?.usedG).toBeCloseTo(300, 6);
  });

  test("so much more of the scarcest would use up the next", () => {
    // 850 g of thigh want 400 x 850/900 = 377.78 g of beans.
    const short = shortOf(have("850 g thigh, 300 g beans").inHand);
    expect(short).toMatchObject({ food: "kidney beans", usesUp: "chicken thighs" });
    expect(short?.moreG).toBeCloseTo(77.78, 2);
    expect(shortOf(have("900 g thigh, 400 g beans").inHand)).toBeNull();
    expect(shortOf(have("900 g thigh").inHand)).toBeNull();
  });

  test("the same food typed twice is added up", () => {
    expect(have("400 g thigh, 500 g chicken thighs").factor).toBeCloseTo(1, 9);
  });

  test("whole foods stay whole, and no more of them is taken than there is", () => {
    // 1.5 onions by the recipe; two are there, so two are taken.
    expect(written(have("675 g thigh, 2 onions"), "0.2")).toBe("2");
    // The weight of one and a half: the nearest whole number is two, and two are not there.
    expect(written(have("900 g thigh, 165 g onion"), "0.2")).toBe("1");
  });

  const amounts = fc.record({
    thigh: fc.integer({ min: 200, max: 5000 }),
    beans: fc.integer({ min: 100, max: 3000 }),
    onions: fc.integer({ min: 1, max: 12 }),
    oil: fc.integer({ min: 10, max: 300 }),
  });

  test("never more of any food than there is, and of the scarcest less than a whole one is left", () => {
    fc.assert(
      fc.property(amounts, ({ thigh, beans, onions, oil }) => {
        const one = have(
          `${thigh} g thigh, ${beans} g beans, ${onions} onions, ${oil} g olive oil`,
        );
        for (const { usedG, grams } of one.inHand) expect(usedG).toBeLessThanOrEqual(grams + 1e-6);
        const [scarcest] = one.inHand;
        const restG = (scarcest?.grams ?? 0) - (scarcest?.usedG ?? 0);
        expect(restG).toBeLessThan(scarcest?.onePieceG ?? 1e-6);
      }),
    );
  });
});

describe("boxes to fill", () => {
  test.each([
    ["6 boxes of 400 g", 6, 400],
    ["6 x 400 g", 6, 400],
    ["6x400g", 6, 400],
    ["4 tubs of 1 lb", 4, 453.59237],
    ["6 400 g boxes", 6, 400],
    ["1 pot of 2,5 kg cooked", 1, 2500],
  ])("“%s” is read", (text, boxes, boxG) => {
    const read = readBoxes(text);
    expect(read.ok && read.value.boxes).toBe(boxes);
    expect(read.ok && read.value.boxG).toBeCloseTo(boxG, 4);
  });

  test.each([
    ["6 boxes", "boxes not understood"],
    ["400 g", "boxes not understood"],
    ["6 boxes of 500 ml", "boxes not understood"],
    ["", "boxes not understood"],
    ["0 boxes of 400 g", "boxes out of range"],
    ["6 boxes of 4 g", "boxes out of range"],
    ["9999 x 400 g", "boxes out of range"],
  ])("“%s” is refused", (text, code) => {
    expect(readBoxes(text)).toMatchObject({ problem: { code } });
  });

  test("the stated cooked weight is shared out, and a box is a portion of its own size", () => {
    const one = scaled({ kind: "fill", boxes: 6, boxG: 400 });
    expect(one).toMatchObject({ portions: 6, portionWord: "box", filledBy: { of: "stated" } });
    // 2100 g make 6, so a box of 400 g holds 400/350 of a portion.
    expect(one.portionShare).toBeCloseTo(400 / 350, 9);
    expect(one.yieldG).toBeCloseTo(2400, 6);
  });

  test("without a stated weight the published yields decide, and what is put in where nothing is cooked", () => {
    const roast = recipeOf(
      "Thighs\nMakes 2\n- 1000 g chicken thighs\nSteps\n1. Roast at 200 °C for 35 minutes.",
    );
    expect(scaled({ kind: "fill", boxes: 2, boxG: 300 }, roast).filledBy?.of).toBe("estimated");
    const salad = recipeOf("Salad\nMakes 2\n- 300 g cucumber\n- 100 g yogurt\nSteps\n1. Mix.");
    const mixed = scaled({ kind: "fill", boxes: 4, boxG: 200 }, salad);
    expect(mixed.filledBy).toEqual({ grams: 400, of: "as put together" });
    expect(massOf(mixed)).toBeCloseTo(800, 6);
  });

  test("what cannot be weighed fills no boxes, and too many portions are refused", () => {
    const vague = recipeOf("Vague\nMakes 2\n- 3 zorbles\n- 100 g yogurt");
    const by = { kind: "fill", boxes: 2, boxG: 200 } as const;
    expect(scaleRecipe(vague, FOODS, { by, without: [], swaps: {} })).toMatchObject({
      problem: { code: "whole cannot be weighed", foods: ["zorbles"] },
    });
    const huge = { kind: "fill", boxes: 500, boxG: 10_000 } as const;
    expect(scaleRecipe(BAKE, FOODS, { by: huge, without: [], swaps: {} })).toMatchObject({
      problem: { code: "too much to fill" },
    });
  });
});

describe("a component that makes more than is used", () => {
  const sauced: Recipe = {
    ...BAKE,
    components: BAKE.components.map((part) => ({ ...part, makes: { madeG: 300, usedG: 180 } })),
  };

  test("what is left grows with the recipe, and only what is used is eaten", () => {
    const twice = scaled({ kind: "portions", portions: 12 }, sauced);
    expect(twice.leftover).toEqual([{ component: "Base", madeG: 600, leftG: 240 }]);
    const [thighs] = twice.components.flatMap(({ lines }) => lines);
    expect(thighs?.grams).toBeCloseTo(1800, 6);
    expect(thighs?.choice.uptake).toBeCloseTo(0.6, 9);
    expect(scaled({ kind: "as written" }).leftover).toEqual([]);
  });
});
