import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { RECIPE_LIMITS, type RecipeProblem } from "../../../shared/recipe/problems.ts";
import { readRecipe } from "../../../shared/recipe/read.ts";
import { loadFoodBook } from "../../../src/foods/load.ts";

const FOODS = loadFoodBook();

function problems(text: string): readonly RecipeProblem[] {
  const outcome = readRecipe(text, FOODS);
  return outcome.ok ? [] : outcome.problem;
}

describe("faults", () => {
  test("all are told at once, in the order of the text, each with its line", () => {
    const found = problems(
      "Soup\nMakes 0 portions\n- 1/0 g pepper\n-\n- 0 g salt\n- -5 g salt\nNope keeps 3 days in the fridge\nKeeps 9000 days\nSauce:\n",
    );
    expect(found.map((one) => [one.code, "line" in one ? one.line : 0])).toEqual([
      ["portions out of range", 2],
      ["amount wrong", 3],
      ["ingredient empty", 4],
      ["amount wrong", 5],
      ["amount wrong", 6],
      ["keeping of unknown part", 7],
      ["keeping out of range", 8],
      ["part without ingredients", 9],
    ]);
  });

  test.each([
    ["", "text empty"],
    ["  \n\n ", "text empty"],
    ["x".repeat(RECIPE_LIMITS.chars + 1), "text too long"],
    ["x\n".repeat(RECIPE_LIMITS.lines + 5), "too many lines"],
    [`Soup\n${"x".repeat(RECIPE_LIMITS.lineChars + 1)}`, "line too long"],
    [`${"x".repeat(201)}\nMakes 1\n- 1 g salt`, "title too long"],
    ["- 1 g salt\nMakes 1", "title missing"],
    ["Soup\n- 1 g salt", "yield missing"],
    ["Soup\nMakes 2.5 portions\n- 1 g salt", "portions not whole"],
    ["Soup\nMakes 501 portions\n- 1 g salt", "portions out of range"],
    ["Soup\nMakes -2 portions\n- 1 g salt", "portions out of range"],
    ["Soup\nMakes 2 kg\n- 1 g salt", "yield not understood"],
    ["Soup\nMakes 2\nServes 3\n- 1 g salt", "yield given twice"],
    ["Soup\nMakes 2\nSteps\n1. Stir.", "no ingredients"],
    ["Soup\nMakes 2\n- 2000 kg salt", "amount wrong"],
    ["Soup\nMakes 2\nor 5 g butter\n- 1 g salt", "swap without ingredient"],
    ["Soup\nMakes 2\nA:\n- 1 g salt\na:\n- 1 g salt", "part named twice"],
  ])("%# is refused", (text, code) => {
    expect(problems(text).map((one) => one.code)).toEqual([code]);
  });

  test("characters that hide or turn text are dropped", () => {
    const outcome = readRecipe("So\u202Eup\u200B\u0007 \u2066x\nMakes 1\n- 1 g salt", FOODS);
    expect(outcome.ok && outcome.value.recipe.title).toBe("Soup x");
  });

  test("no text makes it throw or take long", () => {
    const bits = fc.constantFrom(
      "- ",
      "1",
      "½",
      " g ",
      "or ",
      "swap: ",
      "(",
      ")",
      ", ",
      "keeps ",
      "freezes ",
      "3 days",
      " and ",
      "\n",
      "Steps\n",
      "Makes 4\n",
      "Sauce:\n",
      "badly: ",
      "°C",
      "–",
      "to taste",
      "x ",
      "#",
      "to ",
      "min",
    );
    const long = fc
      .tuple(fc.array(bits, { minLength: 1, maxLength: 8 }), fc.integer({ min: 1, max: 400 }))
      .map(([some, times]) =>
        `T\nMakes 2\n${some.join("").repeat(times)}`.slice(0, RECIPE_LIMITS.chars),
      );
    fc.assert(
      fc.property(fc.oneof(long, fc.string({ unit: "binary", maxLength: 2000 })), (text) => {
        const begun = performance.now();
        const outcome = readRecipe(text, FOODS);
        expect(performance.now() - begun).toBeLessThan(2000);
        if (!outcome.ok) expect(outcome.problem.length).toBeGreaterThan(0);
      }),
      { numRuns: 300 },
    );
  });
});
