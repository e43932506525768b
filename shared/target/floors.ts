import type { DayProblem, EnergyOf } from "./problems.ts";
import type { TargetFigures } from "./types.ts";

/**
 * Least energy of a day that is taken without licensed care, kcal: the lower ends of the ranges
 * prescribed to women (1,200-1,500) and men (1,500-1,800) in the 2013 AHA/ACC/TOS Guideline for the
 * Management of Overweight and Obesity in Adults, recommendation 3a. Published plans go lower (NHLBI 1998:
 * 1,000-1,200 and 1,200-1,600) under supervision, which a chat cannot give.
 */
export const FLOOR_WOMEN_KCAL = 1200;
export const FLOOR_MEN_KCAL = 1500;
export type FloorKcal = typeof FLOOR_WOMEN_KCAL | typeof FLOOR_MEN_KCAL;

/** General factors, kcal per gram: 21 CFR 101.9(c)(1)(i)(B). */
const KCAL_PER_G = { proteinG: 4, carbohydrateG: 4, fatG: 9 } as const;
type Macro = keyof typeof KCAL_PER_G;
const MACROS: readonly Macro[] = ["proteinG", "fatG", "carbohydrateG"];

/** The energy of a macronutrient's target by the general factors, kcal; null without a target for it. */
function macroKcal(figures: TargetFigures, key: Macro): number | null {
  const grams = figures[key];
  return grams === undefined ? null : grams * KCAL_PER_G[key];
}

/** The energy of those macronutrients that have a target, and whether all three have. */
export function macrosOf(figures: TargetFigures): { readonly kcal: number; readonly all: boolean } {
  const parts = MACROS.map((key) => macroKcal(figures, key));
  return {
    kcal: parts.reduce<number>((sum, part) => sum + (part ?? 0), 0),
    all: !parts.includes(null),
  };
}

/** What a day comes to, kcal: its energy, else that of its three macronutrients; null when neither is set. */
export function dayEnergy(
  figures: TargetFigures,
): { readonly kcal: number; readonly of: EnergyOf } | null {
  if (figures.energyKcal !== undefined) return { kcal: figures.energyKcal, of: "energy" };
  const macros = macrosOf(figures);
  return macros.all ? { kcal: macros.kcal, of: "macronutrients" } : null;
}

/** Whether a day lies under the floor that applies; null when it does not, or has no energy. */
export function floorFault(figures: TargetFigures, floorKcal: FloorKcal): DayProblem | null {
  const day = dayEnergy(figures);
  if (day === null || day.kcal >= floorKcal) return null;
  const code = day.kcal < FLOOR_WOMEN_KCAL ? "below every floor" : "below the floor of men";
  return { code, energyKcal: day.kcal, of: day.of };
}

/**
 * Share of the day's energy, percent: acceptable macronutrient distribution ranges of adults, Institute of
 * Medicine, Dietary Reference Intakes for Energy, Carbohydrate, Fiber, Fat, Fatty Acids, Cholesterol,
 * Protein, and Amino Acids (2002/2005).
 */
const SHARE_PCT: Readonly<Record<Macro, { readonly min: number; readonly max: number }>> = {
  proteinG: { min: 10, max: 35 },
  fatG: { min: 20, max: 35 },
  carbohydrateG: { min: 45, max: 65 },
};

export interface ShareOutside {
  readonly key: Macro;
  readonly sharePct: number;
  readonly minPct: number;
  readonly maxPct: number;
}

/** The macronutrients whose share of a day's energy lies outside the published range: worth a word, no fault. */
export function sharesOutside(figures: TargetFigures): readonly ShareOutside[] {
  const energyKcal = dayEnergy(figures)?.kcal ?? 0;
  if (energyKcal <= 0) return [];
  return MACROS.flatMap((key) => {
    const kcal = macroKcal(figures, key);
    const { min, max } = SHARE_PCT[key];
    const sharePct = ((kcal ?? 0) / energyKcal) * 100;
    return kcal === null || (sharePct >= min && sharePct <= max)
      ? []
      : [{ key, sharePct, minPct: min, maxPct: max }];
  });
}
