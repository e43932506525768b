import { atWallClock, type Instant, isBefore, type PlainTime } from "../time.ts";
import type { MealSlot } from "./types.ts";

/** When a member is at the freezer: the evening first, the morning where an evening does not fit. */
export interface ThawHours {
  readonly zone: string;
  readonly evening: PlainTime;
  readonly morning: PlainTime;
}

/**
 * The latest moment at which a portion can be set to thaw for a meal: an evening if one fits, else a
 * morning. It leaves the lead, is not yet past (an evening missed by up to three hours still counts
 * while the lead holds from now), and the meal falls inside the fridge days left after thawing, the
 * day of thawing counted. Null when no moment fits.
 */
export function thawMoment(
  slot: MealSlot,
  need: { readonly leadHours: number; readonly daysLeft: number },
  now: Instant,
  hours: ThawHours,
): Instant | null {
  const latest = slot.at.subtract({ minutes: Math.ceil(need.leadHours * 60) });
  if (isBefore(latest, now)) return null;
  const earliest = now.subtract({ hours: 3 });
  for (const time of [hours.evening, hours.morning]) {
    for (let back = 0; back < need.daysLeft; back += 1) {
      const at = atWallClock(slot.date.subtract({ days: back }), time, hours.zone);
      if (!isBefore(latest, at) && !isBefore(at, earliest)) return at;
    }
  }
  return null;
}
