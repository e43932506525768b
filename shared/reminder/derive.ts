import { Temporal } from "temporal-polyfill";
import type { Allocation, MealSlot, Serving } from "../allocation/types.ts";
import { bestBefore, discardBy } from "../keeping/dates.ts";
import { leastThawHours } from "../keeping/thaw.ts";
import { batchOf } from "../stock/lot.ts";
import type { Batch, Lot, Place, Stock } from "../stock/types.ts";
import { atWallClock, dateIn, type Instant, isBefore, type PlainDate } from "../time.ts";
import { isHeldWhileAway, PROMPT, tellAfterPause } from "./hold.ts";
import { outsideQuiet } from "./quiet.ts";
import type { DerivedReminder, ReminderAbout, ReminderChoice } from "./types.ts";

/** Perishable food may stand out for two hours at most (USDA FSIS); told a quarter of an hour before. */
const OUT_LIMIT_MINUTES = 120;
const OUT_NOTICE_MINUTES = 15;

/** The time of night at which reminders are derived anew, the food having aged a day. */
const REPLAN_AT = Temporal.PlainTime.from("03:00");

/** All reminders that follow from the stock and its allocation, those already past but still of help included. */
export function deriveReminders(
  stock: Stock,
  allocation: Allocation,
  choice: ReminderChoice,
  now: Instant,
): readonly DerivedReminder[] {
  const all = [
    ...stock.lots.flatMap((lot) => lotFacts(stock, lot, choice)),
    ...thawReminders(stock, allocation),
    ...surplusFacts(stock, allocation, choice, now),
  ];
  return all
    .flatMap((one) => settled(one, placeOf(stock, one), choice))
    .filter((one) => isBefore(now, one.helpsUntil))
    .sort(
      (a, b) => a.dueAt.epochMilliseconds - b.dueAt.epochMilliseconds || (a.key < b.key ? -1 : 1),
    );
}

function placeOf(stock: Stock, { about }: DerivedReminder): Place | null {
  return stock.lots.find((lot) => lot.id === about.lotId)?.place ?? null;
}

/** What is to be said of a lot whatever the meals, at its plain time: before quiet hours and pauses. */
export function lotFacts(
  stock: Stock,
  lot: Lot,
  choice: ReminderChoice,
): readonly DerivedReminder[] {
  const batch = batchOf(stock.batches, lot.batchId);
  return lot.place === "freezer"
    ? freezerReminders(lot, batch, choice)
    : [...fridgeReminders(lot, batch, choice), ...outReminders(lot, batch)];
}

/** When to derive again if nothing happens: the next 03:00 of the member; null with nothing in stock. */
export function nextReplan(stock: Stock, choice: ReminderChoice, now: Instant): Instant | null {
  if (stock.lots.length === 0) return null;
  const today = dateIn(now, choice.zone);
  const tonight = atWallClock(today, REPLAN_AT, choice.zone);
  return isBefore(now, tonight)
    ? tonight
    : atWallClock(today.add({ days: 1 }), REPLAN_AT, choice.zone);
}

/**
 * Applies quiet hours and a pause. What must not be late moves earlier, the rest later, unless that
 * would be too late to help.
 */
function settled(
  one: DerivedReminder,
  place: Place | null,
  choice: ReminderChoice,
): readonly DerivedReminder[] {
  const later = outsideQuiet(one.dueAt, choice, "later");
  const must = PROMPT.has(one.kind) || !isBefore(later, one.helpsUntil);
  const dueAt = must ? outsideQuiet(one.dueAt, choice, "earlier") : later;
  const pause = choice.pausedUntil;
  if (pause === null || !isBefore(dueAt, pause) || !isHeldWhileAway(one.kind, place, choice)) {
    return [{ ...one, dueAt }];
  }
  const after = tellAfterPause(pause, choice);
  return isBefore(after, one.helpsUntil) ? [{ ...one, dueAt: after }] : [];
}

function about(lot: Lot, batch: Batch, rest: Partial<ReminderAbout>): ReminderAbout {
  return {
    lotId: lot.id,
    title: batch.title,
    portions: lot.portions,
    date: null,
    meal: null,
    mealAt: null,
    ...rest,
  };
}

function endOf(date: PlainDate, zone: string): Instant {
  return date.add({ days: 1 }).toZonedDateTime(zone).toInstant();
}

function fridgeReminders(
  lot: Lot,
  batch: Batch,
  choice: ReminderChoice,
): readonly DerivedReminder[] {
  const last = discardBy(lot, batch.keeping);
  if (last === null) return [];
  const date = last.toString();
  const gone = last.add({ days: 1 });
  return [
    {
      kind: "last good day",
      key: `last good day/${lot.id}/${date}`,
      dueAt: atWallClock(last, choice.morning, choice.zone),
      helpsUntil: endOf(last, choice.zone),
      about: about(lot, batch, { date }),
    },
    {
      kind: "discard today",
      key: `discard/${lot.id}/${date}`,
      dueAt: atWallClock(gone, choice.morning, choice.zone),
      helpsUntil: endOf(gone.add({ days: 14 }), choice.zone),
      about: about(lot, batch, { date }),
    },
  ];
}

/** For a pot just cooked and still in its first two hours. */
function outReminders(lot: Lot, batch: Batch): readonly DerivedReminder[] {
  if (lot.place !== "fridge" || lot.usedDays !== 0) return [];
  const limit = batch.cookedAt.add({ minutes: OUT_LIMIT_MINUTES });
  return [
    {
      kind: "into the fridge",
      key: `into the fridge/${batch.id}`,
      dueAt: limit.subtract({ minutes: OUT_NOTICE_MINUTES }),
      helpsUntil: limit,
      about: about(lot, batch, { mealAt: limit.toString() }),
    },
  ];
}

function freezerReminders(
  lot: Lot,
  batch: Batch,
  choice: ReminderChoice,
): readonly DerivedReminder[] {
  const best = bestBefore(lot, batch.keeping);
  if (best === null) return [];
  const date = best.toString();
  return [
    {
      kind: "freezer quality",
      key: `freezer quality/${lot.id}/${date}`,
      dueAt: atWallClock(best.subtract({ days: 7 }), choice.morning, choice.zone),
      helpsUntil: endOf(best.add({ days: 30 }), choice.zone),
      about: about(lot, batch, { date }),
    },
  ];
}

/** One for each meal and lot: two portions of one lot for one meal are one task. */
function thawReminders(stock: Stock, allocation: Allocation): readonly DerivedReminder[] {
  const tasks = new Map<string, Serving[]>();
  for (const serving of allocation.servings) {
    const lot = stock.lots.find((one) => one.id === serving.lotId);
    if (serving.from !== "freezer" || lot?.place !== "freezer") continue;
    const key = thawKey(serving.slot, lot);
    tasks.set(key, [...(tasks.get(key) ?? []), serving]);
  }
  return [...tasks].flatMap(([key, servings]) => {
    const [first] = servings;
    const lot = stock.lots.find((one) => one.id === first?.lotId);
    if (first?.thawAt == null || lot === undefined) return [];
    const { thawAt: dueAt, slot } = first;
    return [{ key, dueAt, ...thawFact(stock, lot, slot, portionsIn(servings)) }];
  });
}

function portionsIn(servings: readonly Serving[]): number {
  return servings.reduce((sum, one) => sum + one.portions, 0);
}

/** The key of the task of thawing from a lot for a meal. */
export function thawKey(slot: MealSlot, lot: Lot): string {
  return `thaw/${slot.key}/${lot.id}`;
}

/** What is to be said of thawing so many portions of a lot for a meal, and until when it helps. */
export function thawFact(
  stock: Stock,
  lot: Lot,
  slot: MealSlot,
  portions: number,
): Pick<DerivedReminder, "kind" | "helpsUntil" | "about"> {
  const batch = batchOf(stock.batches, lot.batchId);
  const minutes = Math.ceil(leastThawHours(batch.portionG) * 60);
  const mealAt = slot.at.toString();
  return {
    kind: "thaw tonight",
    helpsUntil: slot.at.subtract({ minutes }),
    about: about(lot, batch, { portions, meal: slot.name, mealAt }),
  };
}

/**
 * "Frozen at once" is said when the batch is logged; this repeats it once, at the member's next morning
 * or evening hour, so that deriving it again in between does not put it off.
 */
export function surplusFacts(
  stock: Stock,
  allocation: Allocation,
  choice: ReminderChoice,
  now: Instant,
): readonly DerivedReminder[] {
  return allocation.surplus.flatMap((spare) => {
    const lot = stock.lots.find((one) => one.id === spare.lotId);
    if (spare.advice !== "freeze" || lot === undefined) return [];
    const batch = batchOf(stock.batches, lot.batchId);
    const last = discardBy(lot, batch.keeping);
    if (last === null) return [];
    const helpsUntil = endOf(last, choice.zone);
    const next = nextHour(choice, now);
    return [
      {
        kind: "freeze the surplus" as const,
        key: `freeze/${lot.id}`,
        dueAt: isBefore(next, helpsUntil) ? next : now,
        helpsUntil,
        about: about(lot, batch, { portions: spare.portions, date: last.toString() }),
      },
    ];
  });
}

/** The next of the member's morning and evening hours, from now on. */
function nextHour({ morning, evening, zone }: ReminderChoice, now: Instant): Instant {
  const today = dateIn(now, zone);
  const hours = [
    atWallClock(today, morning, zone),
    atWallClock(today, evening, zone),
    atWallClock(today.add({ days: 1 }), morning, zone),
  ];
  return hours.find((at) => !isBefore(at, now)) ?? now;
}
