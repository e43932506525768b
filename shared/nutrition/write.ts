import { saltG } from "./sum.ts";
import type { NutrientKey, NutrientSum, NutrientSums } from "./types.ts";

/** One figure with its unit and no more digits than it has: "512 kcal", "38 g", "at least 1.2 g". */
export function writeFigure(sums: NutrientSums, key: NutrientKey): string {
  if (key === "energyKcal") return written(sums[key], `${Math.round(sums[key].amount)} kcal`);
  const grams = key === "sodiumMg" ? saltG(sums[key]) : sums[key];
  return written(grams, writeMassG(grams.amount));
}

/** "512 kcal · protein 38 g · fat 12 g · carbohydrate 60 g": the four that people count, in one line. */
export function writeShort(sums: NutrientSums): string {
  return [
    writeFigure(sums, "energyKcal"),
    `protein ${writeFigure(sums, "proteinG")}`,
    `fat ${writeFigure(sums, "fatG")}`,
    `carbohydrate ${writeFigure(sums, "carbohydrateG")}`,
  ].join(" · ");
}

/** Grams: whole from 10 up, one decimal below, "below 0.1 g" for a trace. */
export function writeMassG(grams: number): string {
  if (grams >= 9.95) return `${Math.round(grams)} g`;
  if (grams > 0 && grams < 0.05) return "below 0.1 g";
  return `${Math.round(grams * 10) / 10} g`;
}

function written(sum: NutrientSum, text: string): string {
  if (!sum.atLeast) return text;
  // A lower bound that shows as nothing says nothing.
  return /^(?:0 |below )/u.test(text) ? "not known" : `at least ${text}`;
}
