import { Temporal } from "temporal-polyfill";
import { fail, type Outcome, ok } from "../outcome.ts";
import {
  atWallClock,
  dateIn,
  type Instant,
  isBefore,
  type PlainDate,
  type PlainTime,
} from "../time.ts";
import { excerpt, type WhenProblem } from "./problems.ts";
import type { NamedDay } from "./read-day.ts";
import { readDuration } from "./read-duration.ts";
import { foldWhen, splitWhen } from "./split-when.ts";

/** When people cook who do not say when. Common practice, no published source. */
const USUAL_TIME = Temporal.PlainTime.from("18:00");
const HALF_DAY_HOURS = 12;

/**
 * Reads a moment that has been, as a wall clock in `zone` shows it: "now", "18:30", "yesterday 6pm",
 * "Sun", "last sunday 17:00", "2026-10-24 18:30", "24 Oct", "2 hours ago", "2 days ago". A weekday is
 * the most recent one; a day without a time means 18:00, or now when that is still to come. A bare time
 * more than half a day ahead was yesterday's; one that is nearer stays today's, in the future, for the
 * caller to refuse. Clock changes: RFC 5545 section 3.3.5 (see `atWallClock`).
 */
export function readWhen(text: string, now: Instant, zone: string): Outcome<Instant, WhenProblem> {
  const said = foldWhen(text);
  if (said === "now" || said === "just now") return ok(now);
  const notUnderstood = fail({ code: "when not understood" as const, text: excerpt(text) });
  if (said.endsWith(" ago")) return readAgo(said, now, zone) ?? notUnderstood;
  const today = dateIn(now, zone);
  const split = splitWhen(said, today);
  if (split === null) return notUnderstood;
  if (split.day === null)
    return split.time === null ? notUnderstood : ok(latelyAt(split.time, now, zone));
  if (!split.day.ok) return split.day;
  const day = split.day.value;
  if (day.kind === "offset" && day.days > 0) return notUnderstood;
  return ok(atOrUsual(pastDate(day, split.time, now, zone), split.time, now, zone));
}

function readAgo(said: string, now: Instant, zone: string): Outcome<Instant, WhenProblem> | null {
  const span = readDuration(said.slice(0, -4));
  if (!span.ok) return null;
  const { months, days, minutes } = span.value;
  // A year's worth of anything is a slip of the finger, and the calendar must not run out.
  if (months > 12 || days > 366 || minutes > 366 * 24 * 60) return null;
  if (months === 0 && days === 0) return ok(now.subtract({ minutes }));
  const date = dateIn(now, zone).subtract({ months, days });
  return minutes === 0 ? ok(atOrUsual(date, null, now, zone)) : null;
}

function latelyAt(time: PlainTime, now: Instant, zone: string): Instant {
  const today = dateIn(now, zone);
  const at = atWallClock(today, time, zone);
  const isFarAhead = isBefore(now.add({ hours: HALF_DAY_HOURS }), at);
  return isFarAhead ? atWallClock(today.subtract({ days: 1 }), time, zone) : at;
}

function pastDate(day: NamedDay, time: PlainTime | null, now: Instant, zone: string): PlainDate {
  const today = dateIn(now, zone);
  if (day.kind === "date") return day.date;
  if (day.kind === "offset") return today.add({ days: day.days });
  const back = (today.dayOfWeek - day.weekday + 7) % 7;
  const isStillAhead = time !== null && isBefore(now, atWallClock(today, time, zone));
  return today.subtract({ days: back === 0 && (day.strict || isStillAhead) ? 7 : back });
}

/** The time said on that date; else the usual one, and now when that has not come yet today. */
function atOrUsual(date: PlainDate, time: PlainTime | null, now: Instant, zone: string): Instant {
  if (time !== null) return atWallClock(date, time, zone);
  const usual = atWallClock(date, USUAL_TIME, zone);
  return date.equals(dateIn(now, zone)) && isBefore(now, usual) ? now : usual;
}
