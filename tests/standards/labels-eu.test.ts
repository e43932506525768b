import { describe, expect, it } from "vitest";
import { type EuSums, euEnergy, euGrams, euPanel, euSums } from "../../shared/label/eu.ts";
import { sumsBy } from "../../shared/nutrition/sum.ts";
import type { NutrientKey, NutrientSums } from "../../shared/nutrition/types.ts";

type Amounts = Partial<Record<NutrientKey, number>>;

/** Sums with these amounts, all else a true zero. */
const exactly = (amounts: Amounts): NutrientSums =>
  sumsBy((key) => ({ amount: amounts[key] ?? 0, atLeast: false }));

// Regulation (EU) No 1169/2011, Annex XIV: kJ and kcal per gram, each its own factor.
describe("EU energy, Regulation 1169/2011 Annex XIV", () => {
  const energy = (amounts: Amounts, alcoholG = 0): readonly [number, number] => {
    const { energyKj, energyKcal } = euSums(exactly(amounts), {
      alcoholG,
      unknownFibreCarbohydrateG: 0,
    });
    return [energyKj.amount, energyKcal.amount];
  };

  it.each<[string, Amounts, number, number, number]>([
    ["protein", { proteinG: 100 }, 0, 1700, 400],
    ["carbohydrate without fibre", { carbohydrateG: 100 }, 0, 1700, 400],
    ["fibre, which our carbohydrate holds", { carbohydrateG: 100, fibreG: 100 }, 0, 800, 200],
    ["fat", { fatG: 100 }, 0, 3700, 900],
    ["alcohol", {}, 100, 2900, 700],
    // 17 x 38 + 17 x (60 - 9) + 37 x 12 + 8 x 9 and 4 x 38 + 4 x 51 + 9 x 12 + 2 x 9.
    ["a meal", { proteinG: 38, carbohydrateG: 60, fibreG: 9, fatG: 12 }, 0, 2029, 482],
  ])("of %s", (_what, amounts, alcoholG, kj, kcal) => {
    const [foundKj, foundKcal] = energy(amounts, alcoholG);
    expect(foundKj).toBeCloseTo(kj, 9);
    expect(foundKcal).toBeCloseTo(kcal, 9);
  });

  it("ignores the table's own energy, which goes by factors of each food", () => {
    expect(energy({ energyKcal: 999 })).toEqual([0, 0]);
  });

  // The kilojoules are a sum of their own: 4.184 x 900 kcal would be 3,766 kJ.
  it("is printed kJ first, to the unit", () => {
    expect(euEnergy(euSums(exactly({ fatG: 100 })))).toBe("3700 kJ / 900 kcal");
    expect(euEnergy(euSums(exactly({ fatG: 0.05 })))).toBe("2 kJ / 0 kcal");
  });
});

// European Commission, Health and Consumers Directorate-General, "Guidance document for competent
// authorities ... with regard to the setting of tolerances for nutrient values declared on a label",
// December 2012, table 4 (rounding). From memory, every row. That a tie goes up: common practice, no
// published source.
describe("EU rounding, Commission guidance of December 2012", () => {
  type Gram = keyof EuSums["grams"];
  const eu = (key: Gram, amount: number): string =>
    euGrams(
      {
        ...euSums(exactly({})),
        grams: { ...euSums(exactly({})).grams, [key]: { amount, bound: "exact" } },
      },
      key,
    );

  // From 10 g to 1 g; between 0.5 and 10 g to 0.1 g; up to 0.5 g "0 g" or "<0.5 g" may be said.
  it.each([
    [0, "0 g"],
    [0.2, "less than 0.5 g"],
    [0.5, "less than 0.5 g"],
    [0.51, "0.5 g"],
    [3.14, "3.1 g"],
    [3.15, "3.2 g"],
    [9.94, "9.9 g"],
    [9.96, "10 g"],
    [10, "10 g"],
    [10.49, "10 g"],
    [10.5, "11 g"],
  ])("takes %d g of a macronutrient as %s", (amount, printed) => {
    for (const key of ["fat", "carbohydrate", "sugars", "fibre", "protein"] as const) {
      expect(eu(key, amount), key).toBe(printed);
    }
  });

  // Saturates: as above, but up to 0.1 g.
  it.each([
    [0, "0 g"],
    [0.1, "less than 0.1 g"],
    [0.11, "0.1 g"],
    [0.5, "0.5 g"],
    [9.95, "10 g"],
    [10.5, "11 g"],
  ])("takes %d g of saturates as %s", (amount, printed) => {
    expect(eu("saturates", amount)).toBe(printed);
  });

  // Salt: from 1 g to 0.1 g; between 0.0125 and 1 g to 0.01 g; up to 0.0125 g "0 g" or "<0.01 g" may be
  // said. From 0.01 to 0.0125 g we print 0.01 g, which is as lawful and not untrue.
  it.each([
    [0, "0 g"],
    [0.005, "less than 0.01 g"],
    [0.01, "0.01 g"],
    [0.0125, "0.01 g"],
    [0.0151, "0.02 g"],
    [0.994, "0.99 g"],
    [0.996, "1 g"],
    [1, "1 g"],
    [1.04, "1 g"],
    [1.05, "1.1 g"],
  ])("takes %d g of salt as %s", (amount, printed) => {
    expect(eu("salt", amount)).toBe(printed);
  });
});

// Regulation (EU) No 1169/2011, Annex XV (order and names), Annex I (carbohydrate without fibre; salt is
// sodium x 2.5).
it("prints a whole EU panel by name, in the order of the law", () => {
  const sums = exactly({
    energyKcal: 511.7,
    fatG: 12,
    saturatedFatG: 3.14,
    sodiumMg: 483,
    carbohydrateG: 60,
    fibreG: 9,
    sugarsG: 0.2,
    proteinG: 38,
  });
  const lines = euPanel(sums).map(({ name, figure }) => `${name}|${figure.text}`);
  expect(lines).toEqual([
    "Energy|2029 kJ / 482 kcal",
    "Fat|12 g",
    "of which saturates|3.1 g",
    "Carbohydrate|51 g",
    "of which sugars|less than 0.5 g",
    "Fibre|9 g",
    "Protein|38 g",
    "Salt|1.2 g",
  ]);
});
