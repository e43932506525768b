import fc from "fast-check";
import { readRecipe } from "../../../shared/recipe/read.ts";
import { readStep } from "../../../shared/recipe/read-step.ts";
import type { Line, MakesMore, Recipe, StatedKeeping } from "../../../shared/recipe/types.ts";
import { loadFoodBook } from "../../../src/foods/load.ts";
import { LINES, NAMES, PROSE } from "./pieces.ts";

export const FOODS = loadFoodBook();

/** The recipe in a text, or why it cannot be read. */
export function readOrThrow(text: string): Recipe {
  const outcome = readRecipe(text, FOODS);
  if (!outcome.ok) throw new Error(`${JSON.stringify(outcome.problem)}\n${text}`);
  return outcome.value.recipe;
}

const words = fc
  .array(
    fc.constantFrom(..."stir the pan until it is hot, then rest 5 minutes at 60 °C".split(" ")),
    {
      minLength: 1,
      maxLength: 300,
    },
  )
  .map((some) => some.join(" "));
const prose = fc.oneof({ weight: 3, arbitrary: fc.constantFrom(...PROSE) }, words);

/** Texts in and around our form: whatever of them is read is a recipe that a coach could have pasted. */
export const anyRecipeText: fc.Arbitrary<string> = fc
  .record({
    title: fc.oneof(prose, fc.constant("Bean pot")),
    yields: fc.constantFrom(
      "Makes 5 wraps, 1900 g cooked",
      "Serves 4",
      "Makes 1 loaf, 1 1/3 lb cooked",
      "Makes 12 glasses, 2 lb 3 oz",
      "Portions: 500",
      "Makes 2 halves, 0.7 oz",
    ),
    tags: fc.array(
      fc.constantFrom(
        "Tags: a, b",
        "Tags: high protein; B",
        `Tags: ${"x".repeat(500)}, ${"y".repeat(80)}`,
      ),
      {
        maxLength: 3,
      },
    ),
    parts: fc.array(
      fc.tuple(
        fc.option(
          fc.tuple(
            fc.constantFrom("", "For the ", "## "),
            fc.constantFrom(...NAMES),
            fc.constantFrom(
              ":",
              " (optional):",
              "",
              " (makes 300 g, 180 g used):",
              " (makes more than you need: use a third) (optional)",
              ", makes 1/3 lb, 2 oz used:",
            ),
          ),
          { nil: null },
        ),
        fc.array(
          fc.tuple(
            fc.constantFrom("- ", "* ", "", "-"),
            fc.constantFrom(...LINES),
            fc.constantFrom(
              "",
              "",
              "\n  or 15 g butter",
              "\nswap: firm tofu\n- or 2 tbsp oil, hot",
              "\n  swap: ghee (optional)",
            ),
          ),
          { minLength: 1, maxLength: 4 },
        ),
        fc.constantFrom("", "", "Keeps 4 days in the fridge", "Does not freeze: it turns grainy"),
      ),
      { minLength: 1, maxLength: 4 },
    ),
    below: fc.array(
      fc.tuple(
        fc.constantFrom(
          "",
          "",
          "1. ",
          "2) ",
          "- ",
          "Note: ",
          "Reheat: ",
          "Reheating\n",
          "Notes\n",
          "\n",
          "Tip: ",
        ),
        prose,
      ),
      { maxLength: 12 },
    ),
    keeping: fc.array(
      fc.constantFrom(
        "Keeps 3 days in the fridge, freezes 2 months.",
        "Base keeps 2 days",
        "Eat the same day",
        "Freezes badly, because it splits (and weeps)",
        "Freezes well",
        "Lasts overnight – and freezes poorly: dull",
      ),
      { maxLength: 2 },
    ),
    hasSteps: fc.boolean(),
  })
  .map(({ title, yields, tags, parts, below, keeping, hasSteps }) =>
    [
      title,
      yields,
      ...tags,
      "Ingredients",
      ...parts.flatMap(([heading, lines, kept]) => [
        ...(heading === null ? [] : [heading.join("")]),
        ...lines.map((line) => line.join("")),
        kept,
      ]),
      ...(hasSteps ? ["Steps"] : [""]),
      ...below.map((line) => line.join("")),
      ...keeping,
    ].join("\n"),
  );

const anyKeeping: fc.Arbitrary<StatedKeeping> = fc
  .record({
    fridgeDays: fc.option(fc.integer({ min: 0, max: 60 }), { nil: null }),
    freezerMonths: fc.option(fc.integer({ min: 1, max: 24 }), { nil: null }),
    freezes: fc.constantFrom("well" as const, "poorly" as const, "no" as const, null),
    reason: fc.constantFrom("", "it splits", "the leaves go limp and watery"),
  })
  .map(({ fridgeDays, freezerMonths, freezes, reason }) => ({
    fridgeDays,
    freezerMonths: freezes === "no" || freezes === null ? null : freezerMonths,
    freezes,
    reason: freezes === "no" || freezes === "poorly" ? reason : "",
  }));

const anyMakes: fc.Arbitrary<MakesMore | null> = fc.option(
  fc
    .tuple(fc.integer({ min: 1, max: 50_000 }), fc.integer({ min: 1, max: 100 }))
    .map(([tenths, percent]) => ({
      madeG: tenths / 10,
      usedG: Math.max(1, Math.floor((tenths * percent) / 100)) / 10,
    })),
  { nil: null },
);

const SAMPLES: readonly Line[] = LINES.map((text) => {
  const [line] = readOrThrow(`Soup\nMakes 1\n- ${text}`).components[0]?.lines ?? [];
  if (line === undefined) throw new Error(text);
  return line;
});

const capitalised = prose.map((text) => text.slice(0, 1).toUpperCase() + text.slice(1));

/** Recipes put together from their pieces, as a program would. */
export const anyBuiltRecipe: fc.Arbitrary<Recipe> = fc
  .record({
    title: prose,
    portions: fc.integer({ min: 1, max: 500 }),
    portionWord: fc.constantFrom("portion", "wrap", "loaf", "glass", "filled box", "jar of soup"),
    yieldG: fc.option(
      fc.oneof(fc.integer({ min: 1, max: 100_000 }), fc.constantFrom(1.5 * 453.59237, 333.5)),
      {
        nil: null,
      },
    ),
    tags: fc.uniqueArray(fc.constantFrom("a", "high protein", "one tray", "y".repeat(590)), {
      maxLength: 4,
    }),
    components: fc.uniqueArray(
      fc.record({
        name: fc.constantFrom("Base", "Sauce", "Notes", "Method", "Crisp topping", "Keeping"),
        optional: fc.boolean(),
        makes: anyMakes,
        lines: fc.array(fc.constantFrom(...SAMPLES), { minLength: 1, maxLength: 5 }),
        keeping: anyKeeping,
      }),
      { minLength: 1, maxLength: 4, selector: ({ name }) => name },
    ),
    steps: fc.array(prose, { maxLength: 8 }),
    keeping: anyKeeping,
    reheating: fc.array(capitalised, { maxLength: 2 }),
    notes: fc.array(
      capitalised.filter((text) => text.length < 590),
      { maxLength: 3 },
    ),
  })
  .map((pieces) => ({
    ...pieces,
    reheating: pieces.reheating.map((text) => text.slice(0, 590).trim()),
    steps: pieces.steps.map(readStep),
    components: pieces.components.map(({ makes, ...component }, part) => ({
      ...component,
      ...(makes === null ? {} : { makes }),
      lines: component.lines.map((line, at) => ({ ...line, key: `${part}.${at}` })),
    })),
  }));
