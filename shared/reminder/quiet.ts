import { Temporal } from "temporal-polyfill";
import { atWallClock, type Instant, isBefore, type PlainTime, timeIn } from "../time.ts";

/** The hours in which a member is not disturbed; may pass midnight. Equal ends: no quiet hours. */
export interface QuietHours {
  readonly zone: string;
  readonly quietFrom: PlainTime;
  readonly quietUntil: PlainTime;
}

/** Whether the wall clock stands in the quiet hours at `at`. */
export function isQuiet(at: Instant, quiet: QuietHours): boolean {
  return isQuietTime(timeIn(at, quiet.zone), quiet);
}

/** Whether a time of day lies in the quiet hours. */
export function isQuietTime(time: PlainTime, { quietFrom, quietUntil }: QuietHours): boolean {
  const order = Temporal.PlainTime.compare(quietFrom, quietUntil);
  if (order === 0) return false;
  const afterFrom = Temporal.PlainTime.compare(time, quietFrom) >= 0;
  const beforeUntil = Temporal.PlainTime.compare(time, quietUntil) < 0;
  return order < 0 ? afterFrom && beforeUntil : afterFrom || beforeUntil;
}

/**
 * Moves an instant out of the quiet hours: earlier to a minute before they begin (for what must not
 * be late), or later to their end.
 */
export function outsideQuiet(
  at: Instant,
  quiet: QuietHours,
  towards: "earlier" | "later",
): Instant {
  if (!isQuiet(at, quiet)) return at;
  const date = at.toZonedDateTimeISO(quiet.zone).toPlainDate();
  if (towards === "later") {
    const end = atWallClock(date, quiet.quietUntil, quiet.zone);
    return isBefore(at, end)
      ? end
      : atWallClock(date.add({ days: 1 }), quiet.quietUntil, quiet.zone);
  }
  const start = atWallClock(date, quiet.quietFrom, quiet.zone);
  const begun = isBefore(at, start)
    ? atWallClock(date.subtract({ days: 1 }), quiet.quietFrom, quiet.zone)
    : start;
  return begun.subtract({ minutes: 1 });
}
