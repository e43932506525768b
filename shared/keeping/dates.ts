import type { Lot } from "../stock/types.ts";
import { daysBetween, type PlainDate } from "../time.ts";
import { FRIDGE_CEILING_DAYS } from "./chart.ts";
import type { KeepingTime } from "./types.ts";

/**
 * The calendar days a food may spend in the fridge in all, the day of cooking counted as the first:
 * "keeps 3 days" cooked on Sunday is Sunday to Wednesday, four calendar days, still inside the upper
 * end of the published 3 to 4 days. Never more than seven (FDA Food Code 3-501.17).
 */
export function fridgeCalendarDays(keeping: KeepingTime): number {
  return Math.min(keeping.fridgeDays + 1, FRIDGE_CEILING_DAYS);
}

/**
 * Calendar days of fridge life a lot has used by the end of `on`. Every calendar day that touches the
 * fridge counts whole; the freezer uses none (FDA Food Code 3-501.17: freezing stops the clock and
 * does not set it back).
 */
export function usedDaysOn(lot: Lot, on: PlainDate): number {
  if (lot.place === "freezer") return lot.usedDays;
  return lot.usedDays + Math.max(0, daysBetween(lot.since, on)) + 1;
}

/**
 * The fewest calendar days a portion must have left to be thawed in the fridge: a full day of thawing
 * ends on the day after it began. With fewer it is heated straight from frozen.
 */
export const LEAST_DAYS_TO_THAW = 2;

/** Calendar days left in the fridge if it is set to thaw, the day of thawing counted; 0 or less: reheat from frozen. */
export function daysLeftAfterThaw(usedDays: number, keeping: KeepingTime): number {
  return fridgeCalendarDays(keeping) - usedDays;
}

/** The last day on which a lot in the fridge or thawing may be eaten; null in the freezer, which has no safety date. */
export function discardBy(lot: Lot, keeping: KeepingTime): PlainDate | null {
  if (lot.place === "freezer") return null;
  const left = daysLeftAfterThaw(lot.usedDays, keeping);
  return lot.since.add({ days: left - 1 });
}

/** The quality date of a lot in the freezer; null elsewhere. Kept at -18 °C it stays safe past it. */
export function bestBefore(lot: Lot, keeping: KeepingTime): PlainDate | null {
  if (lot.place !== "freezer") return null;
  return lot.since.add({ months: keeping.freezerMonths ?? 1 });
}
