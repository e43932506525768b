import fc from "fast-check";
import type { ThawHours } from "../../../shared/allocation/thaw-time.ts";
import type { MealSlot } from "../../../shared/allocation/types.ts";
import { batchId, lotId } from "../../../shared/ids.ts";
import type { Place, Stock } from "../../../shared/stock/types.ts";
import type { Instant, PlainDate } from "../../../shared/time.ts";
import { batch, date, instant, keeping, lot, stockOf, time } from "../../kit/stock.ts";

/**
 * A kitchen in whole hours and days counted from today, so that a second way of working it out shares
 * no calendar with the first. Day 0 is today; hours count from the midnight that began it.
 */
export interface KitchenLot {
  readonly place: Place;
  readonly portions: number;
  /** Hours before now at which it came to this place. */
  readonly hoursAgo: number;
  readonly usedDays: number;
  readonly fridgeDays: number;
  readonly freezes: "well" | "poorly" | "no";
  readonly portionG: number;
}
export interface KitchenMeal {
  readonly day: number;
  readonly hour: number;
  readonly portions: number;
}
export interface Kitchen {
  readonly nowHour: number;
  readonly eveningHour: number;
  readonly morningHour: number;
  readonly lots: readonly KitchenLot[];
  readonly meals: readonly KitchenMeal[];
}

const TODAY = date("2026-07-06");
const MIDNIGHT = instant("2026-07-06T00:00:00Z");

const at = (hours: number): Instant => MIDNIGHT.add({ hours });
const dayOf = (hours: number): PlainDate => TODAY.add({ days: Math.floor(hours / 24) });

/** The same kitchen as the allocation takes it, its wall clock at UTC. */
export function asStock(kitchen: Kitchen): {
  readonly stock: Stock;
  readonly slots: readonly MealSlot[];
  readonly now: Instant;
  readonly hours: ThawHours;
} {
  const { lots, meals, nowHour } = kitchen;
  const cooked = lots.map((one) => nowHour - one.hoursAgo);
  return {
    stock: stockOf(
      lots.map((one, i) =>
        batch({
          id: batchId(`b${i}`),
          portionG: one.portionG,
          cookedAt: at(cooked[i] ?? 0),
          keeping: keeping({ fridgeDays: one.fridgeDays, freezes: one.freezes }),
        }),
      ),
      lots.map((one, i) =>
        lot({
          id: lotId(`l${i}`),
          batchId: batchId(`b${i}`),
          place: one.place,
          portions: one.portions,
          since: dayOf(cooked[i] ?? 0),
          sinceAt: at(cooked[i] ?? 0),
          usedDays: one.usedDays,
        }),
      ),
    ),
    slots: meals.map((meal, i) => ({
      key: `${i}`,
      name: "meal",
      date: TODAY.add({ days: meal.day }),
      at: at(meal.day * 24 + meal.hour),
      portions: meal.portions,
    })),
    now: at(nowHour),
    hours: {
      zone: "UTC",
      evening: time(`${String(kitchen.eveningHour).padStart(2, "0")}:00`),
      morning: time(`${String(kitchen.morningHour).padStart(2, "0")}:00`),
    },
  };
}

/** Hours since the midnight that began day 0. */
export function hoursOf(instantAt: Instant): number {
  return (instantAt.epochMilliseconds - MIDNIGHT.epochMilliseconds) / 3_600_000;
}

const anyLot = fc.record({
  place: fc.constantFrom<Place>("fridge", "fridge", "thawing", "freezer", "freezer"),
  portions: fc.integer({ min: 1, max: 3 }),
  hoursAgo: fc.integer({ min: 0, max: 80 }),
  usedDays: fc.integer({ min: 0, max: 4 }),
  fridgeDays: fc.integer({ min: 1, max: 6 }),
  freezes: fc.constantFrom<KitchenLot["freezes"]>("well", "well", "poorly", "no"),
  // Most portions are small; a whole roast thaws for days.
  portionG: fc.constantFrom(350, 400, 900, 2000, 2700, 4000),
});

/** Kitchens of up to `most.lots` lots and `most.meals` meals. */
export function anyKitchen(most: {
  readonly lots: number;
  readonly meals: number;
  readonly days: number;
}): fc.Arbitrary<Kitchen> {
  return fc
    .record({
      nowHour: fc.integer({ min: 0, max: 23 }),
      eveningHour: fc.integer({ min: 17, max: 22 }),
      morningHour: fc.integer({ min: 6, max: 10 }),
      lots: fc.array(anyLot, { minLength: 1, maxLength: most.lots }),
      meals: fc.uniqueArray(
        fc.record({
          day: fc.integer({ min: 0, max: most.days }),
          hour: fc.constantFrom(7, 12, 19),
          portions: fc.integer({ min: 1, max: 2 }),
        }),
        { maxLength: most.meals, selector: ({ day, hour }) => day * 24 + hour },
      ),
    })
    .map((kitchen) => ({
      ...kitchen,
      meals: kitchen.meals
        .filter(({ day, hour }) => day * 24 + hour >= kitchen.nowHour)
        .sort((a, b) => a.day - b.day || a.hour - b.hour),
    }));
}
