import type { FoodBook } from "../food/book.ts";
import type { Vulnerable } from "../people/types.ts";
import type { Recipe } from "../recipe/types.ts";
import { FRIDGE_CEILING_DAYS } from "./chart.ts";
import { type PartLimit, partLimit } from "./part-limit.ts";
import type { FridgeTime, KeepingTime } from "./types.ts";

/** A part, or the whole, for which the coach states longer than the chart. */
export interface StatedLonger {
  /** Name of the part. */
  readonly part: string;
  readonly statedDays: number;
  readonly limit: PartLimit;
}

/** Every part for which the recipe states more days in the fridge than the published chart gives. */
export function statedLonger(recipe: Recipe, foods: FoodBook): readonly StatedLonger[] {
  return recipe.components.flatMap((part) => {
    const limit = partLimit(part, recipe, foods);
    const stated = part.keeping.fridgeDays ?? recipe.keeping.fridgeDays ?? 0;
    const statedDays = Math.min(stated, FRIDGE_CEILING_DAYS - 1);
    return statedDays <= limit.days ? [] : [{ part: part.name, statedDays, limit }];
  });
}

/**
 * The optional parts that keep no longer on anybody's word: a batch without them may still keep longer.
 */
export function partsThatStay(recipe: Recipe, foods: FoodBook): readonly string[] {
  return recipe.components
    .filter((part) => part.optional && partLimit(part, recipe, foods).stays !== null)
    .map(({ name }) => name);
}

/** The chart's keeping time with the coach's beside it. */
export function withLonger(keeping: KeepingTime, coach: FridgeTime): KeepingTime {
  const { fridgeDays, limitedBy, remarks } = keeping;
  return { ...keeping, longer: { chart: { fridgeDays, limitedBy, remarks }, coach } };
}

/** What a member reads where the coach's time counts. */
export function coachsWord(days: number, chart: FridgeTime): string {
  return `${days} days in the fridge are the coach's word; the published chart gives ${chart.fridgeDays} for what is in the ${chart.limitedBy}. With somebody pregnant, under five, over 65 or with a weak immune system at your table, ${chart.fridgeDays} days count: say so with /me.`;
}

/**
 * The keeping time as it counts for who eats: the coach's longer time where the coach has confirmed one,
 * never where somebody vulnerable is at the table. May be asked again and again, also for others.
 */
export function countedFor(keeping: KeepingTime, atTable: readonly Vulnerable[]): KeepingTime {
  if (keeping.longer === null) return keeping;
  return { ...keeping, ...keeping.longer[atTable.length === 0 ? "coach" : "chart"] };
}

/** The keeping time by the published chart alone. */
export function byChart(keeping: KeepingTime): KeepingTime {
  return keeping.longer === null ? keeping : { ...keeping, ...keeping.longer.chart };
}

/** Whose word counts where there are two; null where only one was ever given. */
export function whoseWord(keeping: KeepingTime): "coach" | "chart" | null {
  if (keeping.longer === null) return null;
  return keeping.fridgeDays === keeping.longer.coach.fridgeDays ? "coach" : "chart";
}
