import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { euGrams, euSums } from "../../shared/label/eu.ts";
import { euTolerance, usTolerance } from "../../shared/label/tolerance.ts";
import { sumsBy } from "../../shared/nutrition/sum.ts";
import type { NutrientKey, NutrientSums } from "../../shared/nutrition/types.ts";

const exactly = (amounts: Partial<Record<NutrientKey, number>>): NutrientSums =>
  sumsBy((key) => ({ amount: amounts[key] ?? 0, atLeast: false }));

describe("how far food may lie from its label", () => {
  // European Commission, Health and Consumers Directorate-General, "Guidance document for competent
  // authorities ... with regard to the setting of tolerances for nutrient values declared on a label",
  // December 2012, table 1 (foods with nothing added). From memory, every row.
  it.each<[Parameters<typeof euTolerance>[0], number, number, number]>([
    ["carbohydrateG", 9, 7, 11],
    ["sugarsG", 1, 0, 3],
    ["proteinG", 10, 8, 12],
    ["fibreG", 40, 32, 48],
    ["carbohydrateG", 60, 52, 68],
    ["fatG", 9, 7.5, 10.5],
    ["fatG", 20, 16, 24],
    ["fatG", 50, 42, 58],
    ["saturatedFatG", 3, 2.2, 3.8],
    ["saturatedFatG", 4, 3.2, 4.8],
    ["saltG", 1, 0.625, 1.375],
    ["saltG", 1.25, 1, 1.5],
  ])("in the EU: %s of %d g may be %d to %d g", (nutrient, declared, least, most) => {
    const band = euTolerance(nutrient, declared);
    expect(band.least).toBeCloseTo(least, 9);
    expect(band.most).toBeCloseTo(most, 9);
  });

  // 21 CFR 101.9(g)(4)(ii) and (g)(5), as the US Food and Drug Administration's Guide for Developing and
  // Using Data Bases for Nutrition Labeling words them: class II at least 80 %, the third group at most 120 %.
  it("in the US: at least 80 % of what is wanted, at most 120 % of what is not", () => {
    for (const key of ["proteinG", "fibreG", "carbohydrateG"] as const) {
      expect(usTolerance(key, 10), key).toEqual({ least: 8, most: Number.POSITIVE_INFINITY });
    }
    for (const key of ["energyKcal", "sugarsG", "fatG", "saturatedFatG", "sodiumMg"] as const) {
      expect(usTolerance(key, 10), key).toEqual({ least: 0, most: 12 });
    }
  });

  it("is never used up by EU rounding, whatever the amount", () => {
    fc.assert(
      fc.property(
        fc.constantFrom("fatG", "proteinG", "fibreG", "sugarsG", "saturatedFatG"),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (key, amount) => {
          const names = {
            fatG: "fat",
            proteinG: "protein",
            fibreG: "fibre",
            sugarsG: "sugars",
            saturatedFatG: "saturates",
          } as const;
          const text = euGrams(euSums(exactly({ [key]: amount })), names[key]);
          const declared = text.startsWith("less than") ? 0 : Number.parseFloat(text);
          const { least, most } = euTolerance(key, declared);
          expect(amount).toBeGreaterThanOrEqual(least);
          expect(amount).toBeLessThanOrEqual(most);
        },
      ),
    );
  });
});
