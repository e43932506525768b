import { atWallClock, dateIn, daysBetween, type Instant, type PlainTime } from "../time.ts";
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

type Visit = "evening" | "morning";

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
  const visits = new Map<string, Instant>();
  const visit = (kind: Visit, day: number): Instant => {
    const key = `${kind}/${day}`;
    const at = visits.get(key) ?? atWallClock(today.add({ days: day }), hours[kind], hours.zone);
    visits.set(key, at);
    return at;
  };
  const known = new Map<string, readonly (Instant | null)[]>();
  return (need) => {
    const key = `${need.leadHours}/${need.daysLeft}`;
    const moments = known.get(key) ?? meals.map((meal) => thawMoment(meal, need, nowMs, visit));
    known.set(key, moments);
    return moments;
  };
}

function thawMoment(
  meal: { readonly atMs: number; readonly day: number },
  need: ThawNeed,
  nowMs: number,
  visit: (kind: Visit, day: number) => Instant,
): Instant | null {
  const latestMs = meal.atMs - Math.ceil(need.leadHours * 60) * 60_000;
  if (latestMs < nowMs) return null;
  const last = (kind: Visit, earliestMs: number): Instant | null => {
    for (let back = 0; back < need.daysLeft; back += 1) {
      const at = visit(kind, meal.day - back);
      const atMs = at.epochMilliseconds;
      if (atMs <= latestMs) return atMs >= earliestMs ? at : null;
    }
    return null;
  };
  return last("evening", nowMs) ?? last("morning", nowMs) ?? last("evening", nowMs - MISSED_MS);
}
