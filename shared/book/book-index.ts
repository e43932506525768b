import type { FoodBook } from "../food/book.ts";
import { fold } from "../words/fold.ts";
import { formsIn } from "./book-words.ts";
import { bookEntry } from "./entry.ts";
import { type Ingredient, ingredientKey, readIngredient } from "./ingredients.ts";
import type { BookEntry, RecipeInBook } from "./types.ts";

/** Where a word stands. */
export const FIELDS = ["title", "tag", "food"] as const;
export type Field = (typeof FIELDS)[number];

/** A word of the book, with the places of the entries that have it, ascending, by where it stands. */
export interface BookWord {
  readonly word: string;
  /** Which letters it has, one bit each: tells at a glance that two words are far apart. */
  readonly letters: number;
  readonly in: Readonly<Record<Field, readonly number[]>>;
}

/** A group's recipes, ready to be searched. Made by `bookIndex`, never changed. */
export interface BookIndex {
  /** By title (folded), then by id: an entry's place here is what the rest speaks of. */
  readonly entries: readonly BookEntry[];
  /** Folded titles, by place. */
  readonly titles: readonly string[];
  /** Sorted by word. */
  readonly words: readonly BookWord[];
  readonly ingredients: readonly Ingredient[];
  /** By place: for each food of the entry, its number in `ingredients`. */
  readonly uses: readonly (readonly number[])[];
  /** The foods that the entries were read with. */
  readonly foods: FoodBook;
}

/** Recipes dealt with between two stops. */
const STEP = 10;

/** Builds the index of a group's recipes. */
export function bookIndex(recipes: readonly RecipeInBook[], foods: FoodBook): BookIndex {
  const steps = bookIndexInSteps(recipes, foods, null);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/**
 * The same with stops, for who must not be held up: 5,000 recipes take seconds. From `before`, an earlier
 * index by the same foods, the entries of revisions that still stand are taken over.
 */
export function* bookIndexInSteps(
  recipes: readonly RecipeInBook[],
  foods: FoodBook,
  before: BookIndex | null,
): Generator<undefined, BookIndex> {
  const known = new Map(
    before?.foods === foods ? before.entries.map((entry) => [entry.revisionId, entry]) : [],
  );
  const read: { readonly entry: BookEntry; readonly title: string }[] = [];
  for (const recipe of recipes) {
    const entry = known.get(recipe.revisionId) ?? bookEntry(recipe, foods);
    if (read.push({ entry, title: fold(entry.title) }) % STEP === 0) yield;
  }
  read.sort((a, b) => compare(a.title, b.title) || compare(a.entry.id, b.entry.id));
  const pool = ingredientPool(foods);
  const words = wordPool();
  const uses: (readonly number[])[] = [];
  for (const [place, { entry }] of read.entries()) {
    uses.push(noteEntry(entry, place, pool, words));
    if (place % STEP === 0) yield;
  }
  return {
    entries: read.map(({ entry }) => entry),
    titles: read.map(({ title }) => title),
    words: words.sorted(),
    ingredients: pool.list,
    uses,
    foods,
  };
}

/** Notes an entry's words; the numbers of its foods in the pool. */
function noteEntry(
  entry: BookEntry,
  place: number,
  pool: ReturnType<typeof ingredientPool>,
  words: ReturnType<typeof wordPool>,
): readonly number[] {
  for (const word of formsIn(entry.title)) words.note(word, "title", place);
  for (const word of formsIn(entry.tags.join(" "))) words.note(word, "tag", place);
  const numbers = entry.foods.map((food) => pool.numberOf(food, place));
  for (const number of numbers) {
    for (const word of pool.list[number]?.words ?? []) words.note(word, "food", place);
  }
  return numbers;
}

/** By code unit: the same on every machine, whatever its language. */
function compare(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

type Counted = { -readonly [Key in keyof Ingredient]: Ingredient[Key] };

function ingredientPool(foods: FoodBook) {
  const numbers = new Map<string, number>();
  const list: Counted[] = [];
  const lastPlace: number[] = [];
  const add = (key: string, food: BookEntry["foods"][number]): number => {
    numbers.set(key, list.length);
    return list.push({ ...readIngredient(food.name, food.foodId, foods), recipes: 0 }) - 1;
  };
  return {
    list,
    numberOf: (food: BookEntry["foods"][number], place: number): number => {
      const key = ingredientKey(food);
      const number = numbers.get(key) ?? add(key, food);
      const ingredient = list[number];
      if (ingredient !== undefined && lastPlace[number] !== place) ingredient.recipes += 1;
      lastPlace[number] = place;
      return number;
    },
  };
}

function wordPool() {
  const byWord = new Map<string, Record<Field, number[]>>();
  return {
    note: (word: string, field: Field, place: number): void => {
      let places = byWord.get(word);
      if (places === undefined) {
        places = { title: [], tag: [], food: [] };
        byWord.set(word, places);
      }
      const list = places[field];
      // Entries come in order, so a place that is in the list already is the last of it.
      if (list[list.length - 1] !== place) list.push(place);
    },
    sorted: (): readonly BookWord[] =>
      [...byWord]
        .map(([word, places]) => ({ word, letters: lettersOf(word), in: places }))
        .sort((a, b) => compare(a.word, b.word)),
  };
}

/** The letters of a word as bits; letters of other scripts share them, which only costs a closer look. */
export function lettersOf(word: string): number {
  let bits = 0;
  for (let i = 0; i < word.length; i += 1) bits |= 1 << (word.charCodeAt(i) & 31);
  return bits;
}
