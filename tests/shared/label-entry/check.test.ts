import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { TypedLabel } from "../../../shared/label-entry/read-label.ts";
import { findingsOf } from "./typed.ts";

type Style = "us" | "eu";
const codes = (change: Partial<TypedLabel>, style: Style = "eu") =>
  findingsOf(change, style).map(({ code, severity }) => `${severity}: ${code}`);

describe("a label", () => {
  it("with nothing wrong raises nothing, in either style", () => {
    expect(codes({})).toEqual([]);
    expect(codes({ carbohydrate: "80 g", energy: "340 kcal" }, "us")).toEqual([]);
  });

  it.each<[string, Partial<TypedLabel>, Style, string]>([
    [
      "energy typed as the other unit",
      { energy: "344 kJ" },
      "eu",
      "doubtful: energy in the other unit",
    ],
    [
      "kJ typed as kcal",
      {
        per: "serving 30 g",
        energy: "434 kcal",
        protein: "2.9",
        fat: "0.5",
        carbohydrate: "19",
        fibre: "4.8",
        sugars: "0.4",
        saturates: "0.1",
        salt: "0.36",
      },
      "eu",
      "impossible: energy above pure fat",
    ],
    ["a lost digit of energy", { energy: "34 kcal" }, "eu", "doubtful: energy off the macros"],
    ["fat with a slipped point", { fat: "17 g" }, "eu", "doubtful: energy off the macros"],
    ["kJ and kcal swapped", { energy: "344 kJ / 1448 kcal" }, "eu", "impossible: energies swapped"],
    ["kJ beside another kcal", { energy: "1448 kJ / 244 kcal" }, "eu", "doubtful: energies apart"],
    ["more saturates than fat", { saturates: "3.0 g" }, "eu", "impossible: saturates above fat"],
    [
      "a little more saturates than fat",
      { saturates: "1.9 g" },
      "eu",
      "doubtful: saturates above fat",
    ],
    [
      "more sugars than carbohydrate",
      { sugars: "94 g" },
      "eu",
      "impossible: sugars above carbohydrate",
    ],
    [
      "fibre above a US carbohydrate",
      { carbohydrate: "10 g", energy: "100 kcal" },
      "us",
      "impossible: fibre above carbohydrate",
    ],
    [
      "sugars and fibre above a US carbohydrate",
      { carbohydrate: "16 g", energy: "100 kcal", sugars: "12 g" },
      "us",
      "doubtful: sugars and fibre above carbohydrate",
    ],
    [
      "sodium typed as salt beside it",
      { salt: "salt 0.48 g / sodium 480 mg" },
      "eu",
      "doubtful: salt and sodium apart",
    ],
    [
      "grams of sodium for milligrams",
      { salt: "sodium 480 g" },
      "eu",
      "impossible: more sodium than salt has",
    ],
    [
      "milligrams of sodium for grams",
      { salt: "sodium 0.48 mg" },
      "eu",
      "doubtful: sodium below a milligram",
    ],
    ["salt with a slipped point", { salt: "12 g" }, "eu", "doubtful: much saltier than its like"],
  ])("says %s", (_, change, style, code) => {
    expect(codes(change, style)).toContain(code);
  });

  it("says that the parts are more than the mass they are in", () => {
    const per30 = { per: "serving 30 g", energy: "344 kcal" };
    expect(codes(per30)).toContain("impossible: more than the mass");
    // EU fibre is outside carbohydrate and counts for itself; US fibre is in it.
    const rich = { carbohydrate: "85 g", energy: "390 kcal", protein: "8 g" };
    expect(codes(rich)).toEqual(["impossible: more than the mass"]);
    expect(codes(rich, "us")).toEqual([]);
  });

  it("puts what cannot be before what is only odd", () => {
    expect(codes({ salt: "12 g", saturates: "9 g" })).toEqual([
      "impossible: saturates above fat",
      "doubtful: much saltier than its like",
    ]);
  });

  it("counts alcohol in the energy", () => {
    const wine = {
      per: "100 ml",
      density: "0.99",
      energy: "343 kJ / 82 kcal",
      protein: "0.1",
      fat: "0",
      saturates: "0",
      carbohydrate: "2.6",
      fibre: undefined,
      sugars: "0.6",
      salt: "0",
    };
    expect(codes(wine)).toEqual(["doubtful: energy off the macros"]);
    expect(codes({ ...wine, alcohol: "12.5 % vol" })).toEqual([]);
  });

  it("allows what rounding a small serving hides", () => {
    // 14 g of fat in 14 g, 130 kcal for 126: lawful for a tablespoon of oil under 21 CFR 101.9(c).
    const oil = {
      per: "1 tbsp (14 g)",
      energy: "130 calories",
      protein: "0 g",
      fat: "14 g",
      saturates: "2 g",
      carbohydrate: "0 g",
      fibre: "0 g",
      sugars: "0 g",
      salt: "sodium 0 mg",
    };
    expect(codes(oil, "us")).toEqual([]);
  });
});

describe("for any food", () => {
  const tenths = (most: number) => fc.integer({ min: 0, max: most * 10 }).map((n) => n / 10);

  it("energy by the general factors raises nothing, and ten times that always something", () => {
    fc.assert(
      fc.property(
        tenths(30),
        tenths(30),
        tenths(30),
        tenths(9),
        (protein, fat, carbohydrate, fibre) => {
          const kcal = Math.round(4 * protein + 9 * fat + 4 * carbohydrate + 2 * fibre);
          const kj = Math.round(17 * protein + 37 * fat + 17 * carbohydrate + 8 * fibre);
          const macros = {
            protein: `${protein} g`,
            fat: `${fat} g`,
            carbohydrate: `${carbohydrate} g`,
            fibre: `${fibre} g`,
            saturates: undefined,
            sugars: undefined,
          };
          expect(codes({ ...macros, energy: `${kj} kJ / ${kcal} kcal` })).toEqual([]);
          if (kcal > 20) expect(codes({ ...macros, energy: `${kcal * 10} kcal` })).not.toEqual([]);
        },
      ),
    );
  });
});
