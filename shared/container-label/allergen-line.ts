import type { AllergenIn, AllergensFound } from "../allergen/find.ts";
import type { Allergen } from "../food/types.ts";
import { printable } from "./printable.ts";

const FOODS_SHOWN = 4;
const FOOD_CHARS = 28;
const UNREADABLE = "a food this font cannot print";

/** Where they cannot all be named; what prints such a label must say so loudly. */
export const ALLERGENS_ELSEWHERE = "Allergens: see /recipe card.";

/** Allergens of what was cooked; null where its recipe cannot be read any more. */
export type LabelAllergens = AllergensFound | null;

/**
 * "Contains milk, wheat (gluten). May hide: soy. Not known: naan." The law's own word for a food without
 * a list of ingredients is "contains" (Regulation (EU) No 1169/2011, Article 21(1)). The forms that follow
 * are shorter, and none of them leaves an allergen out without saying so.
 */
export function allergenForms(found: LabelAllergens): readonly string[] {
  if (found === null) return ["Allergens not known: read the packs."];
  const { unknown } = found;
  const named = [
    containsText(allergenNames(found.contains), unknown.length > 0),
    ...sentence("May hide", besides(found.mayHide, found)),
    ...sentence("With a swap", besides(found.inSwaps.contains, found)),
  ].join(" ");
  const counted = unknown.length === 1 ? "1 food" : `${unknown.length} foods`;
  const whole = unknown.length === 0 ? named : `${named} Not known: ${foodNames(unknown)}.`;
  const short = unknown.length === 0 ? named : `${named} Not known: ${counted}.`;
  return [whole, short, ALLERGENS_ELSEWHERE];
}

function containsText(names: readonly string[], isOpen: boolean): string {
  if (names.length > 0) return `Contains ${isOpen ? "at least " : ""}${names.join(", ")}.`;
  return isOpen ? "Allergens not known." : "Allergens: none known.";
}

function sentence(lead: string, names: readonly string[]): readonly string[] {
  return names.length === 0 ? [] : [`${lead}: ${names.join(", ")}.`];
}

/** Those of a list that the food does not contain anyway. */
function besides(list: readonly AllergenIn[], { contains }: AllergensFound): readonly string[] {
  const held = new Set(contains.map(({ allergen }) => allergen));
  return allergenNames(list.filter(({ allergen }) => !held.has(allergen)));
}

/** "wheat (gluten)" where all of the gluten is of wheat. */
function allergenNames(list: readonly AllergenIn[]): readonly string[] {
  const foodsOf = (one: Allergen) => list.find(({ allergen }) => allergen === one)?.foods ?? [];
  const wheat = foodsOf("wheat");
  const isOfWheat = wheat.length > 0 && foodsOf("gluten").every((food) => wheat.includes(food));
  return list
    .map(({ allergen }) => allergen)
    .filter((allergen) => allergen !== "gluten" || !isOfWheat)
    .map((allergen) => (allergen === "wheat" && isOfWheat ? "wheat (gluten)" : allergen));
}

function foodNames(foods: readonly string[]): string {
  const names = foods.slice(0, FOODS_SHOWN).map((food) => {
    const { text } = printable(food);
    if (text === "") return UNREADABLE;
    return text.length <= FOOD_CHARS ? text : `${[...text].slice(0, FOOD_CHARS - 1).join("")}…`;
  });
  const more = foods.length - names.length;
  return `${names.join(", ")}${more > 0 ? ` and ${more} more` : ""}`;
}
