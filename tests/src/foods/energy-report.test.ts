import { describe, expect, it } from "vitest";
import { energyReport, energyReportLines } from "../../../src/foods/energy-report.ts";
import { loadFoodBook } from "../../../src/foods/load.ts";

const { foods } = loadFoodBook();
const byNumber = (number: string) => {
  const food = foods.find((one) => one.source.number === number);
  if (food === undefined) throw new Error(`the table lacks ${number}`);
  return food;
};

describe("the report of energy against the general factors", () => {
  it("names what is far off by right: cocoa, bran, vinegar, stevia", () => {
    const names = energyReport(foods, 25).map(({ food }) => food.name);
    for (const number of ["19165", "20077", "02053", "19918"]) {
      expect(names).toContain(byNumber(number).name);
    }
  });

  it("puts a food with no energy of its own first, then the widest gap", () => {
    const report = energyReport(foods, 10);
    expect(report[0]?.gapPct).toBeNull();
    const widths = report.flatMap(({ gapPct }) => (gapPct === null ? [] : [Math.abs(gapPct)]));
    expect(widths).toEqual(widths.toSorted((a, b) => b - a));
    expect(Math.min(...widths)).toBeGreaterThan(10);
  });

  it("leaves most meat, fish and egg out, where the factors hardly differ", () => {
    const animal = foods.filter((food) =>
      /^(?:raw|cooked-meat|cooked-fish|egg)/u.test(food.keepingClass),
    );
    const reported = energyReport(animal, 10);
    expect(reported.length / animal.length).toBeLessThan(0.1);
  });

  it("shows a figure typed a power of ten wrong", () => {
    const rice = byNumber("20044");
    const wrong = { ...rice, per100g: { ...rice.per100g, energyKcal: 36.5 } };
    expect(energyReport([rice], 10)).toEqual([]);
    expect(energyReportLines([wrong], 10)).toEqual([
      `${rice.name}: 36.5 kcal stated, 354 kcal by the general factors (+871 %)`,
    ]);
  });

  it("counts alcohol, so wine is no surprise", () => {
    expect(energyReport([byNumber("14096")], 10)).toEqual([]);
    expect(energyReport([{ ...byNumber("14096"), alcoholG: 0 }], 10)).toHaveLength(1);
  });

  it("says nothing of a food with a part missing", () => {
    const rice = byNumber("20044");
    expect(energyReport([{ ...rice, per100g: { ...rice.per100g, fatG: null } }], 0)).toEqual([]);
  });
});
