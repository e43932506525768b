import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Food } from "../../../shared/food/types.ts";
import { foodId } from "../../../shared/ids.ts";
import {
  addSums,
  NOTHING,
  nutrientsOf,
  saltG,
  timesSums,
  UNMEASURED,
} from "../../../shared/nutrition/sum.ts";
import { NUTRIENT_KEYS, type Nutrients } from "../../../shared/nutrition/types.ts";
import { writeFigure, writeMassG, writeShort } from "../../../shared/nutrition/write.ts";

const figures: Nutrients = {
  energyKcal: 200,
  proteinG: 20,
  fatG: 10,
  saturatedFatG: 3,
  carbohydrateG: 5,
  fibreG: 1,
  sugarsG: null,
  sodiumMg: 400,
};

function food(per100g: Partial<Nutrients> = {}): Food {
  return {
    id: foodId("bean-cake"),
    name: "bean cake",
    otherNames: [],
    source: { table: "test", number: "00001" },
    state: "ready",
    per100g: { ...figures, ...per100g },
    waterG: null,
    alcoholG: 0,
    densityGPerMl: null,
    one: null,
    measures: [],
    refusePct: 0,
    allergens: [],
    mayHide: [],
    keepingClass: "shelf-stable",
  };
}

const nutrient = fc.option(fc.double({ min: 0, max: 900, noNaN: true }), { nil: null });
const anyFood = fc
  .record(Object.fromEntries(NUTRIENT_KEYS.map((key) => [key, nutrient])))
  .map((per100g) => food(per100g));
const portion = fc.tuple(anyFood, fc.double({ min: 0, max: 5000, noNaN: true }));

describe("summing nutrients", () => {
  it("takes 250 g as two and a half times 100 g", () => {
    const sums = nutrientsOf(food(), 250);
    expect(sums.energyKcal).toEqual({ amount: 500, atLeast: false });
    expect(sums.proteinG).toEqual({ amount: 50, atLeast: false });
  });

  it("never counts a missing figure as zero: the sum becomes a lower bound", () => {
    const sums = addSums([nutrientsOf(food(), 100), nutrientsOf(food({ sugarsG: 4 }), 100)]);
    expect(sums.sugarsG).toEqual({ amount: 4, atLeast: true });
    expect(sums.proteinG.atLeast).toBe(false);
  });

  it("adds up exactly for no grams, missing figure or not", () => {
    expect(nutrientsOf(food(), 0)).toEqual(NOTHING);
  });

  it("makes every figure a lower bound when a part was not measured", () => {
    const sums = addSums([nutrientsOf(food(), 100), UNMEASURED]);
    for (const key of NUTRIENT_KEYS) expect(sums[key].atLeast).toBe(true);
    expect(sums.energyKcal.amount).toBe(200);
  });

  it("gives the same whichever way the parts are grouped", () => {
    fc.assert(
      fc.property(fc.array(portion, { maxLength: 8 }), fc.nat(8), (parts, cut) => {
        const sums = parts.map(([one, grams]) => nutrientsOf(one, grams));
        const atOnce = addSums(sums);
        const inTwo = addSums([addSums(sums.slice(0, cut)), addSums(sums.slice(cut))]);
        for (const key of NUTRIENT_KEYS) {
          expect(inTwo[key].amount).toBeCloseTo(atOnce[key].amount, 6);
          expect(inTwo[key].atLeast).toBe(atOnce[key].atLeast);
        }
      }),
    );
  });

  it("never falls when a part is added, and never becomes certain again", () => {
    fc.assert(
      fc.property(fc.array(portion, { maxLength: 6 }), portion, (parts, more) => {
        const before = addSums(parts.map(([one, grams]) => nutrientsOf(one, grams)));
        const after = addSums([before, nutrientsOf(more[0], more[1])]);
        for (const key of NUTRIENT_KEYS) {
          expect(after[key].amount).toBeGreaterThanOrEqual(before[key].amount);
          if (before[key].atLeast) expect(after[key].atLeast).toBe(true);
        }
      }),
    );
  });

  it("shares a sum out without losing any of it", () => {
    const whole = nutrientsOf(food(), 600);
    const sixth = timesSums(whole, 1 / 6);
    expect(sixth.energyKcal.amount * 6).toBeCloseTo(1200, 9);
    expect(sixth.sugarsG.atLeast).toBe(true);
  });
});

describe("writing figures", () => {
  const sums = nutrientsOf(food({ energyKcal: 511.7, proteinG: 38.4, fatG: 6.25, fibreG: 0 }), 100);

  it("shows no more digits than a figure has, always with its unit", () => {
    expect(writeFigure(sums, "energyKcal")).toBe("512 kcal");
    expect(writeFigure(sums, "proteinG")).toBe("38 g");
    expect(writeFigure(sums, "fatG")).toBe("6.3 g");
    expect(writeFigure(sums, "fibreG")).toBe("0 g");
    expect(writeMassG(9.96)).toBe("10 g");
    expect(writeMassG(0.01)).toBe("below 0.1 g");
  });

  it("shows salt, two and a half times the sodium", () => {
    expect(saltG({ amount: 400, atLeast: false })).toEqual({ amount: 1, atLeast: false });
    expect(writeFigure(sums, "sodiumMg")).toBe("1 g");
  });

  it("says at least for a lower bound, rounded down, and not known when nothing is", () => {
    const bound = addSums([sums, UNMEASURED]);
    expect(writeFigure(bound, "energyKcal")).toBe("at least 511 kcal");
    expect(writeFigure(bound, "fatG")).toBe("at least 6.2 g");
    expect(writeFigure(bound, "fibreG")).toBe("not known");
    expect(writeFigure(sums, "sugarsG")).toBe("not known");
  });

  it("puts the four that people count in one line", () => {
    expect(writeShort(sums)).toBe("512 kcal · protein 38 g · fat 6.3 g · carbohydrate 5 g");
  });
});
