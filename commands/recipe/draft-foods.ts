import type { FoodBook } from "../../shared/food/book.ts";
import { findFood } from "../../shared/food/find.ts";
import type { Food } from "../../shared/food/types.ts";
import { tableGPerG } from "../../shared/recipe/dry-or-cooked.ts";
import { saidState } from "../../shared/recipe/line-words.ts";
import { foldWords } from "../../shared/words/fold.ts";
import { excerpt } from "../../shared/words/problems.ts";
import type { RecipeDraft } from "../kit/ports.ts";
import { writePress } from "../kit/press.ts";
import type { Choice } from "../kit/reply.ts";
import type { DoubtfulFood } from "./draft-read.ts";
import { versionOf } from "./draft-store.ts";

/** With the entry that leaves it open, as many as a list may have. */
const OFFERED = 24;
const WORDS_LOOKED_AT = 6;
/** The value of "none of these". */
export const LEAVE = "-";

/** A list of foods for a name that was not found or may be another; none when nothing is near it. */
export function foodChoice(
  draft: RecipeDraft,
  { ref, choice }: DoubtfulFood,
  foods: FoodBook,
): readonly Choice[] {
  const near = foodsNear(foods, choice.foodText);
  if (near.length === 0) return [];
  const isFound = choice.foodId !== null;
  const leave = isFound
    ? { value: LEAVE, label: "Leave it as it is for now" }
    : { value: LEAVE, label: "None of these: leave it uncounted" };
  return [
    {
      id: writePress("recipe publish", "food", draft.id, versionOf(draft), ref),
      placeholder: `What is “${excerpt(choice.foodText)}”?`,
      options: [...near.map(optionOf), leave],
    },
  ];
}

function optionOf({ id, name, per100g }: Food) {
  const { energyKcal } = per100g;
  return {
    value: id,
    label: name,
    ...(energyKcal === null ? {} : { hint: `${Math.round(energyKcal)} kcal per 100 g` }),
  };
}

/**
 * Foods that share words with a name, best first: of the whole name, then of fewer and fewer of its words,
 * the last ones longest, as they name the food ("wild rocket leaves"). Only such as may stand for it:
 * never a raw food for one written cooked, where no factor is published.
 */
export function foodsNear(foods: FoodBook, foodText: string): readonly Food[] {
  const words = foldWords(foodText.slice(0, 200)).split(" ").slice(0, WORDS_LOOKED_AT);
  const endings = words.map((_, at) => words.slice(at).join(" "));
  const beginnings = words.map((_, at) => words.slice(0, words.length - at).join(" "));
  const tries = [foodText, ...endings, ...beginnings, ...words.toReversed()];
  const said = saidState(foodText);
  const found = new Map<string, Food>();
  for (const text of new Set(tries)) {
    if (text.length < 3) continue;
    for (const { food } of findFood(foods, text, 8)) {
      if (tableGPerG(food, said) !== null) found.set(food.id, food);
    }
  }
  return [...found.values()].slice(0, OFFERED);
}
