import { fail, type Outcome, ok } from "../outcome.ts";
import { isDateBefore, type PlainDate } from "../time.ts";
import { excerpt, type UntilProblem } from "./problems.ts";
import { type NamedDay, readDay } from "./read-day.ts";
import { UNTIL_MAX_DAYS } from "./read-until.ts";
import { foldWhen } from "./split-when.ts";

/**
 * Reads a day to come, today included: "today", "Thu", "Thu 15 Oct", "15 Oct", "2026-10-15". A weekday
 * may be today's or the one a week later ("Thu" said on a Thursday evening): both are returned, the
 * nearer first.
 */
export function readDayAhead(
  text: string,
  today: PlainDate,
): Outcome<readonly PlainDate[], UntilProblem> {
  const day = readDay(foldWhen(text), today);
  if (day === null) return fail({ code: "when not understood", text: excerpt(text) });
  if (!day.ok) return day;
  const dates = datesOf(day.value, today);
  const [first = today] = dates;
  if (isDateBefore(first, today)) return fail({ code: "not in the future", text: excerpt(text) });
  if (isDateBefore(today.add({ days: UNTIL_MAX_DAYS }), first)) {
    return fail({ code: "too far ahead", maxDays: UNTIL_MAX_DAYS });
  }
  return ok(dates);
}

function datesOf(day: NamedDay, today: PlainDate): readonly PlainDate[] {
  if (day.kind === "date") return [day.date];
  if (day.kind === "offset") return [today.add({ days: day.days })];
  const ahead = (day.weekday - today.dayOfWeek + 7) % 7;
  const dates = [ahead, ahead + 7].map((days) => today.add({ days }));
  return day.strict ? dates.filter((date) => !date.equals(today)) : dates;
}
