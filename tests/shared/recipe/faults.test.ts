import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sayReadRemark, sayRecipeProblem } from "../../../commands/kit/say-recipe-problem.ts";
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

  test("a letter and its accent are one letter, whatever stood between them", () => {
    const outcome = readRecipe("Pure\u200De\u200D\u0301\u0000e\nMakes 1\n- 1 g salt", FOODS);
    expect(outcome.ok && outcome.value.recipe.title).toBe("Pureée");
  });

  test.each([
    ["100 kB of one line", "x".repeat(100_000), ["text too long"]],
    ["100 kB of lines", "1 g salt\n".repeat(12_000), ["text too long"]],
    ["ten thousand blank lines", `Soup${"\n".repeat(10_000)}Makes 2`, ["too many lines"]],
    [
      "nothing but marks",
      "-\n*\n#\n",
      ["title missing", "ingredient empty", "ingredient empty", "yield missing", "no ingredients"],
    ],
    ["nothing but emoji", "🍲🍲\n🥣\n🍜🍜", ["title missing", "yield missing", "no ingredients"]],
    ["no yield and no ingredients", "Soup\nStir it.", ["yield missing", "no ingredients"]],
    ["1/0", "Soup\nMakes 1\n1/0 g salt", ["amount wrong"]],
    ["a number of twelve zeros", "Soup\nMakes 1\n- 1000000000000 g salt", ["amount wrong"]],
    [
      "prices for ingredients",
      "Soup\nMakes 1\n- £2.50\n- $3",
      ["ingredient empty", "ingredient empty"],
    ],
    ["no text in tags", "<p></p><br>\n<ul></ul>", ["text empty"]],
  ])("%s is told plainly", (_what, text, codes) => {
    const found = problems(text).map((one) => one.code);
    expect(found.filter((code) => codes.includes(code)).sort()).toEqual([...codes].sort());
  });

  test("a price on a line is no part of the food", () => {
    const outcome = readRecipe(
      "Soup\nMakes 1\n- 500 g carrots £1.20\n- 2 onions ($0.80 each)",
      FOODS,
    );
    const lines = outcome.ok ? outcome.value.recipe.components[0]?.lines : [];
    expect(lines?.map(({ main }) => main.foodText)).toEqual(["carrots", "onions"]);
  });

  test("text that runs from right to left is kept, and what turns it is not", () => {
    const outcome = readRecipe(
      "\u202Eמרק עדשים\u202C\nMakes 2\n- 200 g עדשים\n- 200 g carrots",
      FOODS,
    );
    expect(outcome.ok && outcome.value.recipe.title).toBe("מרק עדשים");
    expect(outcome.ok && outcome.value.recipe.components[0]?.lines).toHaveLength(2);
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

  test("a text made by the grammar of recipes is read, or every fault has its sentence", () => {
    const amount = fc.constantFrom(
      "",
      "200 g",
      "2 x 400 g",
      "½",
      "1 1/2 cups (360 ml)",
      "3–4",
      "a pinch of",
      "1/0",
      "about 2 kg",
      "2 400g tins",
      "-5 g",
      "1e9 kg",
      "a dozen",
      "10^12 g",
      "1 heaped tsp",
    );
    const food = fc.constantFrom(
      "salt",
      "salt & pepper to taste",
      "butter or oil",
      "fresh or frozen peas",
      "(",
      "£3",
      "eggs (50 g each)",
      "عدس",
      "🥕 carrots",
      "or",
      "or 5 g butter",
      "chicken thighs, or tofu",
      "<b>rice</b>",
      "x".repeat(560),
    );
    const mark = fc.constantFrom("- ", "* ", "", "• ", "1. ", "Step 2: ", "## ", "**", "☐ ");
    const line = fc.tuple(mark, amount, food).map(([a, b, c]) => `${a}${b} ${c}`);
    const other = fc.constantFrom(
      "",
      "SAUCE",
      "For the sauce",
      "**Sauce**",
      "Ingredients (serves 4)",
      "Method",
      "Step 3",
      "Keeps 3 days. Stir. Freezes badly: it splits",
      "Serves 4–6",
      "5 wraps",
      "Makes",
      "Fridge 3 days / freezer",
      "Reheat from frozen in the microwave",
      "</p><br>",
      "Notes",
      "Optional:",
      "Stir for 1 hr 20 overnight.",
    );
    fc.assert(
      fc.property(fc.array(fc.oneof(line, other), { maxLength: 60 }), (lines) => {
        const outcome = readRecipe(lines.join("\n"), FOODS);
        const said = outcome.ok
          ? outcome.value.remarks.map(sayReadRemark)
          : outcome.problem.map(sayRecipeProblem);
        if (!outcome.ok) expect(said.length).toBeGreaterThan(0);
        for (const sentence of said) expect(sentence).toMatch(/\.$/u);
      }),
      { numRuns: 500 },
    );
  });
});
