import { Temporal } from "temporal-polyfill";
import { fail, type Outcome, ok } from "../outcome.ts";
import type { PlainDate } from "../time.ts";
import { excerpt, type WhenProblem } from "./problems.ts";
import { weekdayOf } from "./read-weekdays.ts";

/** A day as somebody named it; which date it is depends on whether they look back or ahead. */
export type NamedDay =
  | { readonly kind: "offset"; readonly days: number }
  /** `strict`: "last Sunday" said on a Sunday is not today. */
  | { readonly kind: "weekday"; readonly weekday: number; readonly strict: boolean }
  | { readonly kind: "date"; readonly date: PlainDate };

const OFFSETS: Readonly<Record<string, number>> = {
  today: 0,
  tonight: 0,
  "this evening": 0,
  yesterday: -1,
  "last night": -1,
  "yesterday evening": -1,
  "day before yesterday": -2,
  "the day before yesterday": -2,
  tomorrow: 1,
};
const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const MONTH_NAMES =
  "january february march april may june july august september october november december".split(
    " ",
  );

const WEEKDAY = /^(last |this |next )?([a-z]{2,10}\.?)$/u;
const ISO = /^(\d{4})-(\d{1,2})-(\d{1,2})$/u;
const DAY_MONTH =
  /^(?:([a-z]{2,9})\.? )?(?:the )?(\d{1,2})(?:st|nd|rd|th)?\.? (?:of )?([a-z]{3,9})\.?(?: (\d{4}))?$/u;
const MONTH_DAY = /^(?:([a-z]{2,9})\.? )?([a-z]{3,9})\.? (\d{1,2})(?:st|nd|rd|th)?(?: (\d{4}))?$/u;

/** Reads a folded text (no commas) as a day; null when it is not one. */
export function readDay(said: string, today: PlainDate): Outcome<NamedDay, WhenProblem> | null {
  if (Object.hasOwn(OFFSETS, said)) return ok({ kind: "offset", days: OFFSETS[said] ?? 0 });
  const named = WEEKDAY.exec(said);
  const weekday = weekdayOf(named?.[2] ?? "");
  if (weekday !== null) {
    const strict = named?.[1] === "last " || named?.[1] === "next ";
    return ok({ kind: "weekday", weekday, strict });
  }
  const iso = ISO.exec(said);
  if (iso !== null) return dateOf(said, Number(iso[1]), Number(iso[2]), Number(iso[3]));
  return readWritten(said, today);
}

function readWritten(said: string, today: PlainDate): Outcome<NamedDay, WhenProblem> | null {
  const dayFirst = DAY_MONTH.exec(said);
  const match = dayFirst ?? MONTH_DAY.exec(said);
  if (match === null) return null;
  const [, weekdayName, a, b, yearText] = match;
  const month = monthOf((dayFirst === null ? a : b) ?? "");
  const weekday = weekdayName === undefined ? null : weekdayOf(weekdayName);
  if (month === null || (weekdayName !== undefined && weekday === null)) return null;
  const day = Number(dayFirst === null ? b : a);
  const found =
    yearText === undefined
      ? nearest(said, month, day, today)
      : dateOf(said, Number(yearText), month, day);
  if (!found.ok || weekday === null || found.value.date.dayOfWeek === weekday) return found;
  const date = found.value.date.toString();
  return fail({ code: "weekday does not fit date", text: excerpt(said), date });
}

function monthOf(word: string): number | null {
  const at = MONTHS.findIndex(
    (short, index) =>
      word === short || word === MONTH_NAMES[index] || (word === "sept" && short === "sep"),
  );
  return at === -1 ? null : at + 1;
}

type DateOutcome = Outcome<{ readonly kind: "date"; readonly date: PlainDate }, WhenProblem>;

/** Without a year the date nearest to today is meant: "31 Dec" said on 1 January was yesterday. */
function nearest(said: string, month: number, day: number, today: PlainDate): DateOutcome {
  const dates = [today.year - 1, today.year, today.year + 1]
    .map((year) => dateOf(said, year, month, day))
    .flatMap((made) => (made.ok ? [made.value.date] : []));
  const gap = (date: PlainDate) => Math.abs(today.until(date, { largestUnit: "days" }).days);
  const date = dates.sort((a, b) => gap(a) - gap(b))[0];
  return date === undefined ? noSuchDate(said) : ok({ kind: "date", date });
}

function dateOf(said: string, year: number, month: number, day: number): DateOutcome {
  if (year < 2000 || year > 2200 || month < 1 || month > 12 || day < 1) return noSuchDate(said);
  const date = Temporal.PlainDate.from({ year, month, day }, { overflow: "constrain" });
  return date.day === day ? ok({ kind: "date", date }) : noSuchDate(said);
}

function noSuchDate(said: string): DateOutcome {
  return fail({ code: "no such date", text: excerpt(said) });
}
