import { describe, expect, it } from "vitest";
import { usFigure, usPanel } from "../../shared/label/us.ts";
import { sumsBy } from "../../shared/nutrition/sum.ts";
import type { NutrientKey, NutrientSums } from "../../shared/nutrition/types.ts";

type Amounts = Partial<Record<NutrientKey, number>>;

/** Sums with these amounts, all else a true zero. */
const exactly = (amounts: Amounts): NutrientSums =>
  sumsBy((key) => ({ amount: amounts[key] ?? 0, atLeast: false }));
const us = (key: NutrientKey, amount: number): string =>
  usFigure(exactly({ [key]: amount }), key).text;

// Code of Federal Regulations, title 21, section 101.9(c), as amended in 2016; the rounding table as the
// US Food and Drug Administration reprints it in its Guide to Nutrition Labeling and Education Act
// Requirements, attachment 7. That a tie goes up is common practice without a published source.
describe("US rounding, 21 CFR 101.9(c)", () => {
  // (c)(1): below 5 may be zero; to 5 up to and including 50; to 10 above 50.
  it.each([
    [0, "0 kcal"],
    [4.9, "0 kcal"],
    [5, "5 kcal"],
    [7.4, "5 kcal"],
    [7.5, "10 kcal"],
    [47, "45 kcal"],
    [48, "50 kcal"],
    [50, "50 kcal"],
    [51, "50 kcal"],
    [54.9, "50 kcal"],
    [55, "60 kcal"],
    [511.7, "510 kcal"],
  ])("takes %d kcal as %s", (amount, printed) => {
    expect(us("energyKcal", amount)).toBe(printed);
  });

  // (c)(2) and (c)(2)(i): below 0.5 g zero; to half a gram below 5 g; to a gram from 5 g on.
  it.each([
    [0, "0 g"],
    [0.49, "0 g"],
    [0.5, "0.5 g"],
    [0.74, "0.5 g"],
    [0.75, "1 g"],
    [4.74, "4.5 g"],
    [4.9, "5 g"],
    [5, "5 g"],
    [5.49, "5 g"],
    [5.5, "6 g"],
    [78.2, "78 g"],
  ])("takes %d g of fat, or of saturated fat, as %s", (amount, printed) => {
    expect(us("fatG", amount)).toBe(printed);
    expect(us("saturatedFatG", amount)).toBe(printed);
  });

  // (c)(4): below 5 mg zero; to 5 mg from 5 to 140 mg; to 10 mg above 140 mg.
  it.each([
    [0, "0 mg"],
    [4.9, "0 mg"],
    [5, "5 mg"],
    [7.5, "10 mg"],
    [138, "140 mg"],
    [140, "140 mg"],
    [142, "140 mg"],
    [144.9, "140 mg"],
    [145, "150 mg"],
    [483, "480 mg"],
  ])("takes %d mg of sodium as %s", (amount, printed) => {
    expect(us("sodiumMg", amount)).toBe(printed);
  });

  // (c)(6), (c)(6)(i), (c)(6)(ii), (c)(7): below 0.5 g zero; below 1 g "less than 1 g"; to a gram.
  it.each([
    [0, "0 g"],
    [0.49, "0 g"],
    [0.5, "less than 1 g"],
    [0.99, "less than 1 g"],
    [1, "1 g"],
    [1.49, "1 g"],
    [1.5, "2 g"],
    [60.2, "60 g"],
  ])("takes %d g of carbohydrate, fibre, sugars or protein as %s", (amount, printed) => {
    for (const key of ["carbohydrateG", "fibreG", "sugarsG", "proteinG"] as const) {
      expect(us(key, amount), key).toBe(printed);
    }
  });

  // (c)(9), 2016 (from memory): total fat 78 g, saturated fat 20 g, total carbohydrate 275 g, fibre 28 g,
  // sodium 2,300 mg; (d)(7)(ii): to the nearest whole per cent, of the printed or of the exact amount.
  it.each<[NutrientKey, number, string | null]>([
    ["fatG", 78, "100 %"],
    ["saturatedFatG", 20, "100 %"],
    ["carbohydrateG", 275, "100 %"],
    ["fibreG", 28, "100 %"],
    ["sodiumMg", 2300, "100 %"],
    // Printed 12 g: 12 / 78 = 15.4 %. The exact 12.4 g would give 15.9 %.
    ["fatG", 12.4, "15 %"],
    // Printed zero is zero per cent, though 0.49 / 20 is more than 2 %.
    ["saturatedFatG", 0.49, "0 %"],
    // No number is printed ("less than 1 g"), so the exact amount counts: 0.9 / 28 = 3.2 %.
    ["fibreG", 0.9, "3 %"],
    // No daily value for total sugars and none for calories; protein's goes by corrected protein, (c)(7)(ii).
    ["sugarsG", 20, null],
    ["energyKcal", 500, null],
    ["proteinG", 50, null],
  ])("gives %s of %d the daily value %s", (key, amount, percent) => {
    expect(usFigure(exactly({ [key]: amount }), key).dailyValue).toBe(percent);
  });
});

// Code of Federal Regulations, title 21, section 101.9(c) and (d)(1): names and order of the rows.
it("prints a whole US panel by name, in the order of the law", () => {
  const sums = exactly({
    energyKcal: 511.7,
    fatG: 12.3,
    saturatedFatG: 3.14,
    sodiumMg: 483,
    carbohydrateG: 60.2,
    fibreG: 9.1,
    sugarsG: 0.7,
    proteinG: 38.4,
  });
  const lines = usPanel(sums).map(({ name, isPart, figure }) =>
    [isPart ? `- ${name}` : name, figure.text, figure.dailyValue ?? ""].join("|"),
  );
  expect(lines).toEqual([
    "Calories|510 kcal|",
    "Total Fat|12 g|15 %",
    "- Saturated Fat|3 g|15 %",
    "Sodium|480 mg|21 %",
    "Total Carbohydrate|60 g|22 %",
    "- Dietary Fiber|9 g|32 %",
    "- Total Sugars|less than 1 g|",
    "Protein|38 g|",
  ]);
});
