import { saltG } from "./sum.ts";
import type { NutrientKey, NutrientSum, NutrientSums } from "./types.ts";

type Rounding = (value: number) => number;

/**
 * One figure with its unit and no more digits than it has: "512 kcal", "38 g", "at least 1.2 g". A lower
 * bound is rounded down: rounded up it would not hold.
 */
export function writeFigure(sums: NutrientSums, key: NutrientKey): string {
  const sum = key === "sodiumMg" ? saltG(sums[key]) : sums[key];
  const rounding = sum.atLeast ? Math.floor : Math.round;
  return written(
    sum,
    key === "energyKcal" ? `${rounding(tidy(sum.amount))} kcal` : massG(sum.amount, rounding),
  );
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
  return massG(grams, Math.round);
}

function massG(grams: number, rounding: Rounding): string {
  if (rounding(tidy(grams * 10)) >= 100) return `${rounding(tidy(grams))} g`;
  if (grams > 0 && rounding(tidy(grams * 10)) === 0) return "below 0.1 g";
  return `${rounding(tidy(grams * 10)) / 10} g`;
}

/** Binary fractions leave dust in the last places, which must not take a whole step off a bound. */
function tidy(value: number): number {
  return Number(value.toPrecision(12));
}

function written(sum: NutrientSum, text: string): string {
  if (!sum.atLeast) return text;
  // A lower bound that shows as nothing says nothing.
  return /^(?:0 |below )/u.test(text) ? "not known" : `at least ${text}`;
}
