import { Temporal } from "temporal-polyfill";
import { batchId, lotId, memberId, revisionId } from "../../shared/ids.ts";
import type { KeepingTime } from "../../shared/keeping/types.ts";
import { NUTRIENT_KEYS, type NutrientSums } from "../../shared/nutrition/types.ts";
import type { ReminderChoice } from "../../shared/reminder/types.ts";
import type { Batch, Lot, Stock } from "../../shared/stock/types.ts";

/** Builders with valid defaults: a test names only what it is about. */
export const ZONE = "Europe/Lisbon";
export const instant = (text: string): Temporal.Instant => Temporal.Instant.from(text);
export const date = (text: string): Temporal.PlainDate => Temporal.PlainDate.from(text);
export const time = (text: string): Temporal.PlainTime => Temporal.PlainTime.from(text);

export function noNutrients(): NutrientSums {
  const entries = NUTRIENT_KEYS.map((key) => [key, { amount: 0, atLeast: true }] as const);
  return Object.fromEntries(entries) as NutrientSums;
}

export function keeping(rest: Partial<KeepingTime> = {}): KeepingTime {
  return {
    fridgeDays: 3,
    freezerMonths: 3,
    freezes: "well",
    reason: "",
    limitedBy: "Base",
    remarks: [],
    longer: null,
    ...rest,
  };
}

export function batch(rest: Partial<Batch> = {}): Batch {
  return {
    id: batchId("batch1"),
    memberId: memberId("member1"),
    revisionId: revisionId("revision1"),
    title: "Barley pot",
    portionWord: "portion",
    portionsCooked: 6,
    cookedAt: instant("2026-10-11T17:00:00Z"),
    cookedOn: date("2026-10-11"),
    cookedWeightG: null,
    portionG: 400,
    keeping: keeping(),
    perPortion: noNutrients(),
    ...rest,
  };
}

export function lot(rest: Partial<Lot> = {}): Lot {
  return {
    id: lotId("lot1"),
    batchId: batchId("batch1"),
    place: "fridge",
    portions: 6,
    since: date("2026-10-11"),
    sinceAt: instant("2026-10-11T17:00:00Z"),
    usedDays: 0,
    ...rest,
  };
}

export function stockOf(batches: readonly Batch[], lots: readonly Lot[], version = 1): Stock {
  return { memberId: memberId("member1"), version, batches, lots };
}

export function choice(rest: Partial<ReminderChoice> = {}): ReminderChoice {
  return {
    zone: ZONE,
    morning: time("08:00"),
    evening: time("19:00"),
    quietFrom: time("22:00"),
    quietUntil: time("07:00"),
    pausedUntil: null,
    pausesSafety: false,
    ...rest,
  };
}

/** Ids "a1", "a2", … in order. */
export function counter(prefix: string): () => string {
  let next = 0;
  return () => {
    next += 1;
    return `${prefix}${next}`;
  };
}
