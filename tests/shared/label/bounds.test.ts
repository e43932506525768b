import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { foodBook } from "../../../shared/food/book.ts";
import { euEnergy, euGrams, euPanel, euSums } from "../../../shared/label/eu.ts";
import { labelExtras } from "../../../shared/label/extras.ts";
import { shortFigures } from "../../../shared/label/short.ts";
import { usFigure, usPanel } from "../../../shared/label/us.ts";
import { nutritionOf } from "../../../shared/nutrition/portion.ts";
import { addSums, atLeastFor, sumsBy, UNMEASURED } from "../../../shared/nutrition/sum.ts";
import { NUTRIENT_KEYS, type NutrientKey } from "../../../shared/nutrition/types.ts";
import { scaleRecipe } from "../../../shared/recipe/scale.ts";
import { FOODS, recipeOf } from "../../kit/recipes-and-context.ts";

const meal = sumsBy(
  (key) =>
    ({
      energyKcal: { amount: 517, atLeast: false },
      proteinG: { amount: 38.6, atLeast: false },
      fatG: { amount: 12.7, atLeast: false },
      saturatedFatG: { amount: 0.4, atLeast: false },
      carbohydrateG: { amount: 60, atLeast: false },
      fibreG: { amount: 9, atLeast: false },
      sugarsG: { amount: 0.7, atLeast: false },
      sodiumMg: { amount: 489, atLeast: false },
    })[key],
);
const partly = addSums([meal, UNMEASURED]);

describe("a lower bound", () => {
  it("is rounded down, and so still holds", () => {
    expect(usFigure(partly, "energyKcal").text).toBe("at least 510 kcal");
    expect(usFigure(partly, "proteinG").text).toBe("at least 38 g");
    expect(usFigure(partly, "sodiumMg").text).toBe("at least 480 mg");
    expect(euGrams(euSums(partly), "fat")).toBe("at least 12 g");
  });

  it("has a lower bound of the daily value beside it", () => {
    expect(usFigure(partly, "fatG").dailyValue).toBe("at least 15 %");
    expect(usFigure(partly, "sodiumMg").dailyValue).toBe("at least 20 %");
  });

  it("is not known where it would print as nothing or as a trace", () => {
    expect(usFigure(partly, "sugarsG")).toEqual({ text: "not known", dailyValue: null });
    expect(usFigure(partly, "saturatedFatG")).toEqual({ text: "not known", dailyValue: null });
    expect(euGrams(euSums(UNMEASURED), "protein")).toBe("not known");
    expect(euEnergy(euSums(UNMEASURED))).toBe("not known");
  });

  it("never prints more than there is, whatever the amount and the nutrient", () => {
    const amount = fc.nat(300_000).map((hundredths) => hundredths / 100);
    fc.assert(
      fc.property(fc.constantFrom(...NUTRIENT_KEYS), amount, (key, held) => {
        const sums = atLeastFor(
          sumsBy((of) => ({ amount: of === key ? held : 0, atLeast: false })),
          [key],
        );
        const printed = usFigure(sums, key).text;
        if (printed === "not known") return;
        expect(printed).toMatch(/^at least [\d.]+ (?:kcal|g|mg)$/u);
        expect(Number(printed.split(" ")[2])).toBeLessThanOrEqual(held);
      }),
    );
  });
});

describe("fibre that is not known, in the EU style", () => {
  const noFibre = atLeastFor(meal, ["fibreG"]);

  it("makes carbohydrate and energy the most that they can be", () => {
    expect(euGrams(euSums(noFibre), "carbohydrate")).toBe("up to 51 g");
    expect(euGrams(euSums(noFibre), "fibre")).toBe("at least 9 g");
    // 17 x (38.6 + 51) + 37 x 12.7 + 8 x 9 = 2065.1 kJ; 4 x 89.6 + 9 x 12.7 + 2 x 9 = 490.7 kcal.
    expect(euEnergy(euSums(noFibre))).toBe("up to 2066 kJ / 491 kcal");
  });

  it("changes nothing where the foods concerned have no carbohydrate", () => {
    const extras = { alcoholG: 0, unknownFibreCarbohydrateG: 0 };
    expect(euGrams(euSums(noFibre, extras), "carbohydrate")).toBe("51 g");
  });

  it("leaves a lower bound of what is certain, where other parts are missing too", () => {
    const extras = { alcoholG: 0, unknownFibreCarbohydrateG: 11 };
    expect(euGrams(euSums(partly, extras), "carbohydrate")).toBe("at least 40 g");
    // 490.7 kcal, less 2 kcal for each of 11 g that may be fibre; 2065.1 kJ less 9 kJ each.
    expect(euEnergy(euSums(partly, extras))).toBe("at least 1966 kJ / 468 kcal");
    expect(euGrams(euSums(partly), "carbohydrate")).toBe("not known");
  });

  it("says nothing in the US style, whose carbohydrate holds the fibre", () => {
    expect(usFigure(noFibre, "carbohydrateG").text).toBe("60 g");
  });
});

describe("both styles", () => {
  it("print every row of a meal of nothing as zero", () => {
    const nothing = sumsBy(() => ({ amount: 0, atLeast: false }));
    expect(usPanel(nothing).map(({ figure }) => figure.text)).toEqual([
      "0 kcal",
      "0 g",
      "0 g",
      "0 mg",
      "0 g",
      "0 g",
      "0 g",
      "0 g",
    ]);
    expect(euPanel(nothing).map(({ figure }) => figure.text)).toEqual([
      "0 kJ / 0 kcal",
      ...Array.from({ length: 7 }, () => "0 g"),
    ]);
  });

  it("put the four that people count in one line", () => {
    expect(shortFigures(meal, "us")).toBe("520 kcal · protein 39 g · fat 13 g · carbohydrate 60 g");
    expect(shortFigures(meal, "eu")).toBe("491 kcal · protein 39 g · fat 13 g · carbohydrate 51 g");
  });

  it("show what is added to a meal: no figure falls when a food is added", () => {
    const grams = fc.record({
      proteinG: fc.double({ min: 0, max: 80, noNaN: true }),
      fatG: fc.double({ min: 0, max: 80, noNaN: true }),
      availableG: fc.double({ min: 0, max: 80, noNaN: true }),
      fibreG: fc.double({ min: 0, max: 20, noNaN: true }),
    });
    const sumsOf = (of: { proteinG: number; fatG: number; availableG: number; fibreG: number }) =>
      sumsBy((key: NutrientKey) => ({
        amount:
          key === "proteinG" || key === "fatG" || key === "fibreG"
            ? of[key]
            : key === "carbohydrateG"
              ? of.availableG + of.fibreG
              : 0,
        atLeast: false,
      }));
    fc.assert(
      fc.property(grams, grams, (first, more) => {
        const before = euSums(sumsOf(first));
        const after = euSums(addSums([sumsOf(first), sumsOf(more)]));
        expect(after.energyKj.amount).toBeGreaterThanOrEqual(before.energyKj.amount - 1e-9);
        expect(after.energyKcal.amount).toBeGreaterThanOrEqual(before.energyKcal.amount - 1e-9);
      }),
    );
  });
});

describe("what the sums do not hold", () => {
  const plain = recipeOf("Plain\nMakes 4 portions\nIngredients\n- 400 g white rice");
  const scaled = scaleRecipe(plain, FOODS, { by: { kind: "as written" }, without: [], swaps: {} });
  if (!scaled.ok) throw new Error("does not scale");
  const taken = scaled.value;

  it("is taken from the lines, per portion and per 100 g", () => {
    const strange = FOODS.foods.map((food) => ({
      ...food,
      alcoholG: 10,
      per100g: { ...food.per100g, carbohydrateG: 20, fibreG: null },
    }));
    const book = foodBook(strange);
    const { perPortion, per100g } = labelExtras(taken, book, nutritionOf(taken, book));
    // 400 g: 40 g of alcohol and 80 g of carbohydrate in the whole, over four portions, or by its mass.
    expect(perPortion.alcoholG).toBeCloseTo(10, 9);
    expect(perPortion.unknownFibreCarbohydrateG).toBeCloseTo(20, 9);
    expect(per100g.alcoholG).toBeCloseTo(10, 9);
    expect(per100g.unknownFibreCarbohydrateG).toBeCloseTo(20, 9);
  });

  it("is nothing where every food has its figures", () => {
    const extras = labelExtras(taken, FOODS, nutritionOf(taken, FOODS));
    expect(extras.perPortion).toEqual({ alcoholG: 0, unknownFibreCarbohydrateG: 0 });
  });
});
