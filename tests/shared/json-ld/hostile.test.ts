import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fromJsonLd } from "../../../shared/json-ld/from-json-ld.ts";
import { toJsonLd } from "../../../shared/json-ld/to-json-ld.ts";
import type { JsonLdProblem } from "../../../shared/json-ld/types.ts";
import { UNMEASURED } from "../../../shared/nutrition/sum.ts";
import { readRecipe } from "../../../shared/recipe/read.ts";
import { anyText } from "../../kit/any-text.ts";
import { anyBuiltRecipe, FOODS } from "./any-recipe.ts";

const CODES: readonly JsonLdProblem["code"][] = [
  "json too long",
  "not json",
  "json too deep",
  "json too big",
  "no recipe",
  "several recipes",
  "recipe without name",
];

/** What a document comes to: the title read from it, or a code. Neither a throw nor without end. */
function endOf(document: string): string {
  const outcome = fromJsonLd(document);
  if (!outcome.ok) {
    expect(CODES).toContain(outcome.problem.code);
    return outcome.problem.code;
  }
  // A value of a document stands at most once in the text, beside our own few words.
  expect(outcome.value.text.length).toBeLessThan(4 * document.length + 1_000);
  readRecipe(outcome.value.text, FOODS);
  return outcome.value.text.split("\n")[0] ?? "";
}

const RECIPE = { "@type": "Recipe", name: "Soup", recipeYield: 4, recipeIngredient: ["5 g salt"] };

function ended(document: unknown): string {
  return endOf(JSON.stringify(document));
}

describe("hostile documents end in a problem or a bounded text", () => {
  test("sections that hold themselves and each other", () => {
    const a = { "@id": "#a", "@type": "HowToSection", name: "A", itemListElement: { "@id": "#b" } };
    const b = {
      "@id": "#b",
      "@type": "HowToSection",
      itemListElement: [{ "@id": "#a" }, { "@id": "#b" }, "Stir."],
    };
    const recipe = { ...RECIPE, recipeInstructions: [{ "@id": "#a" }, { "@id": "#b" }] };
    const outcome = fromJsonLd(JSON.stringify({ "@graph": [a, b, recipe] }));
    expect(outcome.ok && outcome.value.text.match(/Stir\./gu)).toHaveLength(1);
  });

  test("recipes that are parts of each other and of themselves", () => {
    const part = (id: string, of: string) => ({ ...RECIPE, "@id": id, hasPart: { "@id": of } });
    expect(ended([part("#a", "#b"), part("#b", "#a")])).toBe("several recipes");
    expect(ended(part("#a", "#a"))).toBe("Soup");
  });

  test("a list that refers to itself through thousands of references", () => {
    const list = {
      "@id": "#l",
      "@list": Array.from({ length: 2_000 }, () => ({ "@id": "#l" })),
    };
    const recipe = {
      ...RECIPE,
      recipeIngredient: Array.from({ length: 400 }, () => ({ "@id": "#l" })),
      recipeInstructions: { "@id": "#l" },
    };
    expect(ended({ "@graph": [list, recipe] })).toBe("Soup");
  });

  test("a thousand nested nodes", () => {
    let nested: unknown = RECIPE;
    for (let depth = 0; depth < 1_000; depth += 1) nested = { "@type": "Thing", about: nested };
    expect(ended(nested)).toBe("json too deep");
  });

  test("a thousand nodes beside each other, each an instruction", () => {
    const steps = Array.from({ length: 1_000 }, (_, at) => ({
      "@type": "HowToStep",
      text: `${at}`,
    }));
    expect(ended({ ...RECIPE, recipeInstructions: steps })).toBe("Soup");
  });

  test("keys given twice, of which the last counts, and keys of every object", () => {
    expect(endOf('{"@type":"Recipe","name":"A","name":"B"}')).toBe("B");
    expect(
      endOf(
        '{"__proto__":{"@type":"Recipe","name":"X"},"constructor":1,"@type":"Recipe","name":"A","toString":{}}',
      ),
    ).toBe("A");
    expect(endOf('{"__proto__":{"name":"X"},"@type":"Recipe"}')).toBe("recipe without name");
    expect(({} as Record<string, unknown>)["name"]).toBeUndefined();
  });

  test("numbers that are none, too big, or prices", () => {
    expect(endOf('{"@type":"Recipe","name":1e999,"recipeYield":1e308}')).toBe(
      "recipe without name",
    );
    expect(endOf('{"@type":"Recipe","name":"A","recipeYield":NaN}')).toBe("not json");
    const outcome = fromJsonLd(
      '{"@type":"Recipe","name":"A","recipeYield":1e300,"recipeIngredient":[1e12,-0,"1/0 g salt","2 onions ($0.50)"]}',
    );
    expect(outcome.ok && readRecipe(outcome.value.text, FOODS).ok).toBe(false);
  });

  test("text that turns, hides, or is markup without end", () => {
    for (const piece of [
      "\u202E",
      "<",
      "<script>",
      "<!--",
      "&lt;a",
      "&#",
      "<p",
      "(",
      "or 5 g ",
      "; or 5 g x",
      "keeps 1 day and ",
      ": ",
    ]) {
      const text = piece.repeat(Math.floor(90_000 / JSON.stringify(piece).length));
      const started = performance.now();
      ended({ ...RECIPE, recipeIngredient: text, recipeInstructions: [text], description: "x" });
      ended({ ...RECIPE, recipeYield: [text], keywords: "x" });
      const section = { "@type": "HowToSection", name: "Keeping", itemListElement: text };
      ended({ ...RECIPE, recipeInstructions: section });
      ended({ ...RECIPE, name: text, description: text });
      expect(performance.now() - started).toBeLessThan(2_000);
    }
  });

  test("any JSON at all", () => {
    fc.assert(
      fc.property(fc.json(), (document) => void endOf(document)),
      { numRuns: 500 },
    );
  });

  test("any text, and any JSON and text in every field", () => {
    fc.assert(fc.property(anyText, (text) => void endOf(text)));
    const value = fc.oneof(
      fc.jsonValue({ maxDepth: 3 }),
      anyText,
      fc.array(
        fc.record({
          "@type": fc.constantFrom("HowToSection", "HowToStep", "Recipe"),
          text: anyText,
          itemListElement: fc.jsonValue({ maxDepth: 2 }),
        }),
      ),
    );
    const document = fc.record({
      "@type": fc.constant("Recipe"),
      name: value,
      recipeYield: value,
      recipeIngredient: value,
      recipeInstructions: value,
      hasPart: value,
      keywords: value,
      description: value,
      totalTime: value,
    });
    fc.assert(
      fc.property(document, (one) => void ended(one)),
      { numRuns: 300 },
    );
  });

  test("documents of ours with a piece cut out, doubled or put elsewhere", () => {
    fc.assert(
      fc.property(anyBuiltRecipe, fc.nat(), fc.nat(200), fc.nat(), (recipe, from, length, to) => {
        const whole = JSON.stringify(toJsonLd(recipe, { perPortion: UNMEASURED }));
        const at = from % whole.length;
        const piece = whole.slice(at, at + length);
        const without = `${whole.slice(0, at)}${whole.slice(at + length)}`;
        const into = to % (without.length + 1);
        endOf(without);
        endOf(`${without.slice(0, into)}${piece}${without.slice(into)}`);
        endOf(`${whole.slice(0, into)}${piece}${whole.slice(into)}`);
      }),
      { numRuns: 200 },
    );
  });
});
