import { describe, expect, it } from "vitest";
import { labelOf, problemsOf } from "./typed.ts";

describe("what the figures are for", () => {
  it.each([
    ["100 g", 100, "g", false, null],
    ["per 100g", 100, "g", false, null],
    ["100 ML", 100, "ml", false, null],
    ["serving 30 g", 30, "g", true, null],
    ["Serving size: 250 ml", 250, "ml", true, null],
    ["1 serving (30 g)", 30, "g", true, null],
    ["30 g serving", 30, "g", true, null],
    ["3 crackers (30 g)", 30, "g", true, null],
    ["12,5 g", 12.5, "g", true, null],
    ["2 tbsp (30 g)", 30, "g", true, 1],
    ["240 ml (252 g)", 252, "g", true, 1.05],
  ])("%s", (per, amount, unit, isServing, densityGPerMl) => {
    const { basis } = labelOf({ per, density: "1.03 g/ml" });
    expect(basis).toMatchObject({ amount, unit, isServing });
    if (densityGPerMl === null) expect(basis.densityGPerMl).toBeNull();
    else expect(basis.densityGPerMl).toBeCloseTo(densityGPerMl, 6);
  });

  it.each([
    ["", "per not understood"],
    ["a handful", "per not understood"],
    ["100 g as prepared", "per not understood"],
    ["30-40 g", "per not understood"],
    ["serving 1 cup", "per without grams or millilitres"],
    ["serving 2 oz", "per without grams or millilitres"],
    ["0.01 g", "per out of range"],
    ["5 kg", "per out of range"],
  ])("refuses “%s”", (per, code) => {
    expect(problemsOf({ per }).map((problem) => problem.code)).toEqual([code]);
  });

  it("asks for a density when the label is by volume, and takes one from a serving that has both", () => {
    expect(problemsOf({ per: "100 ml" })).toEqual([{ code: "density needed" }]);
    expect(labelOf({ per: "100 ml", density: "1 tbsp = 15 g" }).basisG).toBe(100);
    expect(labelOf({ per: "2 tbsp (33 g)" }).densityGPerMl).toBeCloseTo(1.1, 6);
    expect(labelOf({ per: "2 tbsp (33 g)", density: "1.05" }).densityGPerMl).toBe(1.05);
  });
});

describe("energy", () => {
  it.each([
    ["520 kJ", null, 520],
    ["124 kcal", 124, null],
    ["124 KCAL", 124, null],
    ["520kJ/124kcal", 124, 520],
    ["520 kJ / 124 kcal", 124, 520],
    ["124 kcal (520 kJ)", 124, 520],
    ["190 Calories", 190, null],
    ["2.080 kJ", null, 2080],
    ["2,080 kJ", null, 2080],
    ["2 080 kJ / 497 kcal", 497, 2080],
    ["23,5 kcal", 23.5, null],
    ["<4 kcal", 2, null],
  ])("%s", (energy, kcal, kj) => {
    const label = labelOf({ energy });
    expect(label.energyKcal?.value ?? null).toBe(kcal);
    expect(label.energyKj?.value ?? null).toBe(kj);
  });

  it.each([
    ["124", "energy without unit"],
    ["lots", "energy not understood"],
    ["-5 kcal", "energy not understood"],
    ["124 kcal 520", "energy not understood"],
    ["124 kcal / 130 kcal", "energy not understood"],
    ["12 g", "energy not understood"],
    ["1.2.3 kcal", "energy not understood"],
  ])("refuses “%s”", (energy, code) => {
    expect(problemsOf({ energy }).map((problem) => problem.code)).toEqual([code]);
  });
});

describe("masses", () => {
  it.each([
    ["12", 12, 11.5, 12.5],
    ["12g", 12, 11.5, 12.5],
    ["0,5 g", 0.5, 0.45, 0.55],
    ["0.125 g", 0.125, 0.1245, 0.1255],
    ["1,125 g", 1.125, 1.1245, 1.1255],
    ["<0.5 g", 0.25, 0, 0.5],
    ["less than 1 G", 0.5, 0, 1],
    ["0", 0, 0, 0.5],
    ["900 mg", 0.9, 0.8995, 0.9005],
  ])("%s, with what rounding hides", (protein, value, low, high) => {
    const { proteinG } = labelOf({ protein });
    expect(proteinG.value).toBeCloseTo(value, 9);
    expect(proteinG.low).toBeCloseTo(low, 9);
    expect(proteinG.high).toBeCloseTo(high, 9);
  });

  it("a US label rounds fat to half a gram below 5 g and all else to a gram", () => {
    const { fatG, proteinG } = labelOf({ fat: "2.5 g", protein: "7 g" }, "us");
    expect([fatG.low, fatG.high]).toEqual([2.25, 2.75]);
    expect([proteinG.low, proteinG.high]).toEqual([6.5, 7.5]);
  });

  it.each(["", "some", "1.2.3", "5 oz", "12 g fat", "1 200 g"])("refuses “%s”", (fat) => {
    expect(problemsOf({ fat }).map((problem) => problem.code)).toEqual(["figure not understood"]);
  });

  it("says every box that cannot be read at once", () => {
    const found = problemsOf({ fat: "-1 g", sugars: "x", energy: "9", one: "big", salt: "5 mg" });
    expect(found.map((problem) => problem.code)).toEqual([
      "energy without unit",
      "figure below zero",
      "figure not understood",
      "salt or sodium",
      "one not understood",
    ]);
  });

  it("leaves out what is left out: missing is never zero", () => {
    const label = labelOf({
      fibre: undefined,
      sugars: undefined,
      saturates: undefined,
      salt: undefined,
    });
    expect(label).toMatchObject({
      fibreG: null,
      sugarsG: null,
      saturatesG: null,
      saltG: null,
      sodiumMg: null,
      allergens: null,
      mayHide: null,
    });
  });
});

describe("salt and sodium", () => {
  it.each([
    ["1.2 g", 1.2, null],
    ["salt 1,2 g", 1.2, null],
    ["Salt: 1.2", 1.2, null],
    ["sodium 480 mg", null, 480],
    ["480 mg sodium", null, 480],
    ["Sodium 0.48 g", null, 480],
    ["sodium 1,200 mg", null, 1200],
    ["salt 1.2 g / sodium 480 mg", 1.2, 480],
    ["1.2 g salt (sodium 480 mg)", 1.2, 480],
  ])("%s", (salt, saltG, sodiumMg) => {
    const label = labelOf({ salt });
    expect(label.saltG?.value ?? null).toBe(saltG);
    expect(label.sodiumMg?.value ?? null).toBe(sodiumMg);
  });

  it.each([
    ["480 mg", "salt or sodium"],
    ["-1 g", "figure below zero"],
    ["salty", "figure not understood"],
    ["salt 1 g / salt 2 g", "figure not understood"],
    ["sodium 5 oz", "figure not understood"],
  ])("refuses “%s”", (salt, code) => {
    expect(problemsOf({ salt }).map((problem) => problem.code)).toEqual([code]);
  });
});
