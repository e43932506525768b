import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cookedMassOf } from "../../../shared/cooking/cooked-mass.ts";
import { figuresOf, lineIn, massOf, scaledOf, textOf } from "../../kit/cooked.ts";
import { FOODS, recipeOf } from "../../kit/recipes-and-context.ts";

const noEstimate = (lines: readonly string[], steps: readonly string[]) =>
  cookedMassOf(scaledOf(recipeOf(textOf(lines, steps))), FOODS);

describe("the estimated cooked mass", () => {
  test("takes meat by the published yield of its cut and method, and names the source", () => {
    const mass = massOf(["- 1000 g boneless skinless chicken breast"], ["Grill the chicken."]);
    const line = lineIn(mass, "chicken");
    expect(line).toMatchObject({ code: "yield", cookedG: 721 });
    expect("basis" in line && line.basis.source).toContain("05747");
  });

  test("leaves what meat loses in the pot when the liquid is eaten, and takes it off when drained", () => {
    const lines = [
      "- 1000 g boneless skinless chicken breast",
      "- 500 ml chicken stock",
      "- 300 g cod",
    ];
    const stew = massOf(lines, [
      "Put the chicken into the stock and simmer for 30 minutes.",
      "Grill the cod.",
    ]);
    expect(lineIn(stew, "chicken breast")).toMatchObject({ code: "juices stay", cookedG: 1000 });
    const drained = massOf(lines, ["Poach the chicken in the stock for 30 minutes and drain."]);
    expect(lineIn(drained, "chicken breast").cookedG).toBeCloseTo(665, 6);
  });

  test("lets dry rice take up water from the tap where the recipe gives none", () => {
    const mass = massOf(["- 300 g dry white rice"], ["Boil the rice for 12 minutes, drain."]);
    expect(mass).toMatchObject({ grams: 840, tapG: 540 });
  });

  test("lets it take the recipe's own water first, so that mass is conserved", () => {
    const lines = ["- 300 g dry white rice", "- 600 g water"];
    const mass = massOf(lines, ["Simmer the rice in the water, covered, for 15 minutes."]);
    expect(mass).toMatchObject({ grams: 900, tapG: 0, goneG: 0 });
    expect(lineIn(mass, "rice").cookedG).toBeCloseTo(840, 6);
    expect(lineIn(mass, "water").cookedG).toBeCloseTo(60, 6);
  });

  test("gives a dry food no more than the liquid that the recipe cooks it in", () => {
    const lines = ["- 200 g couscous", "- 240 g water"];
    const mass = massOf(lines, [
      "Pour the boiling water over the couscous and leave for 5 minutes.",
    ]);
    expect(mass).toMatchObject({ grams: 440, tapG: 0 });
  });

  test("pours the rest of the cooking water off when the steps drain", () => {
    const lines = ["- 200 g penne", "- 2 l water"];
    const mass = massOf(lines, ["Boil the penne in the water for 11 minutes and drain."]);
    expect(mass.grams).toBeCloseTo(476, 6);
    expect(mass.goneG).toBeCloseTo(2000 - 276, 6);
  });

  test("takes water out of stock and tomatoes for lentils cooked in them", () => {
    const lines = ["- 200 g dried green lentils", "- 400 g canned tomatoes", "- 300 ml beef stock"];
    const mass = massOf(lines, [
      "Put the lentils, tomatoes and stock into a pot.",
      "Simmer for 30 minutes.",
    ]);
    expect(mass.tapG).toBe(0);
    expect(lineIn(mass, "lentils").cookedG).toBeCloseTo(604, 6);
    expect(mass.grams).toBeCloseTo(200 + 400 + lineIn(mass, "stock").rawG, 6);
  });

  test("leaves oats in a cake or a bowl as they are", () => {
    const mass = massOf(
      ["- 200 g rolled oats", "- 50 g honey", "- 100 g cod"],
      ["Bake the oats for 20 minutes.", "Grill the cod."],
    );
    expect(lineIn(mass, "oats").cookedG).toBe(200);
    expect(mass.tapG).toBe(0);
  });

  test("takes a vegetable by its raw and cooked rows, and names one that has none", () => {
    const lines = ["- 300 g onion", "- 300 g carrots"];
    const mass = massOf(lines, ["Boil the onion and carrots for 15 minutes."]);
    expect(lineIn(mass, "onion")).toMatchObject({ code: "dry matter" });
    expect(lineIn(mass, "onion").cookedG).toBeLessThan(300);
    expect(lineIn(mass, "carrots")).toMatchObject({ code: "no factor", cookedG: 300 });
    expect(mass.noFactor).toEqual(["carrots"]);
  });

  test("leaves what no step heats unchanged, without naming it", () => {
    const lines = ["- 300 g boneless skinless chicken breast", "- 200 g cucumber"];
    const mass = massOf(lines, ["Grill the chicken for 12 minutes.", "Serve with the cucumber."]);
    expect(lineIn(mass, "cucumber")).toMatchObject({ code: "not heated", cookedG: 200 });
    expect(mass.noFactor).toEqual([]);
  });

  test("counts frying oil with what is taken up", () => {
    const lines = ["- 400 g cod", "- 500 g sunflower oil, for deep frying, 30 g taken up"];
    const mass = massOf(lines, ["Deep-fry the cod for 6 minutes."]);
    expect(lineIn(mass, "oil").cookedG).toBeCloseTo(30, 6);
  });

  test("leaves cooked rice of the recipe as it is", () => {
    const mass = massOf(
      ["- 400 g cooked white rice", "- 100 g cod"],
      ["Fry the rice for 5 minutes.", "Grill the cod."],
    );
    expect(lineIn(mass, "rice").cookedG).toBe(400);
    expect(mass.tapG).toBe(0);
  });

  test("is not made where nothing is heated, nor where a line cannot be weighed", () => {
    expect(noEstimate(["- 300 g cucumber"], ["Slice the cucumber."])).toBeNull();
    const lines = ["- 300 g boneless skinless chicken breast", "- 1 handful rocket"];
    expect(noEstimate(lines, ["Grill the chicken."])).toBeNull();
  });

  test("is not made where no published figure bears on any line", () => {
    const lines = ["- 300 g carrots", "- 500 g beef mince", "- 400 g canned tomatoes"];
    expect(noEstimate(lines, ["Simmer everything for 30 minutes."])).toBeNull();
    expect(figuresOf(lines, ["Simmer everything for 30 minutes."]).per100gOf).toBe(
      "as put together",
    );
    const drained = massOf(
      ["- 300 g carrots", "- 1 l water"],
      ["Boil the carrots in the water, drain."],
    );
    expect(drained).toMatchObject({ grams: 300, goneG: 1000 });
  });

  test("adds up over its lines, and nothing weighs less than nothing", () => {
    const foods = [
      "chicken breast",
      "dry white rice",
      "water",
      "onion",
      "penne",
      "olive oil",
      "cod",
    ];
    const steps = fc.subarray([
      "Boil the rice and penne for 10 minutes and drain.",
      "Fry the onion and chicken for 10 minutes.",
      "Simmer everything for 20 minutes.",
      "Grill the cod.",
    ]);
    const grams = fc.array(fc.integer({ min: 1, max: 900 }), { minLength: 7, maxLength: 7 });
    fc.assert(
      fc.property(steps, grams, (chosen, weights) => {
        const lines = foods.map((food, index) => `- ${weights[index]} g ${food}`);
        const mass = noEstimate(lines, chosen);
        if (mass === null) return;
        const rawG = weights.reduce((sum, weight) => sum + weight, 0);
        const sum = mass.lines.reduce((all, line) => all + line.cookedG, 0);
        expect(mass.grams).toBeCloseTo(sum, 6);
        for (const line of mass.lines) expect(line.cookedG).toBeGreaterThanOrEqual(0);
        // Only the tap adds mass; frozen vegetables that boil gain at most 6 %.
        expect(mass.grams).toBeLessThanOrEqual(rawG * 1.06 + mass.tapG + 1e-6);
      }),
      { numRuns: 60 },
    );
  });
});

describe("what per 100 g is of", () => {
  const LINES = ["- 1000 g boneless skinless chicken breast"];
  const STEPS = ["Grill the chicken for 14 minutes."];

  test("the member's scale goes before the estimate", () => {
    expect(figuresOf(LINES, STEPS, 700).per100gOf).toBe("cooked, weighed");
    expect(figuresOf(LINES, STEPS, 700).estimate).toBeNull();
  });

  test("the yield that the coach states goes before the estimate", () => {
    const recipe = recipeOf(
      "Test\nMakes 2 portions, 650 g cooked\n- 1000 g chicken breast\nSteps\n1. Grill.",
    );
    expect(scaledOf(recipe).yieldG).toBe(650);
  });

  test("else the estimate: the cooked food holds more per 100 g than the raw", () => {
    const figures = figuresOf(LINES, STEPS);
    expect(figures.per100gOf).toBe("cooked, estimated");
    expect(figures.cookedWeightG).toBeCloseTo(721, 6);
    // USDA SR28 05062: 120 kcal in 100 g raw; all of it is in 72.1 g.
    expect(figures.per100g.energyKcal.amount).toBeCloseTo(120 / 0.721, 6);
    expect(figures.whole.energyKcal.amount).toBeCloseTo(1200, 6);
  });

  test("as put together where nothing is heated", () => {
    expect(figuresOf(LINES, ["Slice the chicken."]).per100gOf).toBe("as put together");
  });
});
