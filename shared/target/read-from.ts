import { fail, type Outcome, ok } from "../outcome.ts";
import { isDateBefore, type PlainDate } from "../time.ts";
import { excerpt } from "../words/problems.ts";
import { type NamedDay, readDay } from "../words/read-day.ts";
import { foldWhen } from "../words/split-when.ts";
import type { FromProblem } from "./problems.ts";

/** Nothing is planned further ahead than this. */
const FROM_MAX_DAYS = 366;

/**
 * Reads the date from which targets are to hold: "today", "tomorrow", "Mon" (the next one, today counted),
 * "next Mon" (after today), "next week", "1 Dec", "2027-01-04". Never a day that has passed: what a
 * member ate by stays on record.
 */
export function readFromDate(text: string, today: PlainDate): Outcome<PlainDate, FromProblem> {
  const said = foldWhen(text).replace(/^from (?=\S)/u, "");
  const day = readDay(said === "next week" ? "next monday" : said, today);
  if (day === null || !day.ok) return fail({ code: "date not understood", text: excerpt(text) });
  const date = dateOf(day.value, today);
  if (isDateBefore(date, today)) return fail({ code: "date has passed", date: date.toString() });
  return isDateBefore(today.add({ days: FROM_MAX_DAYS }), date)
    ? fail({ code: "date too far ahead", maxDays: FROM_MAX_DAYS })
    : ok(date);
}

function dateOf(day: NamedDay, today: PlainDate): PlainDate {
  if (day.kind === "date") return day.date;
  if (day.kind === "offset") return today.add({ days: day.days });
  const ahead = (day.weekday - today.dayOfWeek + 7) % 7;
  return today.add({ days: ahead === 0 && day.strict ? 7 : ahead });
}
