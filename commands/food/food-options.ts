import type { FoodBook } from "../../shared/food/book.ts";
import { findFood } from "../../shared/food/find.ts";
import { nameKeys } from "../../shared/food/name-words.ts";
import { type Food, PACK_LABEL } from "../../shared/food/types.ts";
import { fold } from "../../shared/words/fold.ts";
import type { Completer, Suggestion } from "../kit/command.ts";

const OFFERED = 25;

interface FoldedFood {
  readonly food: Food;
  /** Its names, folded, each after a line break. */
  readonly names: string;
}

const FOLDED = new WeakMap<FoodBook, readonly FoldedFood[]>();

/** Names are folded once for each book, so that a keystroke costs a search and no more. */
function foldedFoods(book: FoodBook): readonly FoldedFood[] {
  const known = FOLDED.get(book);
  if (known !== undefined) return known;
  const made = book.foods.map((food) => ({
    food,
    names: ["", food.name, ...food.otherNames].map(fold).join("\n"),
  }));
  FOLDED.set(book, made);
  return made;
}

/** Foods for what is typed so far: names that start so, then names that hold it, then what it may mean. */
export function foodsFor(book: FoodBook, typed: string): readonly Food[] {
  const all = foldedFoods(book);
  const words = fold(typed);
  if (words === "") return all.slice(0, OFFERED).map(({ food }) => food);
  const starting = all.filter(({ names }) => names.includes(`\n${words}`));
  const holding = all.filter(({ names }) => names.includes(words));
  const found = [...starting, ...holding].map(({ food }) => food);
  const meant = found.length < OFFERED ? findFood(book, typed, 5).map(({ food }) => food) : [];
  return [...new Set([...found, ...meant])].slice(0, OFFERED);
}

function offers(foods: readonly Food[]): readonly Suggestion[] {
  const names = new Set<string>();
  return foods.flatMap((food) => {
    // An own food may bear the name of a table food: the own one is meant.
    if (names.has(food.name)) return [];
    names.add(food.name);
    return [{ label: isOwn(food) ? `${food.name} (this group's)` : food.name, value: food.name }];
  });
}

/** Offers the foods of the group: its own and the table's. */
export const completeFood: Completer = async ({ foods }, typed) => offers(foodsFor(foods, typed));

/** Offers the foods of the table alone. */
export const completeTableFood: Completer = async ({ foods }, typed) =>
  offers(foodsFor(tableOf(foods), typed));

/** The table that comes with the bot, without the group's own foods. */
export function tableOf(book: FoodBook): FoodBook {
  return book.base ?? book;
}

export function isOwn(food: Food): boolean {
  return food.source.table === PACK_LABEL;
}

/** Whether a text is a whole name of the food, but for capitals, plural and gaps. */
export function isNameOf(food: Food, text: string): boolean {
  const { single } = nameKeys(text);
  return [food.name, ...food.otherNames].some((name) => nameKeys(name).single === single);
}
