import type { Food } from "../../shared/food/types.ts";

/** General factors, kcal per gram (21 CFR 101.9(c)(1)(i)(B); alcohol 7 by Regulation 1169/2011 Annex XIV). */
const GENERAL = { protein: 4, fat: 9, carbohydrate: 4, alcohol: 7 } as const;

/** Below this a gap is no more than rounding, kcal per 100 g. */
const ROUNDING_KCAL = 5;

export interface EnergyGap {
  readonly food: Food;
  /** As the source has it, kcal per 100 g. */
  readonly statedKcal: number;
  /** By the general factors, kcal per 100 g; fibre counts as carbohydrate, as in the source. */
  readonly generalKcal: number;
  /** General less stated, per cent of stated; null where the source states none. */
  readonly gapPct: number | null;
}

/**
 * Foods whose energy is further than `apartPct` per cent from the general factors, the widest gap first.
 * A report to read, not a fault: the source uses factors of each food, so bran, cocoa, spices, vegetables
 * and vinegar are far off by right. A row typed wrongly stands out among its like.
 */
export function energyReport(foods: readonly Food[], apartPct: number): readonly EnergyGap[] {
  return foods
    .flatMap((food) => gapOf(food) ?? [])
    .filter(({ statedKcal, generalKcal, gapPct }) => {
      if (Math.abs(generalKcal - statedKcal) <= ROUNDING_KCAL) return false;
      return gapPct === null || Math.abs(gapPct) > apartPct;
    })
    .sort((a, b) => width(b) - width(a));
}

/** The report as lines: "vinegar, distilled: 18 kcal stated, 0 kcal by the general factors (-99 %)". */
export function energyReportLines(foods: readonly Food[], apartPct: number): readonly string[] {
  return energyReport(foods, apartPct).map(({ food, statedKcal, generalKcal, gapPct }) => {
    const gap = gapPct === null ? "" : ` (${gapPct > 0 ? "+" : ""}${Math.round(gapPct)} %)`;
    return `${food.name}: ${statedKcal} kcal stated, ${Math.round(generalKcal)} kcal by the general factors${gap}`;
  });
}

function gapOf(food: Food): EnergyGap | null {
  const { energyKcal, proteinG, fatG, carbohydrateG } = food.per100g;
  if (energyKcal === null || proteinG === null || fatG === null || carbohydrateG === null) {
    return null;
  }
  const generalKcal =
    GENERAL.protein * proteinG +
    GENERAL.fat * fatG +
    GENERAL.carbohydrate * carbohydrateG +
    GENERAL.alcohol * food.alcoholG;
  const gapPct = energyKcal === 0 ? null : ((generalKcal - energyKcal) / energyKcal) * 100;
  return { food, statedKcal: energyKcal, generalKcal, gapPct };
}

function width({ gapPct }: EnergyGap): number {
  return gapPct === null ? Number.POSITIVE_INFINITY : Math.abs(gapPct);
}
