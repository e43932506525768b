import type { NutrientKey, NutrientSums } from "../nutrition/types.ts";
import { roundTo } from "../quantity/round.ts";
import type { Recipe } from "../recipe/types.ts";
import type { JsonObject } from "./types.ts";

interface Written {
  readonly property: string;
  /** Plain words, for a figure that is only a lower bound. */
  readonly word: string;
  readonly unit: "calories" | "g" | "mg";
}

const WRITTEN: Readonly<Record<NutrientKey, Written>> = {
  energyKcal: { property: "calories", word: "energy", unit: "calories" },
  proteinG: { property: "proteinContent", word: "protein", unit: "g" },
  fatG: { property: "fatContent", word: "fat", unit: "g" },
  saturatedFatG: { property: "saturatedFatContent", word: "saturated fat", unit: "g" },
  carbohydrateG: { property: "carbohydrateContent", word: "carbohydrate", unit: "g" },
  fibreG: { property: "fiberContent", word: "fibre", unit: "g" },
  sugarsG: { property: "sugarContent", word: "sugars", unit: "g" },
  sodiumMg: { property: "sodiumContent", word: "sodium", unit: "mg" },
};

/**
 * The figures of a portion as a NutritionInformation. Its Energy and Mass are a number and a unit, which
 * cannot say "at least": lower bounds go into the description. Carbohydrate includes fibre.
 */
export function nutritionNode(recipe: Recipe, perPortion: NutrientSums): JsonObject {
  const keys = Object.keys(WRITTEN) as NutrientKey[];
  const isBound = (key: NutrientKey) => perPortion[key].atLeast;
  const figures = keys
    .filter((key) => !isBound(key))
    .map((key) => [WRITTEN[key].property, figureOf(key, perPortion, Math.round)] as const);
  const bounds = keys.filter(isBound).map((key) => {
    return { word: WRITTEN[key].word, figure: figureOf(key, perPortion, Math.floor) };
  });
  const known = bounds.filter(({ figure }) => !figure.startsWith("0 "));
  // A lower bound of nothing says nothing.
  const unknown = bounds.filter((bound) => !known.includes(bound));
  const said = [
    "Estimated from a food table for one portion; carbohydrate includes fibre.",
    known.length === 0 ? "" : `At least: ${known.map(both).join(", ")}.`,
    unknown.length === 0 ? "" : `Not known: ${unknown.map(({ word }) => word).join(", ")}.`,
  ];
  return {
    "@type": "NutritionInformation",
    servingSize: servingSize(recipe),
    ...Object.fromEntries(figures),
    description: said.filter((sentence) => sentence !== "").join(" "),
  };
}

function both({ word, figure }: { readonly word: string; readonly figure: string }): string {
  return `${word} ${figure}`;
}

function servingSize({ portions, portionWord, yieldG }: Recipe): string {
  const grams = yieldG === null ? "" : ` (${Math.round(yieldG / portions)} g)`;
  return `1 ${portionWord}${grams}`;
}

/** Whole calories and milligrams, grams to one decimal; a lower bound is never rounded up. */
function figureOf(key: NutrientKey, sums: NutrientSums, rounding: (value: number) => number) {
  const { unit } = WRITTEN[key];
  // Binary fractions leave dust in the last places, which must not take a step off a bound.
  const amount = roundTo(sums[key].amount, 1e-6);
  const shown = unit === "g" ? rounding(roundTo(amount * 10, 1e-6)) / 10 : rounding(amount);
  return `${shown} ${unit}`;
}
