import { atWallClock, type Instant, isBefore, type PlainTime } from "../time.ts";
import type { MealSlot } from "./types.ts";

/** When a member is at the freezer: the evening first, the morning where an evening does not fit. */
export interface ThawHours {
  readonly zone: string;
  readonly evening: PlainTime;
  readonly morning: PlainTime;
}

/**
 * The latest moment at which a portion can be set to thaw for a meal: an evening to come if one fits,
 * else a morning to come, else an evening missed by up to three hours (after an outage). It leaves the
 * lead, also from now, and the meal falls inside the fridge days left after thawing, the day of
 * thawing counted. Null when no moment fits.
 */
export function thawMoment(
  slot: MealSlot,
  need: { readonly leadHours: number; readonly daysLeft: number },
  now: Instant,
  hours: ThawHours,
): Instant | null {
  const latest = slot.at.subtract({ minutes: Math.ceil(need.leadHours * 60) });
  if (isBefore(latest, now)) return null;
  const missed = now.subtract({ hours: 3 });
  const dates = Array.from({ length: Math.max(0, need.daysLeft) }, (_, back) =>
    slot.date.subtract({ days: back }),
  );
  const last = (time: PlainTime, earliest: Instant): Instant | undefined =>
    dates
      .map((date) => atWallClock(date, time, hours.zone))
      .find((at) => !isBefore(latest, at) && !isBefore(at, earliest));
  return (
    last(hours.evening, now) ?? last(hours.morning, now) ?? last(hours.evening, missed) ?? null
  );
}
