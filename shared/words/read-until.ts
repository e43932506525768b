import { fail, type Outcome, ok } from "../outcome.ts";
import {
  atWallClock,
  dateIn,
  type Instant,
  isBefore,
  type PlainDate,
  type PlainTime,
} from "../time.ts";
import { excerpt, type UntilProblem } from "./problems.ts";
import type { NamedDay } from "./read-day.ts";
import { readDuration, type Span } from "./read-duration.ts";
import { foldWhen, splitWhen } from "./split-when.ts";

/** Nothing is put off for longer than this. */
export const UNTIL_MAX_DAYS = 366;

/**
 * Reads a moment to come, as a wall clock in `zone` shows it: "Fri", "tomorrow", "3 days", "a week",
 * "2h", "2026-11-02", "Fri 18:00", "18:00". A day without a time is its first moment; a weekday is the
 * next one after today; a span of days ends at the same time of day.
 */
export function readUntil(
  text: string,
  now: Instant,
  zone: string,
): Outcome<Instant, UntilProblem> {
  const said = foldWhen(text).replace(/^in (?=\S)/u, "");
  const span = readDuration(said);
  if (span.ok) return afterSpan(span.value, text, now, zone);
  const split = said === "next week" ? nextMonday() : splitWhen(said, dateIn(now, zone));
  if (split === null) return fail({ code: "when not understood", text: excerpt(text) });
  if (split.day !== null && !split.day.ok) return split.day;
  const at = aheadAt(split.day?.value ?? null, split.time, now, zone);
  if (!isBefore(now, at)) return fail({ code: "not in the future", text: excerpt(text) });
  return withinReach(at, now);
}

function nextMonday(): { day: Outcome<NamedDay, never>; time: null } {
  return { day: ok({ kind: "weekday", weekday: 1, strict: true }), time: null };
}

function afterSpan(
  span: Span,
  text: string,
  now: Instant,
  zone: string,
): Outcome<Instant, UntilProblem> {
  const { months, days, minutes } = span;
  if (months > 12 || days > UNTIL_MAX_DAYS || minutes > UNTIL_MAX_DAYS * 24 * 60) {
    return fail({ code: "too far ahead", maxDays: UNTIL_MAX_DAYS });
  }
  const at = now.toZonedDateTimeISO(zone).add({ months, days, minutes }).toInstant();
  if (!isBefore(now, at)) return fail({ code: "not in the future", text: excerpt(text) });
  return withinReach(at, now);
}

function withinReach(at: Instant, now: Instant): Outcome<Instant, UntilProblem> {
  return isBefore(now.add({ hours: UNTIL_MAX_DAYS * 24 }), at)
    ? fail({ code: "too far ahead", maxDays: UNTIL_MAX_DAYS })
    : ok(at);
}

function aheadAt(
  day: NamedDay | null,
  time: PlainTime | null,
  now: Instant,
  zone: string,
): Instant {
  const today = dateIn(now, zone);
  if (day === null) return nextAt(time, now, zone);
  const date = aheadDate(day, today);
  // Not midnight by the clock: where a clock change leaves midnight out, the day starts later.
  return time === null ? date.toZonedDateTime(zone).toInstant() : atWallClock(date, time, zone);
}

function nextAt(time: PlainTime | null, now: Instant, zone: string): Instant {
  if (time === null) return now;
  const today = dateIn(now, zone);
  const at = atWallClock(today, time, zone);
  return isBefore(now, at) ? at : atWallClock(today.add({ days: 1 }), time, zone);
}

function aheadDate(day: NamedDay, today: PlainDate): PlainDate {
  if (day.kind === "date") return day.date;
  if (day.kind === "offset") return today.add({ days: day.days });
  return today.add({ days: ((day.weekday - today.dayOfWeek + 6) % 7) + 1 });
}
