import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { euSums } from "../../../shared/label/eu.ts";
import type { BoundedAmount } from "../../../shared/label/types.ts";
import { addSums, sumsBy, UNMEASURED } from "../../../shared/nutrition/sum.ts";
import type { NutrientSums } from "../../../shared/nutrition/types.ts";

/** A food as it truly is, and what of it the table or the scale does not tell. */
interface TrueFood {
  readonly proteinG: number;
  readonly fatG: number;
  readonly availableG: number;
  readonly fibreG: number;
  readonly known: "all" | "all but fibre" | "nothing";
}

const grams = fc.integer({ min: 0, max: 800 }).map((tenths) => tenths / 10);
const anyFood: fc.Arbitrary<TrueFood> = fc.record({
  proteinG: grams,
  fatG: grams,
  availableG: grams,
  fibreG: grams,
  known: fc.constantFrom("all", "all", "all but fibre", "nothing"),
});

const carbohydrateG = (food: TrueFood): number => food.availableG + food.fibreG;

function told(food: TrueFood, asKnown: TrueFood["known"]): NutrientSums {
  if (asKnown === "nothing") return UNMEASURED;
  return sumsBy((key) => {
    const amounts = { ...food, carbohydrateG: carbohydrateG(food) };
    if (key === "fibreG" && asKnown === "all but fibre") return { amount: 0, atLeast: true };
    const isCounted =
      key === "proteinG" || key === "fatG" || key === "fibreG" || key === "carbohydrateG";
    return { amount: isCounted ? amounts[key] : 0, atLeast: false };
  });
}

function expectToHold(shown: BoundedAmount, truth: BoundedAmount): void {
  expect(truth.bound).toBe("exact");
  const slack = 1e-6;
  if (shown.bound !== "up to") expect(shown.amount).toBeLessThanOrEqual(truth.amount + slack);
  if (shown.bound !== "at least") expect(shown.amount).toBeGreaterThanOrEqual(truth.amount - slack);
}

describe("what an EU label says of a recipe of which not everything is known", () => {
  it.each([true, false])(
    "is true of the whole recipe (which foods lack fibre told: %s)",
    (isTold) => {
      fc.assert(
        fc.property(fc.array(anyFood, { minLength: 1, maxLength: 6 }), (foods) => {
          const truth = euSums(addSums(foods.map((food) => told(food, "all"))));
          const unknownFibreCarbohydrateG = foods
            .filter(({ known }) => known === "all but fibre")
            .reduce((sum, food) => sum + carbohydrateG(food), 0);
          const extras = isTold ? { alcoholG: 0, unknownFibreCarbohydrateG } : undefined;
          const shown = euSums(addSums(foods.map((food) => told(food, food.known))), extras);
          expectToHold(shown.energyKj, truth.energyKj);
          expectToHold(shown.energyKcal, truth.energyKcal);
          expectToHold(shown.grams.carbohydrate, truth.grams.carbohydrate);
          expectToHold(shown.grams.fibre, truth.grams.fibre);
          expectToHold(shown.grams.protein, truth.grams.protein);
        }),
      );
    },
  );
});
