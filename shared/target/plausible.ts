import { macrosOf } from "./floors.ts";
import type { DayProblem, FigureProblem } from "./problems.ts";
import type { TargetFigures, TargetKey } from "./types.ts";

/**
 * What a figure may be. Common practice, no published source: outside it is a slip of the finger or a
 * diet that belongs into licensed care. The least protein is a tenth of the least energy (1,200 kcal).
 * The least energy is the floors' affair.
 */
const RANGES: Readonly<Record<TargetKey, { readonly min: number; readonly max: number }>> = {
  energyKcal: { min: 0, max: 6000 },
  proteinG: { min: 30, max: 400 },
  fatG: { min: 20, max: 400 },
  carbohydrateG: { min: 20, max: 1000 },
  fibreG: { min: 5, max: 100 },
};

/**
 * How far the energy of the macronutrients may lie from the day's energy. Common practice, no published
 * source: room for rounded shares, for fibre (2 rather than 4 kcal/g) and for factors by food.
 */
export const ENERGY_TOLERANCE = 0.1;

/** Whether a figure is one that an adult's day can have. */
export function rangeFault(key: TargetKey, value: number): FigureProblem | null {
  const { min, max } = RANGES[key];
  return value >= min && value <= max
    ? null
    : { code: "figure out of range", key, value, min, max };
}

/** Whether a day's figures contradict each other; null when they do not. */
export function contradiction(figures: TargetFigures): DayProblem | null {
  return fibreFault(figures) ?? energyFault(figures);
}

function fibreFault({ fibreG, carbohydrateG }: TargetFigures): DayProblem | null {
  if (fibreG === undefined || carbohydrateG === undefined || fibreG <= carbohydrateG) return null;
  return { code: "fibre above carbohydrate", fibreG, carbohydrateG };
}

function energyFault(figures: TargetFigures): DayProblem | null {
  const macros = macrosOf(figures);
  const { energyKcal } = figures;
  if (energyKcal === undefined) {
    const maxKcal = RANGES.energyKcal.max;
    return macros.kcal > maxKcal
      ? { code: "energy too high", energyKcal: macros.kcal, maxKcal }
      : null;
  }
  const found = { macroKcal: macros.kcal, energyKcal };
  if (macros.kcal > energyKcal * (1 + ENERGY_TOLERANCE)) {
    return { code: "macronutrients above energy", ...found };
  }
  // With all three set they are the day's food: less of it than the energy says would pass under a floor.
  return macros.all && macros.kcal < energyKcal * (1 - ENERGY_TOLERANCE)
    ? { code: "macronutrients below energy", ...found }
    : null;
}
