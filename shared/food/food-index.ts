import type { FoodBook } from "./book.ts";
import type { NameLevels } from "./name-levels.ts";
import { type NameWords, nameKeys, nameWords } from "./name-words.ts";
import { lettersIn } from "./near-word.ts";
import type { Food } from "./types.ts";
import { type CookMethod, type FoodState, SPELLINGS } from "./word-lists.ts";

/** One name of a food, ready to be compared. */
export interface IndexedName {
  /** Words before the first comma: all of them are expected of whoever means this food. */
  readonly head: ReadonlySet<string>;
  /** Words after it: they may be said. */
  readonly tail: ReadonlySet<string>;
  /** What it says of the state; a cooked food may be named without it: "crab meat", "black beans". */
  readonly states: ReadonlySet<FoodState>;
}

export interface IndexedFood {
  readonly food: Food;
  readonly order: number;
  /** A cooked food of which the book has the raw form too. */
  readonly hasRaw: boolean;
  readonly names: readonly IndexedName[];
  /** Every word of every name. */
  readonly words: ReadonlySet<string>;
  readonly nouns: ReadonlySet<string>;
  /** States that any of its names states. */
  readonly states: ReadonlySet<FoodState>;
  /** Whether its first name says that it is dried or canned. */
  readonly preserved: boolean;
  readonly methods: ReadonlySet<CookMethod>;
  readonly levels: NameLevels;
}

/** A word as it may be written and as it is indexed. */
export interface WordForm {
  readonly written: string;
  readonly word: string;
  /** `lettersIn` of what is written. */
  readonly letters: number;
}

export interface FoodIndex {
  readonly byWord: ReadonlyMap<string, readonly IndexedFood[]>;
  /** Words by their first letter, for words with slips. */
  readonly byLetter: ReadonlyMap<string, readonly WordForm[]>;
  /** Foods by a whole name of theirs (`NameKeys`): as written, and in the singular. */
  readonly byWritten: ReadonlyMap<string, IndexedFood>;
  readonly bySingle: ReadonlyMap<string, IndexedFood>;
  readonly size: number;
}

/** What a book is looked up with. */
export interface BookIndex {
  /** A group's own foods, if it has any, before the table's. */
  readonly layers: readonly FoodIndex[];
  /** How much a word tells in all layers together: rare words tell more. */
  readonly tells: (word: string) => number;
}

const INDEXES = new WeakMap<FoodBook, BookIndex>();

/**
 * The indexes of a book. Each layer is built when first asked for and kept as long as its book, so the
 * table's is built once for all groups.
 */
export function indexesOf(book: FoodBook): BookIndex {
  const known = INDEXES.get(book);
  if (known !== undefined) return known;
  const own = book.foods.length - (book.base?.foods.length ?? 0);
  const index = buildIndex(book.foods.slice(0, own));
  const layers = book.base === null ? [index] : [index, ...indexesOf(book.base).layers];
  const built = { layers, tells: tellsIn(layers) };
  INDEXES.set(book, built);
  return built;
}

function tellsIn(layers: readonly FoodIndex[]): BookIndex["tells"] {
  const size = layers.reduce((sum, index) => sum + index.size, 0);
  const counts = new Map<string, number>();
  for (const { byWord } of layers) {
    for (const [word, foods] of byWord) counts.set(word, (counts.get(word) ?? 0) + foods.length);
  }
  const tells = new Map([...counts].map(([word, count]) => [word, Math.log(1 + size / count)]));
  return (word) => tells.get(word) ?? Math.log(1 + size);
}

interface ReadFood {
  readonly food: Food;
  readonly read: readonly NameWords[];
}

function buildIndex(foods: readonly Food[]): FoodIndex {
  const readFoods = foods.map((food) => ({ food, read: spokenNames(food).map(nameWords) }));
  const lent = lentNames(readFoods);
  const entries = readFoods.map((each, order) =>
    indexedFood(each, lent.get(each.food) ?? [], order),
  );
  const byWord = new Map<string, IndexedFood[]>();
  for (const entry of entries) for (const word of entry.words) push(byWord, word, entry);
  // Reversed, so that of two foods with one key the first stands.
  const keys = entries
    .flatMap((entry) => namesOf(entry.food).map((text) => ({ ...nameKeys(text), entry })))
    .reverse();
  return {
    byWord,
    byLetter: lettersOf(byWord),
    byWritten: new Map(keys.map(({ written, entry }) => [written, entry])),
    bySingle: new Map(keys.map(({ single, entry }) => [single, entry])),
    size: foods.length,
  };
}

/** The words of a book, and the other spellings in which a slip may be made. */
function lettersOf(byWord: ReadonlyMap<string, unknown>): FoodIndex["byLetter"] {
  const byLetter = new Map<string, WordForm[]>();
  const add = (written: string, word: string) =>
    push(byLetter, written[0] ?? "", { written, word, letters: lettersIn(written) });
  for (const word of byWord.keys()) add(word, word);
  for (const [written, word] of SPELLINGS) if (byWord.has(word)) add(written, word);
  return byLetter;
}

function namesOf(food: Food): readonly string[] {
  return [food.name, ...food.otherNames];
}

/** The names, and "cumin powder" for what is called "ground cumin". */
function spokenNames(food: Food): readonly string[] {
  const names = namesOf(food);
  const powders = names.flatMap((name) => /^ground ([\p{L} ]+)$/u.exec(name)?.[1] ?? []);
  return [...names, ...powders.map((name) => `${name} powder`)];
}

/** What a name says besides how it was cooked: the same for a raw food and its cooked form. */
function coreOf(name: NameWords): string {
  const words = name.words.filter(({ word, manner }) => !(manner && UNSAID.has(word)));
  return `${words
    .map(({ word }) => word)
    .sort()
    .join(" ")} ${name.levels.fatPct ?? ""}`;
}

const UNSAID: ReadonlySet<string> = new Set(
  "raw boiled roasted roast baked grilled braised fried stewed steamed".split(" "),
);

/** The names that a cooked food has from its raw form: who says "penne" of dry pasta cooks penne. */
function lentNames(foods: readonly ReadFood[]): ReadonlyMap<Food, readonly NameWords[]> {
  const rawNames = foods
    .filter(({ food }) => food.state === "raw")
    .flatMap((raw) => raw.read.map((name) => [coreOf(name), raw] as const));
  // Reversed, so that of two foods with one core the first stands.
  const rawByCore = new Map(rawNames.reverse());
  return new Map(
    foods
      .filter(({ food }) => food.state === "cooked")
      .map(({ food, read }) => {
        const raws = read.flatMap((name) => rawByCore.get(coreOf(name)) ?? []);
        return [food, raws[0]?.read ?? []] as const;
      }),
  );
}

function indexedFood(
  { food, read }: ReadFood,
  lent: readonly NameWords[],
  order: number,
): IndexedFood {
  const all = [...read, ...lent];
  const states = new Set(read.flatMap((name) => [...name.states]));
  // "Baked beans", roasted nuts and precooked rice are sold so: no cooked form of another entry.
  if (food.state === "cooked") states.add("cooked");
  else if (food.state === "raw" || read.every(isSoldSo)) states.delete("cooked");
  return {
    food,
    order,
    hasRaw: lent.length > 0,
    names: [
      ...read.map((name) => indexedName(name, name.states)),
      ...lent.map((name) => indexedName(name, new Set(["cooked" as const]))),
    ],
    words: new Set(all.flatMap((name) => name.words.map(({ word }) => word))),
    nouns: new Set(all.flatMap((name) => [...name.nouns])),
    states,
    preserved: read[0]?.states.has("dried") === true || read[0]?.states.has("canned") === true,
    methods: new Set(read.flatMap((name) => [...name.methods])),
    levels: {
      fatPct: read.find(({ levels }) => levels.fatPct !== null)?.levels.fatPct ?? null,
      saysFat: read.some(({ levels }) => levels.saysFat || levels.lowFat),
      lowFat: read.some(
        ({ levels, words }) => levels.lowFat || words.some(({ word }) => word === "lean"),
      ),
      fullFat: read.some(({ levels }) => levels.fullFat),
      lowSalt: read.some(({ levels }) => levels.lowSalt),
      skin: read.find(({ levels }) => levels.skin !== null)?.levels.skin ?? null,
      liquid: read.find(({ levels }) => levels.liquid !== null)?.levels.liquid ?? null,
    },
  };
}

function isSoldSo(name: NameWords): boolean {
  return name.methods.size > 0 || !name.states.has("cooked");
}

function indexedName(name: NameWords, states: ReadonlySet<FoodState>): IndexedName {
  const pick = (head: boolean) =>
    new Set(name.words.filter((w) => w.head === head).map((w) => w.word));
  return { head: pick(true), tail: pick(false), states };
}

function push<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}
