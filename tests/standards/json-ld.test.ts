import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { allergensInRecipe } from "../../shared/allergen/find.ts";
import { fromJsonLd } from "../../shared/json-ld/from-json-ld.ts";
import { isList, isObject } from "../../shared/json-ld/parse.ts";
import { toJsonLd } from "../../shared/json-ld/to-json-ld.ts";
import type { JsonObject, JsonValue } from "../../shared/json-ld/types.ts";
import { nutritionOf } from "../../shared/nutrition/portion.ts";
import { readRecipe } from "../../shared/recipe/read.ts";
import { scaleRecipe } from "../../shared/recipe/scale.ts";
import type { Recipe } from "../../shared/recipe/types.ts";
import { anyBuiltRecipe, FOODS, readOrThrow } from "../shared/json-ld/any-recipe.ts";

// Schema.org (W3C Schema.org Community Group), vocabulary version 29, 2025: the pages named beside each
// type, "Properties from ..." tables. Typed in from memory, in our own form; only what bears on recipes.

/** The direct super-types, schema.org/docs/full.html. */
const ABOVE: Readonly<Record<string, readonly string[]>> = {
  Thing: [],
  CreativeWork: ["Thing"],
  HowTo: ["CreativeWork"],
  Recipe: ["HowTo"],
  Intangible: ["Thing"],
  ItemList: ["Intangible"],
  ListItem: ["Intangible"],
  HowToSection: ["CreativeWork", "ItemList", "ListItem"],
  HowToStep: ["CreativeWork", "ItemList", "ListItem"],
  HowToDirection: ["CreativeWork", "ListItem"],
  HowToTip: ["CreativeWork", "ListItem"],
  StructuredValue: ["Intangible"],
  NutritionInformation: ["StructuredValue"],
  QuantitativeValue: ["StructuredValue"],
  PropertyValue: ["StructuredValue"],
  DefinedTerm: ["Intangible"],
};

/** Each type's own properties with the types expected as values. */
const OWN: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  // schema.org/Thing
  Thing: {
    name: ["Text"],
    alternateName: ["Text"],
    description: ["Text", "TextObject"],
    url: ["URL"],
    image: ["ImageObject", "URL"],
    identifier: ["PropertyValue", "Text", "URL"],
    mainEntityOfPage: ["CreativeWork", "URL"],
  },
  // schema.org/CreativeWork
  CreativeWork: {
    author: ["Organization", "Person"],
    datePublished: ["Date", "DateTime"],
    hasPart: ["CreativeWork"],
    isPartOf: ["CreativeWork", "URL"],
    headline: ["Text"],
    keywords: ["DefinedTerm", "Text", "URL"],
    text: ["Text"],
    position: ["Integer", "Text"],
  },
  // schema.org/HowTo
  HowTo: {
    prepTime: ["Duration"],
    performTime: ["Duration"],
    totalTime: ["Duration"],
    step: ["CreativeWork", "HowToSection", "HowToStep", "Text"],
    yield: ["QuantitativeValue", "Text"],
  },
  // schema.org/Recipe
  Recipe: {
    cookTime: ["Duration"],
    cookingMethod: ["Text"],
    nutrition: ["NutritionInformation"],
    recipeCategory: ["Text"],
    recipeCuisine: ["Text"],
    recipeIngredient: ["ItemList", "PropertyValue", "Text"],
    recipeInstructions: ["CreativeWork", "ItemList", "Text"],
    recipeYield: ["QuantitativeValue", "Text"],
    suitableForDiet: ["RestrictedDiet"],
  },
  // schema.org/ItemList, schema.org/ListItem; HowToSection and HowToStep have no property that counts here
  ItemList: { itemListElement: ["ListItem", "Text", "Thing"], numberOfItems: ["Integer"] },
  ListItem: { item: ["Thing"], position: ["Integer", "Text"] },
  HowToSection: { steps: ["ItemList", "Text"] },
  HowToStep: {},
  // schema.org/NutritionInformation
  NutritionInformation: {
    calories: ["Energy"],
    carbohydrateContent: ["Mass"],
    cholesterolContent: ["Mass"],
    fatContent: ["Mass"],
    fiberContent: ["Mass"],
    proteinContent: ["Mass"],
    saturatedFatContent: ["Mass"],
    servingSize: ["Text"],
    sodiumContent: ["Mass"],
    sugarContent: ["Mass"],
    transFatContent: ["Mass"],
    unsaturatedFatContent: ["Mass"],
  },
};

/** Values written as text. schema.org/Energy, /Mass: "<Number> <unit>"; /Duration: ISO 8601. */
const AS_TEXT: Readonly<Record<string, RegExp>> = {
  Text: /(?:)/u,
  URL: /^https?:\/\/\S+$/u,
  Energy: /^\d+(?:\.\d+)? (?:calories|kcal|kJ)$/u,
  Mass: /^\d+(?:\.\d+)? (?:g|mg|kg)$/u,
  Duration: /^P(?=.)(?:\d+D)?(?:T(?=.)(?:\d+H)?(?:\d+M)?(?:\d+S)?)?$/u,
};

function typesAbove(type: string): readonly string[] {
  return [type, ...(ABOVE[type] ?? []).flatMap(typesAbove)];
}

/** Whatever of a document the vocabulary does not know, each with its place. */
function faultsOf(node: JsonObject, place: string): readonly string[] {
  const type = String(node["@type"]);
  if (!Object.hasOwn(ABOVE, type)) return [`${place}: no type ${type}`];
  const known = Object.assign({}, ...typesAbove(type).map((above) => OWN[above] ?? {}));
  return Object.entries(node)
    .filter(([key]) => !key.startsWith("@"))
    .flatMap(([key, value]) => {
      const expected: readonly string[] | undefined = known[key];
      if (expected === undefined) return [`${place}: no property ${key} of ${type}`];
      const values = isList(value) ? value : [value];
      return values.flatMap((one) => valueFaults(one, expected, `${place}.${key}`));
    });
}

function valueFaults(
  value: JsonValue,
  expected: readonly string[],
  place: string,
): readonly string[] {
  if (isObject(value)) {
    const isExpected = typesAbove(String(value["@type"])).some((type) => expected.includes(type));
    return isExpected ? faultsOf(value, place) : [`${place}: not of ${expected.join(", ")}`];
  }
  const isExpected =
    typeof value === "string" && expected.some((type) => AS_TEXT[type]?.test(value) === true);
  return isExpected ? [] : [`${place}: ${JSON.stringify(value)} is not of ${expected.join(", ")}`];
}

function documentOf(recipe: Recipe): JsonObject {
  const request = { by: { kind: "as written" } as const, without: [], swaps: {} };
  const scaled = scaleRecipe(recipe, FOODS, request);
  if (!scaled.ok) throw new Error(scaled.problem.code);
  const { perPortion } = nutritionOf(scaled.value, FOODS);
  const document = toJsonLd(recipe, { perPortion, allergens: allergensInRecipe(recipe, FOODS) });
  if (!isObject(document)) throw new Error("no object");
  return document;
}

const SEEDS = "prisma/seed/recipes";

describe("documents against the schema.org vocabulary", () => {
  test.each(readdirSync(SEEDS))("%s uses only its types, properties and values", (file) => {
    const document = documentOf(readOrThrow(readFileSync(`${SEEDS}/${file}`, "utf8")));
    expect(document["@context"]).toBe("https://schema.org");
    expect(faultsOf(document, "Recipe")).toEqual([]);
    // A check of nothing would pass as well.
    expect(document["nutrition"]).toHaveProperty("proteinContent");
    expect(document["recipeInstructions"]).toContainEqual({
      "@type": "HowToSection",
      name: "Keeping",
      itemListElement: expect.arrayContaining([expect.objectContaining({ "@type": "HowToStep" })]),
    });
  });

  test("so does every other recipe", () => {
    fc.assert(
      fc.property(anyBuiltRecipe, (recipe) => {
        expect(faultsOf(documentOf(recipe), "Recipe")).toEqual([]);
      }),
    );
  });

  test("the check finds a property, a type and a value that are not the vocabulary's", () => {
    const wrong: JsonObject = {
      "@type": "Recipe",
      components: "x",
      recipeYield: 4,
      nutrition: { "@type": "NutritionInformation", calories: "at least 5 calories" },
      recipeInstructions: [{ "@type": "HowToChapter", name: "x" }],
      hasPart: { "@type": "NutritionInformation" },
    };
    expect(faultsOf(wrong, "R")).toEqual([
      "R: no property components of Recipe",
      "R.recipeYield: 4 is not of QuantitativeValue, Text",
      'R.nutrition.calories: "at least 5 calories" is not of Energy',
      "R.recipeInstructions: not of CreativeWork, ItemList, Text",
      "R.hasPart: not of CreativeWork",
    ]);
  });
});

describe("documents as the vocabulary allows them", () => {
  const steps = [
    { "@type": "HowToStep", text: "Boil the rice." },
    { "@type": "HowToStep", text: "Drain it." },
  ];
  // schema.org/recipeInstructions: CreativeWork, ItemList or Text; schema.org/recipeYield:
  // QuantitativeValue or Text; JSON-LD 1.1 (W3C Recommendation, 2020), 4.3 lists and sets, 4.9 @graph.
  test.each([
    ["steps", steps],
    ["one section", { "@type": "HowToSection", name: "Method", itemListElement: steps }],
    ["an ItemList", { "@type": "ItemList", itemListElement: steps }],
    ["a @list", { "@list": steps }],
    ["a @set", [{ "@set": [steps[0]] }, steps[1]]],
    ["text", "Boil the rice.\nDrain it."],
  ])("instructions as %s are the same two steps", (_, recipeInstructions) => {
    const recipe = {
      "@type": "Recipe",
      name: "Rice",
      recipeYield: { "@type": "QuantitativeValue", value: 2, unitText: "bowls" },
      recipeIngredient: ["200 g rice"],
      recipeInstructions,
    };
    const outcome = fromJsonLd(JSON.stringify({ "@graph": [recipe] }));
    const read = outcome.ok ? readRecipe(outcome.value.text, FOODS) : outcome;
    expect(read.ok && read.value.recipe).toMatchObject({
      portions: 2,
      portionWord: "bowl",
      steps: [{ text: "Boil the rice." }, { text: "Drain it." }],
    });
  });
});
