import { findFood } from "../food/find.ts";
import { nameWords } from "../food/name-words.ts";
import { slipsAllowed, slipsBetween } from "../food/near-word.ts";
import type { KeepingClass } from "../food/types.ts";
import type { FoodId } from "../ids.ts";
import type { BookIndex } from "./book-index.ts";
import { oneForm, wordsIn } from "./book-words.ts";
import { foodKey, type Ingredient } from "./ingredients.ts";

/** Nobody looks through the fridge for more at once; the rest is not read. */
const MAX_IN_HAND = 12;
/** As many as a plain word may mean ("pasta", "salmon"). */
const MEANINGS = 40;

/** Classes whose foods are called by the animal: a chicken thigh is chicken, and rice vinegar is no rice. */
const ANIMALS: ReadonlySet<KeepingClass> = new Set([
  "raw-poultry",
  "raw-meat",
  "raw-minced-meat",
  "raw-fish",
  "raw-shellfish",
  "cooked-meat-or-poultry",
  "cooked-fish",
]);

/** What a recipe makes of the foods in hand. */
export interface Uses {
  /** How many of the foods in hand it uses. */
  readonly count: number;
  /** Foods used, as the recipe writes them. */
  readonly names: readonly string[];
  /** Their part of the recipe's weight, 0 to 1. */
  readonly share: number;
  /** Other foods that it cannot do without. */
  readonly needs: number;
}

export interface InHand {
  readonly usesOf: (place: number) => Uses;
  /** Foods named that no recipe of the book uses. */
  readonly unused: readonly string[];
}

/**
 * Reads foods in hand against the book. A food named is used by a line that was taken for a food it may
 * mean ("yoghurt" for every plain yoghurt), by a cut of that animal, or by one whose name has all its
 * words and is a name of the same thing: "beans" in "white beans", and "butter" not in "butter beans".
 */
export function readInHandFoods(index: BookIndex, typed: readonly string[]): InHand {
  const names = [...new Set(typed.map((name) => name.trim()))].filter((name) => name !== "");
  const masks = new Uint16Array(index.ingredients.length);
  const used = new Set<string>();
  for (const [bit, name] of names.slice(0, MAX_IN_HAND).entries()) {
    const isMeant = meaningOf(index, name);
    for (const [number, ingredient] of index.ingredients.entries()) {
      if (!isMeant(ingredient)) continue;
      masks[number] = (masks[number] ?? 0) | (1 << bit);
      used.add(name);
    }
  }
  return {
    usesOf: (place) => usesIn(index, masks, place),
    unused: names.slice(0, MAX_IN_HAND).filter((name) => !used.has(name)),
  };
}

function meaningOf(index: BookIndex, name: string): (ingredient: Ingredient) => boolean {
  const found = findFood(index.foods, name, MEANINGS).map(({ food }) => food);
  const ids = new Set<FoodId>(found.map(({ id }) => id));
  const classes = new Set(found.map(({ keepingClass }) => keepingClass));
  const words = wordsIn(name).map((word) => mended(index, word));
  const nouns = [...nameWords(name).nouns].map(oneForm).map((noun) => mended(index, noun));
  const isNamed = ({ words: own, nouns: ownNouns }: Ingredient) =>
    words.length > 0 &&
    words.every((word) => own.has(word)) &&
    nouns.some((noun) => ownNouns.has(noun));
  return (ingredient) => {
    const { food } = ingredient;
    if (food === null || found.length === 0) return isNamed(ingredient);
    if (ids.has(food.id)) return true;
    if (!classes.has(food.keepingClass)) return false;
    const isCut =
      ANIMALS.has(food.keepingClass) && words.every((word) => ingredient.words.has(word));
    return isCut || isNamed(ingredient);
  };
}

/** The word in one form; where no food of the book has it, the nearest that one has. */
function mended(index: BookIndex, typed: string): string {
  const word = oneForm(typed);
  const isKnown = index.words.some(
    ({ word: own, in: places }) => own === word && places.food.length > 0,
  );
  const most = isKnown ? 0 : slipsAllowed(word);
  if (most === 0) return word;
  let best = { word, slips: most + 1 };
  for (const { word: own, in: places } of index.words) {
    if (places.food.length === 0) continue;
    const slips = slipsBetween(word, own, most);
    if (slips !== null && slips < best.slips) best = { word: own, slips };
  }
  return oneForm(best.word);
}

function usesIn(index: BookIndex, masks: Uint16Array, place: number): Uses {
  const foods = index.entries[place]?.foods ?? [];
  const numbers = index.uses[place] ?? [];
  const maskOf = (at: number) =>
    foods[at]?.toTaste === true ? 0 : (masks[numbers[at] ?? -1] ?? 0);
  const usedLines = new Set(foods.filter((_, at) => maskOf(at) > 0).map(({ line }) => line));
  const needed = foods.filter(({ needed, line }) => needed && !usedLines.has(line));
  const used = foods.filter((_, at) => maskOf(at) > 0);
  const own = foods.filter(({ isSwap }) => !isSwap);
  const wholeG = gramsOf(own);
  const usedG = gramsOf(own.filter(({ line }) => usedLines.has(line)));
  return {
    count: bitsOf(foods.reduce((mask, _, at) => mask | maskOf(at), 0)),
    names: [...new Set(used.map(({ name }) => name))],
    share: wholeG > 0 ? usedG / wholeG : 0,
    needs: new Set(needed.filter(({ name }) => !isWater(name)).map(foodKey)).size,
  };
}

function gramsOf(foods: readonly { readonly grams: number | null }[]): number {
  return foods.reduce((sum, { grams }) => sum + (grams ?? 0), 0);
}

/** It comes out of the tap. */
function isWater(name: string): boolean {
  return wordsIn(name).every((word) => /^(?:water|boiling|cold|hot|warm|tap|or)$/u.test(word));
}

function bitsOf(mask: number): number {
  let count = 0;
  for (let left = mask; left !== 0; left &= left - 1) count += 1;
  return count;
}
