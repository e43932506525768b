import type { FoodBook } from "../food/book.ts";
import { nameWords } from "../food/name-words.ts";
import type { Food } from "../food/types.ts";
import type { FoodId } from "../ids.ts";
import { foldWords } from "../words/fold.ts";
import { formsIn, oneForm } from "./book-words.ts";
import type { EntryFood } from "./types.ts";

/** A food of the book's recipes: one name as written, taken for one food of the table. */
export interface Ingredient {
  /** As the first recipe that has it writes it. */
  readonly name: string;
  readonly food: Food | null;
  /** Words it is found by: of the name as written, and of the table's names what they are names of. */
  readonly words: ReadonlySet<string>;
  /** What the names are names of, in one form: "bean" of "butter beans". */
  readonly nouns: ReadonlySet<string>;
  /** How many recipes have it. */
  readonly recipes: number;
}

/** What tells two foods of one recipe apart, whatever they are called. */
export function foodKey({ foodId, name }: Pick<EntryFood, "foodId" | "name">): string {
  return foodId ?? foldWords(name);
}

/** What tells two ingredients of the book apart. */
export function ingredientKey({ foodId, name }: Pick<EntryFood, "foodId" | "name">): string {
  return `${foodId ?? ""};${name}`;
}

const TABLE_NAMES = new WeakMap<Food, { words: readonly string[]; nouns: readonly string[] }>();

/** Reads the names of a food. */
export function readIngredient(
  name: string,
  foodId: FoodId | null,
  foods: FoodBook,
): Omit<Ingredient, "recipes"> {
  const food = foodId === null ? null : foods.byId(foodId);
  const table = food === null ? { words: [], nouns: [] } : tableNames(food);
  return {
    name,
    food,
    words: new Set([...formsIn(name), ...table.words]),
    nouns: new Set([...[...nameWords(name).nouns].map(oneForm), ...table.nouns]),
  };
}

/** Words of the table's names, but for states and handling: nobody means tuna by "water". */
function tableNames(food: Food) {
  const known = TABLE_NAMES.get(food);
  if (known !== undefined) return known;
  const read = [food.name, ...food.otherNames].map((name) => nameWords(name));
  const words = read.flatMap((name) =>
    name.words.filter(({ manner, aside }) => !manner && !aside).map(({ word }) => oneForm(word)),
  );
  const nouns = read.flatMap((name) => [...name.nouns].map(oneForm));
  const names = { words: [...new Set(words)], nouns: [...new Set(nouns)] };
  TABLE_NAMES.set(food, names);
  return names;
}
