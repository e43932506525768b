import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readLabel } from "../../../shared/label-entry/read-label.ts";
import { labelOf, problemsOf } from "./typed.ts";

describe("density, one, alcohol", () => {
  it.each([
    ["1.03", 1.03],
    ["1,03 g/ml", 1.03],
    ["1.03 g per ml", 1.03],
    ["1.03 kg/l", 1.03],
    ["1 tbsp = 15 g", 1],
    ["100 ml = 103 g", 1.03],
    ["103 g = 100 ml", 1.03],
    ["1 cup = 250 g", 1],
  ])("%s", (density, gPerMl) => {
    expect(labelOf({ density }).densityGPerMl).toBeCloseTo(gPerMl, 6);
  });

  it("takes the label cup of 240 ml in a US label", () => {
    expect(labelOf({ density: "1 cup = 240 g" }, "us").densityGPerMl).toBeCloseTo(1, 6);
  });

  it.each([
    ["heavy", "density not understood"],
    ["1 slice = 15 g", "density not understood"],
    ["0 ml = 15 g", "density not understood"],
    ["15", "density impossible"],
    ["1 tbsp = 150 g", "density impossible"],
  ])("refuses the density “%s”", (density, code) => {
    expect(problemsOf({ density }).map((problem) => problem.code)).toEqual([code]);
  });

  it.each([
    ["1 slice = 35 g", "slice", 35],
    ["slice 35 g", "slice", 35],
    ["2 slices = 70 g", "slice", 35],
    ["one bar: 1.5 oz", "bar", 42.524],
  ])("one: %s", (one, word, grams) => {
    const read = labelOf({ one }).one;
    expect(read?.word).toBe(word);
    expect(read?.grams).toBeCloseTo(grams, 3);
  });

  it.each([
    "35 g",
    "slice",
    "1 tbsp = 15 g",
    "1 slice = 0 g",
    "1 slice = 9 kg",
    "1 slice = 3 slices",
  ])("refuses one:%s", (one) => {
    expect(problemsOf({ one })).toEqual([{ code: "one not understood", text: one }]);
  });

  it("needs a density for alcohol by volume in a label by weight", () => {
    expect(problemsOf({ alcohol: "5 % vol" })).toEqual([{ code: "alcohol needs density" }]);
    expect(problemsOf({ alcohol: "strong" })).toHaveLength(1);
    expect(labelOf({ alcohol: "10 g" }).alcoholG).toBe(10);
  });
});

describe("allergens", () => {
  it.each([
    ["milk, soy", ["milk", "soy"]],
    ["Contains: Wheat, Eggs.", ["egg", "wheat", "gluten"]],
    ["barley & rye", ["gluten"]],
    ["hazelnuts and peanuts", ["tree nuts", "peanut"]],
    ["nuts", ["tree nuts"]],
    ["soya lecithin; whey powder", ["milk", "soy"]],
    ["sulphur dioxide and sulphites", ["sulphites"]],
    ["may contain traces of sesame", ["sesame"]],
    ["none", []],
  ])("%s", (allergens, found) => {
    expect([...(labelOf({ allergens }).allergens ?? ["missing"])].sort()).toEqual(
      [...found].sort(),
    );
  });

  it.each([
    ["shellfish", "allergen could be several"],
    ["seafood", "allergen could be several"],
    ["milk, chrome", "allergen not known"],
    ["none, milk", "none beside others"],
    [" , ", "allergen not known"],
    ["milk, ".repeat(200), "allergen not known"],
  ])("refuses “%s” whole: half a list would leave somebody unwarned", (allergens, code) => {
    expect(problemsOf({ allergens }).map((problem) => problem.code)).toEqual([code]);
  });
});

describe("hostile text", () => {
  const piece = fc.oneof(
    fc.string({ maxLength: 200, unit: "binary" }),
    fc.constantFrom("1", "100 g", "<", "kJ", "/", "(", ")", "=", " ", "9".repeat(99), ",", "tbsp"),
  );
  const text = fc.array(piece, { maxLength: 12 }).map((pieces) => pieces.join(""));

  it("is read or refused, never thrown at, and never read as an endless or negative figure", () => {
    fc.assert(
      fc.property(fc.array(text, { minLength: 14, maxLength: 14 }), (all) => {
        const at = (index: number) => all[index] ?? "";
        const read = readLabel(
          {
            per: at(0),
            energy: at(1),
            protein: at(2),
            fat: at(3),
            carbohydrate: at(4),
            saturates: at(5),
            fibre: at(6),
            sugars: at(7),
            salt: at(8),
            alcohol: at(9),
            density: at(10),
            one: at(11),
            allergens: at(12),
            mayHide: at(13),
          },
          "eu",
        );
        if (!read.ok) expect(read.problem.length).toBeGreaterThan(0);
        else expect(read.value.proteinG.low).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 300 },
    );
  });

  it("takes bounded time for long boxes", () => {
    const long = "1,".repeat(50_000);
    const start = performance.now();
    problemsOf({
      per: long,
      energy: long,
      fat: long,
      salt: `salt ${long}`,
      density: `${"=".repeat(50_000)}`,
      one: `${"a ".repeat(50_000)}1`,
      allergens: "and ".repeat(50_000),
    });
    expect(performance.now() - start).toBeLessThan(200);
  });
});
