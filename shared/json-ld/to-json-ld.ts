import type { AllergensFound } from "../allergen/find.ts";
import type { NutrientSums } from "../nutrition/types.ts";
import type { Component, Recipe } from "../recipe/types.ts";
import { keepingLines } from "../recipe/write-keeping.ts";
import { lineAsOneText } from "../recipe/write-text.ts";
import { yieldLine } from "../recipe/write-yield.ts";
import { allergensSentence } from "./allergens.ts";
import { nutritionNode } from "./nutrition.ts";
import { markupSafe, markupSafeLines } from "./plain-text.ts";
import type { JsonObject, JsonValue } from "./types.ts";
import { isPlainEntry, partName, partsSentence, SECTIONS } from "./words.ts";

/** What a document says besides the recipe itself. */
export interface JsonLdExtras {
  /** Figures of one portion as the recipe is written. */
  readonly perPortion: NutrientSums;
  readonly allergens?: AllergensFound;
}

/**
 * A recipe as a schema.org Recipe in JSON-LD, for `JSON.stringify`. Parts are recipes under `hasPart`,
 * keeping and reheating sections of the instructions, notes the description. No claim is made that the
 * coach did not make: no times, no diets; a figure that is only a lower bound is named in words.
 */
export function toJsonLd(recipe: Recipe, extras: JsonLdExtras): JsonValue {
  const parts = hasPlainList(recipe) ? [] : recipe.components;
  const description = [
    ...(parts.length === 0 ? [] : [partsSentence(parts.map(partName))]),
    ...(extras.allergens === undefined ? [] : [allergensSentence(extras.allergens)]),
    ...recipe.notes,
  ];
  return {
    "@context": "https://schema.org",
    "@type": "Recipe",
    name: markupSafe(recipe.title),
    ...(description.length === 0 ? {} : { description: markupSafeLines(description) }),
    ...(recipe.tags.length === 0 ? {} : { keywords: markupSafe(recipe.tags.join(", ")) }),
    recipeYield: [String(recipe.portions), yieldLine(recipe).replace(/^Makes /u, "")],
    recipeIngredient: recipe.components.flatMap(lineTexts),
    ...(parts.length === 0 ? {} : { hasPart: parts.map(partNode) }),
    recipeInstructions: sections(recipe),
    nutrition: nutritionNode(recipe, extras.perPortion),
  };
}

function lineTexts({ lines }: Component): readonly string[] {
  return lines.map((line) => markupSafeLines(lineAsOneText(line).split("\n")));
}

/** Whether the list of ingredients alone, as anybody would read it, gives the one part again. */
function hasPlainList({ components }: Recipe): boolean {
  const [only, ...others] = components;
  if (only === undefined || others.length > 0) return false;
  const { name, optional, makes, keeping } = only;
  const isNamed = name !== "Base" || optional || makes || keepingLines(keeping).length > 0;
  return !isNamed && only.lines.every(({ text }) => isPlainEntry(text));
}

function partNode(part: Component): JsonObject {
  const keeping = keepingLines(part.keeping);
  return {
    "@type": "Recipe",
    name: markupSafe(partName(part)),
    ...(keeping.length === 0 ? {} : { description: markupSafeLines(keeping) }),
    recipeIngredient: lineTexts(part),
  };
}

function sections(recipe: Recipe): readonly JsonObject[] {
  const filled: readonly (readonly [name: string, texts: readonly string[]])[] = [
    [SECTIONS.steps, recipe.steps.map(({ text }) => text)],
    [SECTIONS.keeping, keepingLines(recipe.keeping)],
    [SECTIONS.reheating, recipe.reheating],
  ];
  return filled
    .filter(([, texts]) => texts.length > 0)
    .map(([name, texts]) => ({
      "@type": "HowToSection",
      name,
      itemListElement: texts.map((text) => ({ "@type": "HowToStep", text: markupSafe(text) })),
    }));
}
