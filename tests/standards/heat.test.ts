import { describe, expect, it } from "vitest";
import { besselJ0, besselJ1 } from "../../shared/heat/bessel.ts";
import { centreRatio } from "../../shared/heat/conduction.ts";
import { coolingOf, TWO_STAGE } from "../../shared/heat/cool.ts";
import { thermalOf } from "../../shared/heat/properties.ts";
import { brickFactor, plankHours, thawHours } from "../../shared/heat/thaw-time.ts";

describe("the textbook's transient conduction", () => {
  // Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 9.1.
  it.each([
    [1, 0.76519769, 0.44005059],
    [2.4, 0.00250768, 0.52018527],
    [5, -0.17759677, -0.32757914],
    [10, -0.24593576, 0.04347275],
  ])("Bessel functions of %f", (x, j0, j1) => {
    expect(besselJ0(x)).toBeCloseTo(j0, 6);
    expect(besselJ1(x)).toBeCloseTo(j1, 6);
  });

  // Cengel, Heat Transfer: A Practical Approach (2nd ed. 2003), table 4-1: first eigenvalue and coefficient
  // of the one-term approximation; from memory. Beyond Fo = 0.2 it is within 2 % of the whole series.
  it.each([
    ["slab", 0.1, 0.3111, 1.0161],
    ["slab", 1, 0.8603, 1.1191],
    ["slab", 10, 1.4289, 1.262],
    ["cylinder", 0.1, 0.4417, 1.0246],
    ["cylinder", 1, 1.2558, 1.2071],
    ["cylinder", 10, 2.1795, 1.5677],
    ["sphere", 0.1, 0.5423, 1.0298],
    ["sphere", 1, 1.5708, 1.2732],
    ["sphere", 10, 2.8363, 1.9249],
  ] as const)("%s with a Biot number of %f", (shape, biot, eigenvalue, coefficient) => {
    for (const fourier of [0.4, 1]) {
      const oneTerm = coefficient * Math.exp(-(eigenvalue ** 2) * fourier);
      expect(centreRatio(shape, biot, fourier) / oneTerm).toBeCloseTo(1, 2);
    }
  });

  // The same, example 4-3: an egg of 5 cm (k 0.627 W/mK, a 0.151e-6 m2/s) from 5 °C in water of 95 °C,
  // h 1200, has 70 °C in its centre after 865 s; from memory.
  it("the centre of a boiling egg", () => {
    const ratio = centreRatio("sphere", (1200 * 0.025) / 0.627, (0.151e-6 * 865) / 0.025 ** 2);
    expect(95 + ratio * (5 - 95)).toBeCloseTo(70, 0);
  });

  // The same, example 4-7: a short brass cylinder (k 110 W/mK, a 33.9e-6 m2/s) of 10 cm across and 12 cm
  // high, 120 °C, in air of 25 °C, h 60: 63 °C in its centre after 900 s; from memory. By the product of a
  // slab and a cylinder, as for our pots.
  it("the centre of a short cylinder", () => {
    const centreOf = (shape: "slab" | "cylinder", lengthM: number) =>
      centreRatio(shape, (60 * lengthM) / 110, (33.9e-6 * 900) / lengthM ** 2);
    const ratio = centreOf("slab", 0.06) * centreOf("cylinder", 0.05);
    expect(25 + ratio * (120 - 25)).toBeGreaterThan(62);
    expect(25 + ratio * (120 - 25)).toBeLessThan(64);
  });

  it("begins whole, ends at nothing, and never rises", () => {
    for (const shape of ["slab", "cylinder", "sphere"] as const) {
      const ratios = [0.005, 0.01, 0.05, 0.1, 0.5, 1, 5, 50].map((fo) =>
        centreRatio(shape, 0.7, fo),
      );
      expect(ratios[0]).toBeGreaterThan(0.999);
      expect(ratios.at(-1)).toBeLessThan(1e-6);
      // The Bessel polynomials are good to 1e-7, and twenty terms of them to 1e-5.
      const rises = ratios.filter((ratio, n) => ratio > (ratios[n - 1] ?? 1) + 1e-5);
      expect(rises).toEqual([]);
    }
  });
});

describe("thermal properties from composition", () => {
  // ASHRAE Handbook, Refrigeration, "Thermal properties of foods": water at 20 °C, and unfrozen lean beef
  // (water 73 %, protein 21 %, fat 4 %): conductivity 0.47 to 0.49 W/mK, specific heat 3.5 to 3.6 kJ/kgK;
  // from memory. The handbook gives 6 to 10 % as the error of such estimates.
  it("water", () => {
    const pure = { waterG: 100, proteinG: 0, fatG: 0, carbohydrateG: 0, fibreG: 0 };
    const { densityKgM3, specificHeatJKgK, conductivityWMK } = thermalOf(pure, 20);
    expect(densityKgM3).toBeGreaterThan(990);
    expect(densityKgM3).toBeLessThan(1000);
    expect(specificHeatJKgK / 4182).toBeCloseTo(1, 1);
    expect(conductivityWMK).toBeCloseTo(0.6, 2);
  });

  it("lean beef", () => {
    const beef = { waterG: 73, proteinG: 21, fatG: 4, carbohydrateG: 0, fibreG: 0 };
    const { specificHeatJKgK, conductivityWMK } = thermalOf(beef, 10);
    expect(Math.abs(conductivityWMK / 0.48 - 1)).toBeLessThan(0.1);
    expect(Math.abs(specificHeatJKgK / 3550 - 1)).toBeLessThan(0.06);
  });
});

describe("freezing and thawing by Plank's equation", () => {
  // Singh and Heldman, Introduction to Food Engineering (4th ed. 2009), example 7.1: a sphere of 7 cm,
  // 1000 kg/m3, 250 kJ/kg, k 1.2, h 50, freezing at -1.25 °C in air of -40 °C: 2603 s; from memory.
  it("a sphere in an air blast", () => {
    const hours = plankHours({
      shape: "sphere",
      sizeM: 0.07,
      densityKgM3: 1000,
      latentKJKg: 250,
      conductivityWMK: 1.2,
      surfaceWM2K: 50,
      freezingPointC: -1.25,
      aroundC: -40,
    });
    expect(hours * 3600).toBeCloseTo(2603, -1);
  });

  it("a block with little resistance inside thaws by its surface, an endless one as a slab", () => {
    expect(brickFactor(1e-6, [1, 1])).toBeCloseTo(3, 3);
    expect(brickFactor(1e-6, [2, 4])).toBeCloseTo(1.75, 3);
    expect(brickFactor(1, [50, 50])).toBeCloseTo(1, 1);
  });

  // USDA FSIS, The Big Thaw: even small items such as a pound of mince need a full day in the fridge.
  it("a portion of a pound needs about the day that FSIS gives it", () => {
    const hours = thawHours({ container: "flat bag", depthCm: 3, massG: 453 });
    expect(hours).toBeGreaterThan(24 / 1.5);
    expect(hours).toBeLessThan(24 * 1.5);
  });
});

describe("two-stage cooling", () => {
  // FDA Food Code 3-501.14(A): 57 to 21 °C in 2 h, to 5 °C in 6 h in all.
  it("has the rule's figures", () => {
    expect(TWO_STAGE).toEqual({ fromC: 57, middleC: 21, toC: 5, middleH: 2, totalH: 6 });
  });

  // USDA consumer advice: shallow containers, no deeper than 2 inches (5 cm). In still air our figure for
  // such a box is longer than the rule's two hours, by less than half: see the closing note of the model.
  it("a shallow box of 5 cm is near the rule, a deep pot far from it", () => {
    const box = coolingOf({ container: "shallow box", depthCm: 5, massG: 500 });
    const pot = coolingOf({ container: "pot", depthCm: 18, massG: 5000 });
    expect(box.toMiddleH).toBeLessThan(2 * 1.5);
    expect(pot.toMiddleH).toBeGreaterThan(3 * TWO_STAGE.middleH);
  });
});
