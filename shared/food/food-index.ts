import type { FoodBook } from "./book.ts";
import { type NameWords, nameKeys, nameWords } from "./name-words.ts";
import type { Food } from "./types.ts";
import type { FoodState } from "./word-lists.ts";

/** One name of a food, ready to be compared. */
export interface IndexedName {
  readonly entry: IndexedFood;
  /** Words before the first comma: all of them are expected of whoever means this food. */
  readonly head: ReadonlySet<string>;
  /** Words after it: they may be said. */
  readonly tail: ReadonlySet<string>;
}

export interface IndexedFood {
  readonly food: Food;
  readonly order: number;
  /** States that any of its names states. */
  readonly states: ReadonlySet<FoodState>;
  readonly fatPct: number | null;
}

export interface FoodIndex {
  readonly byWord: ReadonlyMap<string, readonly IndexedName[]>;
  /** Words by first letter, for words with slips. */
  readonly byLetter: ReadonlyMap<string, readonly string[]>;
  /** Foods by a whole name of theirs (`NameKeys`): as written, and in the singular. */
  readonly byWritten: ReadonlyMap<string, IndexedFood>;
  readonly bySingle: ReadonlyMap<string, IndexedFood>;
  /** How much a word tells: rare words tell more. */
  readonly tells: (word: string) => number;
}

const INDEXES = new WeakMap<FoodBook, FoodIndex>();

/** The index of a book, built when first asked for and kept as long as the book. */
export function indexOf(book: FoodBook): FoodIndex {
  const known = INDEXES.get(book);
  if (known !== undefined) return known;
  const built = buildIndex(book.foods);
  INDEXES.set(book, built);
  return built;
}

function buildIndex(foods: readonly Food[]): FoodIndex {
  const entries = foods.map((food, order) => indexedFood(food, order));
  const names = entries.flatMap((entry) =>
    namesOf(entry.food).map((text) => indexedName(entry, nameWords(text))),
  );
  const byWord = new Map<string, IndexedName[]>();
  for (const name of names) {
    for (const word of new Set([...name.head, ...name.tail])) push(byWord, word, name);
  }
  const byLetter = new Map<string, string[]>();
  for (const word of byWord.keys()) push(byLetter, word[0] ?? "", word);
  // Reversed, so that of two foods with one key the first stands.
  const keys = entries
    .flatMap((entry) => namesOf(entry.food).map((text) => ({ ...nameKeys(text), entry })))
    .reverse();
  const foodsWith = new Map(
    [...byWord].map(([word, list]) => [word, new Set(list.map((name) => name.entry)).size]),
  );
  return {
    byWord,
    byLetter,
    byWritten: new Map(keys.map(({ written, entry }) => [written, entry])),
    bySingle: new Map(keys.map(({ single, entry }) => [single, entry])),
    tells: (word) => Math.log(1 + foods.length / (foodsWith.get(word) ?? 1)),
  };
}

function namesOf(food: Food): readonly string[] {
  return [food.name, ...food.otherNames];
}

function indexedFood(food: Food, order: number): IndexedFood {
  const names = namesOf(food).map(nameWords);
  const states = new Set(names.flatMap((name) => [...name.states]));
  if (food.state === "cooked") states.add("cooked");
  return {
    food,
    order,
    states,
    fatPct: names.find((name) => name.fatPct !== null)?.fatPct ?? null,
  };
}

function indexedName(entry: IndexedFood, name: NameWords): IndexedName {
  const pick = (head: boolean) =>
    new Set(name.words.filter((w) => w.head === head).map((w) => w.word));
  return { entry, head: pick(true), tail: pick(false) };
}

function push<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}
