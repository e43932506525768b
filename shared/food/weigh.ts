import type { Amount, SpoonSet } from "../quantity/types.ts";
import { massUnitG, volumeUnitMl } from "../quantity/unit.ts";
import { foldWords } from "../words/fold.ts";
import { singular } from "../words/plural.ts";
import type { Food } from "./types.ts";

/**
 * A pinch as a share of a teaspoon: common practice, no published source. With the published spoon
 * weights it gives 0.4 g of salt and 0.1 g of black pepper, the figures that USDA SR28 (2015) has
 * for "1 dash" of either.
 */
const PINCH_TEASPOONS = 1 / 16;

/** Sizes that foods are sold in, as cooks and the published weights say them. */
export type PieceSize = "small" | "medium" | "large" | "extra large" | "jumbo";

/**
 * Grams of an amount of a food, exact and unrounded; of a range, its middle. A mass needs no food; a
 * volume needs the food's density, a count the weight of one, of the size where the table has it. Null
 * where that is not known: never a guess, the line then counts as unmeasured.
 */
export function weigh(
  amount: Amount,
  food: Food | null,
  spoons: SpoonSet,
  size: PieceSize | null = null,
): number | null {
  const count = amount.to === null ? amount.value : (amount.value + amount.to) / 2;
  if (!Number.isFinite(count) || count < 0) return null;
  const each = gramsOfOneUnit(amount, food, spoons, size);
  return each === null ? null : count * each;
}

function gramsOfOneUnit(
  amount: Amount,
  food: Food | null,
  spoons: SpoonSet,
  size: PieceSize | null,
): number | null {
  const massG = massUnitG(amount.unit);
  if (massG !== null) return massG;
  if (food === null) return null;
  if (amount.unit === "piece") return oneG(food, size);
  if (amount.unit === "pinch") return pinchG(food);
  const volumeMl = volumeUnitMl(amount.unit, spoons);
  return volumeMl === null || food.densityGPerMl === null ? null : volumeMl * food.densityGPerMl;
}

/** Edible grams of one: of that size where the table has it, else of the one that it has. */
function oneG(food: Food, size: PieceSize | null): number | null {
  return (size === null ? null : sizedG(food, size)) ?? food.one?.grams ?? null;
}

/** Edible grams of one of a size; null where the published measures have none. */
export function sizedG(food: Food, size: PieceSize): number | null {
  const own = new Set([...wordsOf(food.name), ...wordsOf(food.one?.word ?? ""), "whole"]);
  const wanted = size.split(" ");
  const measure = food.measures.find(({ name }) => {
    // What stands in brackets is the diameter.
    const words = wordsOf(name.replace(/\(.*/u, ""));
    const others = words.filter((word) => !wanted.includes(word));
    return wanted.every((word) => words.includes(word)) && others.every((word) => own.has(word));
  });
  return measure?.grams ?? null;
}

function wordsOf(text: string): readonly string[] {
  return foldWords(text)
    .split(" ")
    .filter((word) => word !== "")
    .map(singular);
}

/** Edible grams of a food weighed as bought: with its shell, bone, peel or stone. */
export function edibleG(food: Food, boughtG: number): number {
  return boughtG * (1 - food.refusePct / 100);
}

/** Grams to buy of a food for so many edible grams: edible / (1 - refuse). */
export function asBoughtG(food: Food, edibleGrams: number): number {
  return edibleGrams / (1 - food.refusePct / 100);
}

/** Only what is taken between two fingers has one: seasonings and the like, not meat or vegetables. */
function pinchG(food: Food): number | null {
  const pinched = food.keepingClass === "shelf-stable" || food.keepingClass === "fresh-herb";
  const teaspoonMl = volumeUnitMl("tsp", "us");
  if (!pinched || food.densityGPerMl === null || teaspoonMl === null) return null;
  return PINCH_TEASPOONS * teaspoonMl * food.densityGPerMl;
}
