import { describe, expect, test } from "vitest";
import { figuresOf } from "../../kit/cooked.ts";

/** USDA SR28 14096 red wine: 85 kcal and 10.6 g of alcohol in 100 g. */
const WINE_KCAL = 85;
const ALCOHOL_KCAL = 10.6 * 6.93;

describe("alcohol in cooking", () => {
  const wine = (steps: readonly string[]) =>
    figuresOf(["- 100 g red wine", "- 200 g onion"], steps);
  const energy = (steps: readonly string[]) =>
    wine(steps).whole.energyKcal.amount - figuresOf(["- 200 g onion"]).whole.energyKcal.amount;

  test("that nothing heats keeps all of its energy", () => {
    expect(energy(["Pour the wine over the onion."])).toBeCloseTo(WINE_KCAL, 1);
    expect(wine([]).assumptions).toEqual([]);
  });

  test.each([
    ["Warm the wine.", 0.85],
    ["Simmer the wine for 15 minutes.", 0.4],
    ["Simmer the wine for 30 minutes.", 0.35],
    ["Simmer the wine for 1 hour.", 0.25],
    ["Bake the wine with the onion for 2 hours.", 0.1],
  ])("%s", (step, kept) => {
    expect(energy([step])).toBeCloseTo(WINE_KCAL - ALCOHOL_KCAL * (1 - kept), 0);
    expect(wine([step]).assumptions).toContainEqual({
      code: "alcohol kept",
      food: "red wine",
      share: kept,
    });
  });

  test("between two published times the shorter one counts: energy is never put too low", () => {
    expect(energy(["Simmer the wine for 29 minutes."])).toBeCloseTo(
      energy(["Simmer the wine for 15 minutes."]),
      9,
    );
  });

  test("counts all the heat after it went in, and none before", () => {
    const steps = [
      "Fry the onion for 40 minutes.",
      "Pour in the wine and simmer for 10 minutes.",
      "Simmer for 20 minutes.",
    ];
    expect(wine(steps).assumptions).toContainEqual(expect.objectContaining({ share: 0.35 }));
  });

  test("touches no other figure", () => {
    const hot = wine(["Simmer the wine for 1 hour."]).whole;
    const cold = wine([]).whole;
    expect(hot.carbohydrateG).toEqual(cold.carbohydrateG);
    expect(hot.sodiumMg).toEqual(cold.sodiumMg);
  });
});

describe("sodium in cooking water", () => {
  test("goes with the water when it is drained, by the published factor", () => {
    const lines = ["- 1000 g boneless skinless chicken breast"];
    const boiled = figuresOf(lines, ["Boil the chicken for 25 minutes and drain."]);
    // USDA SR28 05062: 45 mg in 100 g; retention code 0855: 70 %.
    expect(boiled.whole.sodiumMg.amount).toBeCloseTo(450 * 0.7, 6);
    expect(boiled.assumptions).toEqual([
      { code: "sodium kept", food: "boneless skinless chicken breast", share: 0.7 },
    ]);
    const kept = figuresOf(lines, ["Boil the chicken for 25 minutes."]);
    expect(kept.whole.sodiumMg.amount).toBeCloseTo(450, 6);
  });

  test("salt that is added stays counted in full", () => {
    const lines = ["- 200 g penne", "- 10 g salt, for the pasta water"];
    const pasta = figuresOf(lines, ["Boil the penne for 10 minutes and drain."]);
    // USDA SR28 02047: 38758 mg in 100 g of salt; 20120: 6 mg in 100 g of pasta, half of it kept (0381).
    expect(pasta.whole.sodiumMg.amount).toBeCloseTo(3875.8 + 6, 6);
    expect(pasta.assumptions).toContainEqual({ code: "counted in full", food: "salt" });
  });
});
