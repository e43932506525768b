/** What can be wrong with a number as typed. */
export type NumberProblem =
  | { readonly code: "no number" }
  | { readonly code: "not a number"; readonly text: string }
  | { readonly code: "number negative"; readonly text: string }
  | { readonly code: "divided by zero"; readonly text: string }
  | { readonly code: "number too big"; readonly max: number }
  | { readonly code: "range backwards"; readonly from: number; readonly to: number };

/** What can be wrong with a time of day as typed. */
export type TimeProblem = { readonly code: "time not understood"; readonly text: string };

/** What can be wrong with weekdays as typed. */
export type WeekdaysProblem =
  | { readonly code: "no weekday" }
  | { readonly code: "weekday not understood"; readonly text: string };

/** What can be wrong with a length of time as typed. */
export type DurationProblem = { readonly code: "duration not understood"; readonly text: string };

/** What can be wrong with a moment in the past as typed. */
export type WhenProblem =
  | { readonly code: "when not understood"; readonly text: string }
  | { readonly code: "no such date"; readonly text: string }
  | { readonly code: "weekday does not fit date"; readonly text: string; readonly date: string };

/** What can be wrong with a moment to come as typed. */
export type UntilProblem =
  | WhenProblem
  | { readonly code: "not in the future"; readonly text: string }
  | { readonly code: "too far ahead"; readonly maxDays: number };

/** A piece of what was typed, short enough to be said back. */
export function excerpt(text: string): string {
  const clean = text.slice(0, 200).replace(/\s+/gu, " ").trim();
  return clean.length > 40 ? `${clean.slice(0, 39)}…` : clean;
}
