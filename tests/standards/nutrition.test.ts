import { describe, expect, it } from "vitest";
import { saltG } from "../../shared/nutrition/sum.ts";

// Whole recipes with their published figures: worked-recipes.test.ts.

describe("salt", () => {
  // Regulation (EU) No 1169/2011, Annex I, point 11: salt = sodium x 2.5. USDA SR28: a teaspoon of table
  // salt, 6 g, has 2,325 mg of sodium.
  it("is two and a half times the sodium", () => {
    expect(saltG({ amount: 2325, atLeast: false }).amount).toBeCloseTo(5.8125, 6);
  });
});
