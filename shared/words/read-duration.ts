import { fail, type Outcome, ok } from "../outcome.ts";
import { fold } from "./fold.ts";
import { type DurationProblem, excerpt } from "./problems.ts";
import { numberAtStart } from "./read-number.ts";

/** A length of time: calendar months and days, and exact minutes. */
export interface Span {
  readonly months: number;
  readonly days: number;
  readonly minutes: number;
}

const UNIT_SPANS: readonly (readonly [words: readonly string[], unit: Span])[] = [
  [["min", "mins", "minute", "minutes", "m"], { months: 0, days: 0, minutes: 1 }],
  [["h", "hr", "hrs", "hour", "hours"], { months: 0, days: 0, minutes: 60 }],
  [["d", "day", "days"], { months: 0, days: 1, minutes: 0 }],
  [["w", "wk", "wks", "week", "weeks"], { months: 0, days: 7, minutes: 0 }],
  [["mo", "month", "months"], { months: 1, days: 0, minutes: 0 }],
];
const UNIT_AT_START = /^ ?([a-z]{1,8})\.?(?![a-z])(?: |,|and\b)*/u;
const COUNT_WORDS: readonly (readonly [pattern: RegExp, value: number])[] = [
  [/^half an? /u, 0.5],
  [/^(?:an?|one) /u, 1],
  [/^(?:two|a couple of|a couple) /u, 2],
  [/^three /u, 3],
  [/^four /u, 4],
  [/^five /u, 5],
  [/^six /u, 6],
  [/^seven /u, 7],
];

/** Reads a length of time: "3 days", "a week", "2h", "1 h 30 min", "half an hour". */
export function readDuration(text: string): Outcome<Span, DurationProblem> {
  const problem = fail({ code: "duration not understood" as const, text: excerpt(text) });
  let rest = fold(text.slice(0, 60)).replace(/^for /u, "");
  let sum: Span = { months: 0, days: 0, minutes: 0 };
  if (rest === "") return problem;
  // Five parts are more than anybody says.
  for (let parts = 0; rest !== "" && parts < 5; parts += 1) {
    const part = partAtStart(rest);
    if (part === null) return problem;
    sum = {
      months: sum.months + part.span.months,
      days: sum.days + part.span.days,
      minutes: sum.minutes + part.span.minutes,
    };
    rest = part.rest;
  }
  const whole = Number.isInteger(sum.days) && Number.isInteger(sum.months);
  return rest === "" && whole ? ok(sum) : problem;
}

function partAtStart(text: string): { span: Span; rest: string } | null {
  const counted = countAtStart(text);
  if (counted === null) return null;
  const match = UNIT_AT_START.exec(counted.rest);
  const unit = UNIT_SPANS.find(([words]) => words.includes(match?.[1] ?? ""))?.[1];
  if (match === null || unit === undefined) return null;
  const { value } = counted;
  return {
    span: {
      months: unit.months * value,
      days: unit.days * value,
      minutes: Math.round(unit.minutes * value),
    },
    rest: counted.rest.slice(match[0].length),
  };
}

function countAtStart(text: string): { value: number; rest: string } | null {
  for (const [pattern, value] of COUNT_WORDS) {
    const match = pattern.exec(text);
    if (match !== null) return { value, rest: text.slice(match[0].length) };
  }
  const number = numberAtStart(text);
  return number.ok && number.value.to === null ? number.value : null;
}
