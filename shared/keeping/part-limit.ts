import type { FoodBook } from "../food/book.ts";
import type { KeepingClass } from "../food/types.ts";
import type { Component, Recipe } from "../recipe/types.ts";
import { foldWords } from "../words/fold.ts";
import { FRIDGE_CEILING_DAYS, KEEPING_CHART, RAW_CHART } from "./chart.ts";
import { type FreezingRule, freezingRules, isGrainAlone, type Named } from "./freezing.ts";
import { DRESSING, isCooked, isHeated, RAW_DISH, RAW_EGG_DISH } from "./heated.ts";

/** Classes that only stand in a recipe to be cooked: a component that has one is a cooked dish. */
const COOKED_BY_ITS_FOODS: ReadonlySet<KeepingClass> = new Set([
  "raw-poultry",
  "raw-meat",
  "raw-minced-meat",
  "raw-fish",
  "raw-shellfish",
  "cooked-meat-or-poultry",
  "cooked-fish",
  "cooked-grain",
  "cooked-pulses",
  "egg-raw",
]);

/** Why a part keeps no longer than the chart says, whatever the coach confirms. */
export type Stays = "raw animal food" | "fish or seafood" | "sprouts";

/** What the published chart says of a part of a recipe. */
export interface PartLimit {
  readonly days: number;
  /** The row that decides: "cooked poultry"; null where nothing in the part has a limit of its own. */
  readonly row: { readonly name: string; readonly source: string } | null;
  readonly classes: ReadonlySet<KeepingClass>;
  readonly isCooked: boolean;
  readonly isRaw: boolean;
  readonly stays: Stays | null;
  /** What in it freezes badly by the published list, however it is prepared here. */
  readonly badlyFrozen: readonly FreezingRule[];
  readonly isGrainAlone: boolean;
  readonly hasRice: boolean;
}

/** The chart's days for a part: those of the food in it that keeps shortest. */
export function partLimit(part: Component, recipe: Recipe, foods: FoodBook): PartLimit {
  const known = foodsOf(part, foods);
  const classes = new Set(known.map(({ food }) => food.keepingClass));
  const heated = isHeated(recipe);
  const raw = new Set(
    known
      .filter((one) => !heated || staysRaw(one, part, recipe))
      .flatMap(({ food }) =>
        RAW_CHART[food.keepingClass] === undefined ? [] : [food.keepingClass],
      ),
  );
  const rows = [...classes].flatMap((one) => rowOf(one, raw.has(one)) ?? []);
  const shortest = rows.toSorted((a, b) => a.days - b.days)[0];
  return {
    days: Math.min(shortest?.days ?? FRIDGE_CEILING_DAYS - 1, FRIDGE_CEILING_DAYS - 1),
    row: shortest ?? null,
    classes,
    isCooked: heated && [...classes].some((one) => COOKED_BY_ITS_FOODS.has(one) && !raw.has(one)),
    isRaw: raw.size > 0,
    stays: staysOf(known, raw.size > 0),
    badlyFrozen: freezingRules(part, recipe, known),
    isGrainAlone: isGrainAlone(known),
    hasRice: known.some(isRice),
  };
}

/** Swaps count: nobody knows which is taken when the chart is asked. */
function foodsOf(part: Component, foods: FoodBook): readonly Named[] {
  return part.lines.flatMap((line) =>
    [line.main, ...line.swaps].flatMap(({ foodId, foodText }) => {
      const food = foodId === null ? null : foods.byId(foodId);
      return food === null ? [] : [{ text: foodText, food }];
    }),
  );
}

function rowOf(one: KeepingClass, isRaw: boolean) {
  const { name, source, fridgeDays } = (isRaw ? RAW_CHART[one] : undefined) ?? KEEPING_CHART[one];
  return fridgeDays === null ? null : { name, source, days: fridgeDays };
}

/** In a recipe that heats something: what is not what it heats. */
function staysRaw({ text, food }: Named, part: Component, recipe: Recipe): boolean {
  const names = foldWords(`${part.name} ; ${recipe.components.length === 1 ? recipe.title : ""}`);
  const words = foldWords(`${text} ; ${food.name}`);
  if (food.keepingClass === "egg-raw") {
    if (/\bpasteuri[sz]ed\b/u.test(words)) return false;
    return RAW_EGG_DISH.test(names) || DRESSING.test(names) || !isCooked(text, recipe);
  }
  return RAW_DISH.test(names) || RAW_DISH.test(words);
}

/** Grains of rice: not its noodles, paper or vinegar. */
function isRice({ food }: Named): boolean {
  const name = foldWords(food.name);
  return (
    food.keepingClass === "cooked-grain" &&
    /\brice\b/u.test(name) &&
    !/\b(?:noodles?|paper|cakes?|flour|vermicelli)\b/u.test(name)
  );
}

const SEAFOOD: ReadonlySet<KeepingClass> = new Set(["raw-fish", "raw-shellfish", "cooked-fish"]);

function staysOf(known: readonly Named[], isRaw: boolean): Stays | null {
  if (isRaw) return "raw animal food";
  if (known.some(({ food }) => SEAFOOD.has(food.keepingClass))) return "fish or seafood";
  const isSprouts = known.some(({ text, food }) => {
    const words = foldWords(`${text} ; ${food.name}`);
    return /\bsprouts?\b/u.test(words) && !/\bbrussels?\b/u.test(words);
  });
  return isSprouts ? "sprouts" : null;
}
