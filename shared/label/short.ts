import type { NutrientSums } from "../nutrition/types.ts";
import { euGrams, euKcal, euSums } from "./eu.ts";
import type { LabelExtras, LabelStyle } from "./types.ts";
import { usFigure } from "./us.ts";

/**
 * "510 kcal · protein 38 g · fat 12 g · carbohydrate 60 g": the four that people count, in one line, by
 * the rules of the style. In the EU style carbohydrate is without fibre and energy by the law's factors.
 */
export function shortFigures(sums: NutrientSums, style: LabelStyle, extras?: LabelExtras): string {
  return style === "us" ? usShort(sums) : euShort(sums, extras);
}

function usShort(sums: NutrientSums): string {
  return [
    usFigure(sums, "energyKcal").text,
    `protein ${usFigure(sums, "proteinG").text}`,
    `fat ${usFigure(sums, "fatG").text}`,
    `carbohydrate ${usFigure(sums, "carbohydrateG").text}`,
  ].join(" · ");
}

function euShort(sums: NutrientSums, extras?: LabelExtras): string {
  const eu = euSums(sums, extras);
  return [
    euKcal(eu),
    `protein ${euGrams(eu, "protein")}`,
    `fat ${euGrams(eu, "fat")}`,
    `carbohydrate ${euGrams(eu, "carbohydrate")}`,
  ].join(" · ");
}
