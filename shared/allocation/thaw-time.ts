import {
  atWallClock,
  dateIn,
  daysBetween,
  type Instant,
  type PlainDate,
  type PlainTime,
} from "../time.ts";
import type { MealSlot } from "./types.ts";

/** When a member is at the freezer: the evening first, the morning where an evening does not fit. */
export interface ThawHours {
  readonly zone: string;
  readonly evening: PlainTime;
  readonly morning: PlainTime;
}

/** What a portion in the freezer asks for: hours to thaw, and fridge days left, the day of thawing counted. */
export interface ThawNeed {
  readonly leadHours: number;
  readonly daysLeft: number;
}

/** For each meal (by index), the moment to set a portion of this need to thaw; null where none fits. */
export type ThawMoments = (need: ThawNeed) => readonly (Instant | null)[];

/** How long after an evening that was missed (an outage) its thaw may still be done. */
const MISSED_MS = 3 * 3_600_000;

/** A meal in whole days from today, and in milliseconds. */
interface Meal {
  readonly day: number;
  readonly atMs: number;
}

/** When the member is at the freezer on a day, counted from today. */
type Visits = (day: number) => { readonly at: Instant; readonly atMs: number };

/**
 * The latest moment at which a portion can be set to thaw for each meal: an evening to come if one
 * fits, else a morning to come, else an evening missed by up to three hours. It leaves the lead, also
 * from now, and the meal falls inside the fridge days left after thawing, the day of thawing counted.
 * Portions of the same need share one list, and meals of one day the same visits: wall clocks are slow.
 */
export function thawMoments(
  slots: readonly MealSlot[],
  now: Instant,
  hours: ThawHours,
): ThawMoments {
  const today = dateIn(now, hours.zone);
  const nowMs = now.epochMilliseconds;
  const meals = slots.map(({ at, date }) => ({
    atMs: at.epochMilliseconds,
    day: daysBetween(today, date),
  }));
  const evening = visitsAt(hours.evening, today, hours.zone);
  const morning = visitsAt(hours.morning, today, hours.zone);
  const known = new Map<string, readonly (Instant | null)[]>();
  const momentOf = (meal: Meal, need: ThawNeed): Instant | null => {
    const latestMs = meal.atMs - Math.ceil(need.leadHours * 60) * 60_000;
    if (latestMs < nowMs) return null;
    return (
      lastVisit(evening, meal, need, nowMs) ??
      lastVisit(morning, meal, need, nowMs) ??
      lastVisit(evening, meal, need, nowMs - MISSED_MS)
    );
  };
  return (need) => {
    const key = `${need.leadHours}/${need.daysLeft}`;
    const moments = known.get(key) ?? meals.map((meal) => momentOf(meal, need));
    known.set(key, moments);
    return moments;
  };
}

function visitsAt(time: PlainTime, today: PlainDate, zone: string): Visits {
  const known = new Map<number, ReturnType<Visits>>();
  return (day) => {
    const before = known.get(day);
    if (before !== undefined) return before;
    const at = atWallClock(today.add({ days: day }), time, zone);
    const visit = { at, atMs: at.epochMilliseconds };
    known.set(day, visit);
    return visit;
  };
}

/** The last visit that leaves the lead before a meal; null when that is too early for the food or for now. */
function lastVisit(visits: Visits, meal: Meal, need: ThawNeed, earliestMs: number): Instant | null {
  const latestMs = meal.atMs - Math.ceil(need.leadHours * 60) * 60_000;
  for (let back = 0; back < need.daysLeft; back += 1) {
    const { at, atMs } = visits(meal.day - back);
    if (atMs <= latestMs) return atMs >= earliestMs ? at : null;
  }
  return null;
}
