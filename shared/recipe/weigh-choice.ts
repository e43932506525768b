import type { FoodBook } from "../food/book.ts";
import { findFood } from "../food/find.ts";
import type { Food } from "../food/types.ts";
import { weigh } from "../food/weigh.ts";
import type { SpoonSet } from "../quantity/types.ts";
import { isContainer, isCounted } from "../quantity/unit-words.ts";
import { foldWords } from "../words/fold.ts";
import { singular } from "../words/plural.ts";
import type { ReadChoice } from "./read-ingredient.ts";
import type { LineChoice } from "./types.ts";

/**
 * Takes a choice for an entry of the food table and weighs it: a measure stated in the line first,
 * else the table's density or weight of one. What cannot be weighed has null grams.
 */
export function weighChoice(choice: ReadChoice, foods: FoodBook, spoons: SpoonSet): LineChoice {
  const { food, foodText, preparation } = lookUp(choice, foods);
  return {
    amount: choice.amount,
    foodText,
    foodId: food?.id ?? null,
    preparation,
    grams: gramsOf(choice, food, spoons),
  };
}

interface LookUp {
  readonly food: Food | null;
  readonly foodText: string;
  readonly preparation: string;
}

function lookUp(choice: ReadChoice, foods: FoodBook): LookUp {
  const { foodText, preparation } = choice;
  const food = best(foods, foodText);
  if (food !== null || preparation === "") return { food, foodText, preparation };
  // "boneless, skinless chicken thighs": the first comma did not end the food.
  const [next, ...rest] = preparation.split(", ");
  const longer = `${foodText}, ${next ?? ""}`;
  const found = best(foods, longer.replace(",", ""));
  return found === null
    ? { food, foodText, preparation }
    : { food: found, foodText: longer, preparation: rest.join(", ") };
}

function best(foods: FoodBook, text: string): Food | null {
  const words = text.split(" ");
  const isCountWord = words.length > 1 && isCountOrBox(words[0] ?? "");
  const name = isCountWord ? words.slice(1).join(" ").replace(/^of /iu, "") : text;
  return findFood(foods, name, 1)[0]?.food ?? null;
}

/** A can tells which food it is, so it stays. */
function isCountOrBox(word: string): boolean {
  const one = singular(foldWords(word));
  return isCounted(one) || (isContainer(one) && one !== "can" && one !== "tin");
}

/** Edible grams of a choice of a food: exact, a measure stated in the line first; null when unknown. */
export function gramsOf(choice: ReadChoice, food: Food | null, spoons: SpoonSet): number | null {
  const measure = choice.stated ?? choice.amount;
  if (measure === null) return null;
  if (measure.unit === "piece" && !countsWhole(choice.foodText, food)) return null;
  return weigh(measure, food, spoons);
}

/**
 * Whether the thing counted is the one that the table has the weight of: three cloves of garlic where
 * it weighs a clove, two onions where it weighs an onion; not a head of garlic, a can of tomatoes.
 */
function countsWhole(foodText: string, food: Food | null): boolean {
  if (food?.one === null || food === null) return false;
  const one = singular(foldWords(food.one.word));
  const words = foldWords(foodText).split(" ").map(singular);
  const counts = words.filter((word) => word !== one && (isCounted(word) || isContainer(word)));
  // A thigh fillet is a thigh.
  if (words.includes(one)) return counts.every((word) => word === "fillet");
  return counts.length === 0 && !isCounted(one);
}
