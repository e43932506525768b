import qty from "js-quantities";
import { describe, expect, test } from "vitest";
import {
  celsiusToFahrenheit,
  fahrenheitToCelsius,
  gasMarkToCelsius,
  writeCore,
  writeOven,
} from "../../shared/quantity/temperature.ts";
import type { Unit } from "../../shared/quantity/types.ts";
import { massUnitG, volumeUnitMl } from "../../shared/quantity/unit.ts";

// Exact definitions: National Institute of Standards and Technology (NIST), Special Publication 811,
// "Guide for the Use of the International System of Units", 2008, appendix B; and NIST Handbook 44,
// "Specifications, Tolerances, and Other Technical Requirements for Weighing and Measuring Devices",
// appendix C. The figures are textbook constants, noted from memory.

describe("mass (NIST SP 811, 2008, appendix B.8; Handbook 44, appendix C)", () => {
  test("the avoirdupois pound is exactly 453.59237 g and the ounce exactly 28.349523125 g", () => {
    expect(massUnitG("lb")).toBe(453.59237);
    expect(massUnitG("oz")).toBe(28.349523125);
  });

  test("metric masses are decimal", () => {
    expect([massUnitG("mg"), massUnitG("g"), massUnitG("kg")]).toEqual([0.001, 1, 1000]);
  });

  test("a piece, a pinch and a volume are no mass", () => {
    expect([massUnitG("piece"), massUnitG("pinch"), massUnitG("cup")]).toEqual([null, null, null]);
  });
});

describe("volume (NIST Handbook 44, appendix C: the US gallon is 231 cubic inches)", () => {
  test.each<[Unit, number]>([
    ["tsp", 4.92892159375],
    ["tbsp", 14.78676478125],
    ["fl oz", 29.5735295625],
    ["cup", 236.5882365],
    ["pint", 473.176473],
    ["quart", 946.352946],
  ])("a US %s is %d ml", (unit, ml) => {
    expect(volumeUnitMl(unit, "us")).toBeCloseTo(ml, 11);
  });

  test("four quarts are 231 cubic inches of 2.54 cm", () => {
    expect(4 * (volumeUnitMl("quart", "us") ?? 0)).toBeCloseTo(231 * 2.54 ** 3, 9);
  });

  test("the ladder holds: 3 tsp a tbsp, 16 tbsp a cup, 2 cups a pint, 16 fl oz a pint", () => {
    const ml = (unit: Unit) => volumeUnitMl(unit, "us") ?? 0;
    expect(3 * ml("tsp")).toBeCloseTo(ml("tbsp"), 10);
    expect(16 * ml("tbsp")).toBeCloseTo(ml("cup"), 10);
    expect(2 * ml("cup")).toBeCloseTo(ml("pint"), 10);
    expect(16 * ml("fl oz")).toBeCloseTo(ml("pint"), 10);
  });

  test("metric spoons hold 5 and 15 ml and the metric cup 250 ml (common practice)", () => {
    const spoons = (["tsp", "tbsp", "cup"] as const).map((unit) => volumeUnitMl(unit, "metric"));
    expect(spoons).toEqual([5, 15, 250]);
  });

  test("label spoons and cup: 5, 15 and 240 ml (US FDA, 21 CFR 101.9(b)(5)(viii))", () => {
    const spoons = (["tsp", "tbsp", "cup"] as const).map((unit) => volumeUnitMl(unit, "label"));
    expect(spoons).toEqual([5, 15, 240]);
  });

  test("a pinch is not a volume", () => {
    expect(volumeUnitMl("pinch", "us")).toBeNull();
  });
});

describe("temperature (NIST SP 811, 2008, appendix B.8: t/°C = (t/°F - 32) / 1.8)", () => {
  test.each([
    [0, 32],
    [100, 212],
    [180, 356],
    [190, 374],
    [200, 392],
    [220, 428],
    [-40, -40],
  ])("%d °C is %d °F exactly", (celsius, fahrenheit) => {
    expect(celsiusToFahrenheit(celsius)).toBe(fahrenheit);
    expect(fahrenheitToCelsius(fahrenheit)).toBeCloseTo(celsius, 12);
  });

  // US Department of Agriculture, Food Safety and Inspection Service, "Safe Minimum Internal Temperature
  // Chart": poultry and leftovers 165 °F (74 °C), fish 145 °F (63 °C), minced meat 160 °F (71 °C).
  test("food-safety temperatures keep the published pair of figures", () => {
    expect([writeCore(74), writeCore(63), writeCore(71), writeCore(5)]).toEqual([
      "74 °C / 165 °F",
      "63 °C / 145 °F",
      "71 °C / 160 °F",
      "5 °C / 41 °F",
    ]);
  });

  test("an oven setting is named to the nearest ten (common practice, no published source)", () => {
    expect([writeOven(200), writeOven(180)]).toEqual(["200 °C / 390 °F", "180 °C / 360 °F"]);
  });

  test("gas marks stand for the usual settings (common practice, no published standard)", () => {
    expect([0.25, 1, 4, 6, 9].map(gasMarkToCelsius)).toEqual([110, 140, 180, 200, 240]);
    expect(gasMarkToCelsius(12)).toBeNull();
  });
});

describe("a general unit library (js-quantities 1.8) on the same conversions", () => {
  test.each<[Unit, string]>([
    ["mg", "mg"],
    ["kg", "kg"],
    ["oz", "oz"],
    ["lb", "lb"],
  ])("grams of a %s", (unit, theirs) => {
    const expected = qty(1, theirs).to("g").scalar;
    // The library rounds the ounce in its eighth digit.
    expect((massUnitG(unit) ?? 0) / expected).toBeCloseTo(1, 8);
  });

  test.each<[Unit, string]>([
    ["tsp", "tsp"],
    ["tbsp", "tbsp"],
    ["fl oz", "floz"],
    ["cup", "cup"],
    ["pint", "pint"],
    ["quart", "qt"],
    ["cl", "cl"],
    ["l", "l"],
  ])("millilitres of a US or metric %s", (unit, theirs) => {
    const expected = qty(1, theirs).to("ml").scalar;
    expect((volumeUnitMl(unit, "us") ?? 0) / expected).toBeCloseTo(1, 6);
  });

  test("degrees from one scale to the other", () => {
    for (const celsius of [-18, 0, 4, 21, 57, 74, 200]) {
      const fahrenheit = qty(celsius, "tempC").to("tempF").scalar;
      expect(celsiusToFahrenheit(celsius)).toBeCloseTo(fahrenheit, 6);
    }
  });

  test("a mass from a volume by density: a cup of honey at 1.43 g/ml", () => {
    const mass = qty(1, "cup").mul(qty(1.43, "g/ml")).to("g").scalar;
    expect((volumeUnitMl("cup", "us") ?? 0) * 1.43).toBeCloseTo(mass, 3);
  });
});
