import type { FoodBook } from "../../shared/food/book.ts";
import type { Food } from "../../shared/food/types.ts";
import { recipeId, revisionId } from "../../shared/ids.ts";
import type { Component, Line, Recipe, StatedKeeping } from "../../shared/recipe/types.ts";

const NOT_STATED: StatedKeeping = {
  fridgeDays: null,
  freezerMonths: null,
  freezes: null,
  reason: "",
};

const MANNERS =
  "smoky lemon herbed spiced slow quick weekday golden crisp sticky peppery green winter summer harvest toasted tangy creamy rustic braised".split(
    " ",
  );
const SHAPES =
  "pot bake bowl tray stew salad curry pan soup wrap hotpot traybake skillet gratin chilli pilaf casserole noodles patties parcels".split(
    " ",
  );
const TAGS =
  "quick freezer high-protein lunch dinner breakfast one-pot vegetarian budget spicy batch summer".split(
    " ",
  );
const DONE = ["diced", "sliced", "rinsed", "drained", "chopped", ""];
const STEPS = [
  "Heat the oven to 200 °C and line a tray.",
  "Fry the onions in the oil for 8 minutes.",
  "Simmer with a lid for 25 minutes, stirring now and then.",
  "Bake for 35 minutes, to 74 °C in the middle.",
  "Stir through the herbs and season to taste.",
];

/** Numbers below `below`, the same in every run (a multiplicative generator of Lehmer's kind). */
function numbers(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
}

/**
 * So many invented recipes, none like another, the same in every run: two components, 8 to 17 lines of
 * the table's foods (one in forty of a food that nobody knows), five steps.
 */
export function manyRecipes(book: FoodBook, size: number) {
  const next = numbers(20_261_125);
  const pick = <T>(list: readonly T[]): T => list[next(list.length)] as T;
  const lineOf = (food: Food, key: string): Line => {
    const name = next(2) === 0 ? food.name : pick([food.name, ...food.otherNames]);
    const known = next(40) !== 0;
    const grams = 20 + 10 * next(60);
    const foodText = known ? (name.split(",")[0] ?? name) : `zorble ${pick(SHAPES)} paste`;
    return {
      key,
      text: `${grams} g ${foodText}`,
      optional: next(15) === 0,
      swaps: [],
      main: {
        amount: { value: grams, to: null, unit: "g" },
        foodText,
        foodId: known ? food.id : null,
        preparation: pick(DONE),
        grams,
        uptake: 1,
        tableGPerG: 1,
      },
    };
  };
  const partOf = (name: string, at: number, lines: number): Component => ({
    name,
    optional: false,
    keeping: NOT_STATED,
    lines: Array.from({ length: lines }, (_, i) => lineOf(pick(book.foods), `${at}.${i}`)),
  });
  return Array.from({ length: size }, (_, i) => {
    const named = (pick(book.foods).name.split(",")[0] ?? "").toLowerCase();
    const recipe: Recipe = {
      title: `${pick(MANNERS)} ${named} ${pick(SHAPES)} no. ${i + 1}`,
      portions: 4 + next(6),
      portionWord: "portion",
      yieldG: null,
      tags: [...new Set([pick(TAGS), pick(TAGS)])],
      components: [partOf("Base", 0, 5 + next(7)), partOf("Sauce", 1, 3 + next(3))],
      steps: STEPS.map((text) => ({
        text,
        temperaturesC: [...text.matchAll(/(\d+) °C/gu)].map((match) => Number(match[1])),
        minutes: [...text.matchAll(/(\d+) minutes/gu)].map((match) => Number(match[1])),
      })),
      keeping: { ...NOT_STATED, fridgeDays: 3, freezes: next(3) === 0 ? "no" : null },
      reheating: ["Microwave until steaming hot throughout."],
      notes: [],
    };
    return {
      id: recipeId(`recipe${i + 1}`),
      revisionId: revisionId(`revision${i + 1}`),
      recipe,
    };
  });
}
