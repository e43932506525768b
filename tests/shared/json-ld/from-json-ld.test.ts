import { describe, expect, test } from "vitest";
import { fromJsonLd } from "../../../shared/json-ld/from-json-ld.ts";
import type { JsonLdRemark } from "../../../shared/json-ld/types.ts";
import { readOrThrow } from "./any-recipe.ts";

const SOUP = {
  "@context": "https://schema.org",
  "@type": "Recipe",
  name: "Pea soup",
  recipeYield: "4",
  recipeIngredient: ["500 g frozen peas", "5 g salt"],
  recipeInstructions: "Boil the peas.\nBlend them.",
};

function textOf(document: unknown): string {
  const outcome = fromJsonLd(JSON.stringify(document));
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
  return outcome.value.text;
}

function remarksOn(document: unknown): readonly JsonLdRemark[] {
  const outcome = fromJsonLd(JSON.stringify(document));
  return outcome.ok ? outcome.value.remarks : [];
}

function codeOf(text: string): string {
  const outcome = fromJsonLd(text);
  return outcome.ok ? "none" : outcome.problem.code;
}

const PLAIN = readOrThrow(
  "Pea soup\nMakes 4\n- 500 g frozen peas\n- 5 g salt\nSteps\n1. Boil the peas.\n2. Blend them.",
);

describe("where the recipe stands", () => {
  test.each([
    ["alone", SOUP],
    ["in a list", [{ "@type": "Person", name: "N" }, SOUP]],
    ["in a graph", { "@context": "https://schema.org", "@graph": [{ "@type": "WebSite" }, SOUP] }],
    ["as the main entity", { "@type": "WebPage", mainEntity: SOUP }],
    ["deeper", { a: { b: [{ "@type": "ItemList", itemListElement: [{ item: SOUP }] }] } }],
    ["with several types", { ...SOUP, "@type": ["NewsArticle", "Recipe"] }],
    ["with its type's address", { ...SOUP, "@type": "http://schema.org/Recipe" }],
    [
      "with a prefix",
      Object.fromEntries(
        Object.entries({ ...SOUP, "@type": "schema:Recipe" }).map(([key, value]) => [
          key.startsWith("@") ? key : `schema:${key}`,
          value,
        ]),
      ),
    ],
    [
      "by reference",
      {
        "@graph": [
          { "@type": "WebPage", mainEntity: { "@id": "#r" } },
          { ...SOUP, "@id": "#r" },
          { "@type": "Review", itemReviewed: { "@type": "Recipe", "@id": "#r" } },
        ],
      },
    ],
  ])("%s", (_, document) => {
    expect(readOrThrow(textOf(document))).toEqual(PLAIN);
  });

  test("several are named, not chosen from", () => {
    const outcome = fromJsonLd(JSON.stringify([SOUP, { ...SOUP, name: "Bean soup" }]));
    expect(outcome).toEqual({
      ok: false,
      problem: { code: "several recipes", names: ["Pea soup", "Bean soup"], recipes: 2 },
    });
  });

  test("a recipe that is a part of another is none of its own, also by reference", () => {
    const whole = { ...SOUP, hasPart: [{ "@id": "#dip" }] };
    const dip = { "@id": "#dip", "@type": "Recipe", name: "Dip", recipeIngredient: "5 g salt" };
    expect(textOf({ "@graph": [dip, whole] })).toMatch(/^Pea soup\n/u);
  });
});

describe("forms of its fields", () => {
  test.each([
    ["older 'ingredients'", { recipeIngredient: undefined, ingredients: SOUP.recipeIngredient }],
    ["ingredients as one text", { recipeIngredient: "500 g frozen peas<br/>5 g salt" }],
    ["steps as texts", { recipeInstructions: ["Boil the peas.", "<p>Blend them.</p>"] }],
    ["numbered steps in one text", { recipeInstructions: "1. Boil the peas.\n2. Blend them." }],
    [
      "steps as HowToStep",
      {
        recipeInstructions: [
          { "@type": "HowToStep", name: "Boil", text: "Boil the peas.", url: "x" },
          { "@type": "HowToStep", name: "Blend them." },
        ],
      },
    ],
    [
      "steps of directions in a list",
      {
        recipeInstructions: {
          "@type": "ItemList",
          itemListElement: [
            { "@type": "ListItem", item: { "@type": "HowToStep", text: "Boil the peas." } },
            {
              "@type": "HowToStep",
              itemListElement: [{ "@type": "HowToDirection", text: "Blend them." }],
            },
          ],
        },
      },
    ],
    ["a number for the yield", { recipeYield: 4 }],
    ["a yield in words", { recipeYield: ["4", "4 servings (1 cup each)"] }],
    ["a yield as a quantity", { recipeYield: { "@type": "QuantitativeValue", value: 4 } }],
    ["the yield of a HowTo", { recipeYield: undefined, yield: "Serves 4" }],
    ["values in wrappers", { name: { "@value": "Pea soup", "@language": "en" } }],
  ])("%s", (_, fields) => {
    expect(readOrThrow(textOf({ ...SOUP, ...fields }))).toEqual(PLAIN);
  });

  test("sections of other names say in their first step which they are", () => {
    const section = (name: string, texts: readonly string[]) => ({
      "@type": "HowToSection",
      name,
      itemListElement: texts.map((text) => ({ "@type": "HowToStep", text })),
    });
    const recipe = readOrThrow(
      textOf({
        ...SOUP,
        recipeInstructions: [
          section("For the soup", ["Boil.", "Blend."]),
          section("Storage", ["Keeps 3 days in the fridge. Use a clean spoon."]),
          section("To reheat", ["until 74 °C."]),
        ],
      }),
    );
    expect(recipe.steps.map(({ text }) => text)).toEqual(["For the soup: Boil.", "Blend."]);
    expect(recipe.keeping.fridgeDays).toBe(3);
    expect(recipe.reheating).toEqual(["until 74 °C."]);
    expect(recipe.notes).toEqual(["Use a clean spoon."]);
  });

  test("a heading in the list of ingredients makes a part", () => {
    const recipe = readOrThrow(
      textOf({
        ...SOUP,
        recipeIngredient: ["Soup:", "500 g peas", "For the dip (optional):", "• 5 g salt"],
      }),
    );
    expect(recipe.components).toMatchObject([
      { name: "Soup", optional: false, lines: [{}] },
      { name: "Dip", optional: true, lines: [{ text: "5 g salt" }] },
    ]);
  });

  test("steps of a part say in the first of them whose they are", () => {
    const dip = { "@type": "Recipe", name: "Dip", recipeIngredient: "9 g salt" };
    const hasPart = [{ ...dip, recipeInstructions: ["Whisk.", "Chill."] }];
    const recipe = readOrThrow(textOf({ ...SOUP, recipeIngredient: [], hasPart }));
    expect(recipe.components).toMatchObject([{ name: "Dip", lines: [{ text: "9 g salt" }] }]);
    expect(recipe.steps.map(({ text }) => text).slice(0, 3)).toEqual([
      "Dip: Whisk.",
      "Chill.",
      "Boil the peas.",
    ]);
  });

  test("parts that hold other lines than the list are not taken, and it is said", () => {
    const hasPart = { "@type": "Recipe", name: "Dip", recipeIngredient: ["9 g salt"] };
    expect(remarksOn({ ...SOUP, hasPart })).toContainEqual({ code: "parts ignored" });
    expect(readOrThrow(textOf({ ...SOUP, hasPart }))).toEqual(PLAIN);
  });

  test("tags, times and description have their places", () => {
    const recipe = readOrThrow(
      textOf({
        ...SOUP,
        keywords: ["Quick, Green", { "@type": "DefinedTerm", name: "quick" }],
        description: "<p>Good &amp; green.</p><p>Serves 4 with bread</p>",
        prepTime: "PT15M",
        cookTime: "PT1H30M",
        totalTime: "soon",
      }),
    );
    expect(recipe.tags).toEqual(["quick", "green"]);
    expect(recipe.notes).toEqual([
      "Good & green.",
      "Serves 4 with bread",
      "Preparation 15 minutes, cooking 1 hour 30 minutes.",
    ]);
  });

  test("what was not taken over is said", () => {
    expect(
      remarksOn({
        ...SOUP,
        nutrition: { calories: "90 calories" },
        prepTime: "PT5M",
        keywords: Array.from({ length: 25 }, (_, at) => `tag ${at}`),
        image: "x",
        offers: { price: "9.99" },
      }),
    ).toEqual([
      { code: "tags cut", max: 20 },
      { code: "times as note" },
      { code: "nutrition ignored" },
      { code: "left out", properties: ["image", "offers"] },
    ]);
  });

  test("a yield that is a range is left for the reader to tell", () => {
    expect(textOf({ ...SOUP, recipeYield: "4-6" })).toContain("\nMakes 4-6\n");
    expect(textOf({ ...SOUP, recipeYield: "a big pot" })).toContain("Note: Yield: a big pot");
  });
});

describe("markup", () => {
  test.each([
    ["Salt &amp; pepper", "Salt & pepper"],
    ["&frac12; cup &#x6d;ilk&#8212;cold", "½ cup milk—cold"],
    ["<b>Bold</b> <script>alert('<i>')</script>soup", "Bold soup"],
    ["&lt;strong&gt;Twice&lt;/strong&gt; coded", "Twice coded"],
    ["5 < 6 && 7 > 2", "5 < 6 && 7 > 2"],
    ["Unclosed <style>p {", "Unclosed"],
    ["&unknown; &#xD800; &#0;", "&unknown;"],
    ["Turned \u202Epuos\u0007 & \u200Bhidden", "Turned puos & hidden"],
  ])("%s becomes plain text", (name, title) => {
    expect(textOf({ ...SOUP, name }).split("\n")[0]).toBe(title);
  });
});

describe("documents without a recipe to read", () => {
  test.each([
    ["", "not json"],
    ["{", "not json"],
    ["NaN", "not json"],
    [" ".repeat(100_001), "json too long"],
    ["[".repeat(50_000) + "]".repeat(50_000), "json too deep"],
    [`[${"1,".repeat(6_000)}1]`, "json too big"],
    ["null", "no recipe"],
    ['{"@type":"Person","name":"Recipe"}', "no recipe"],
    ['{"@type":"Recipe"}', "recipe without name"],
    ['{"@type":"Recipe","name":" <b></b> "}', "recipe without name"],
  ])("%# is refused", (text, code) => {
    expect(codeOf(text)).toBe(code);
  });
});
