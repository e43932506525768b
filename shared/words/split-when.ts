import type { Outcome } from "../outcome.ts";
import type { PlainDate, PlainTime } from "../time.ts";
import { fold } from "./fold.ts";
import type { WhenProblem } from "./problems.ts";
import { type NamedDay, readDay } from "./read-day.ts";
import { readTimeOfDay } from "./read-time-of-day.ts";

/** A text taken apart into the day and the time it names; either may be missing, not both. */
export interface SplitWhen {
  readonly day: Outcome<NamedDay, WhenProblem> | null;
  readonly time: PlainTime | null;
}

/** Folded, without commas and without the little words before a day or a time. */
export function foldWhen(text: string): string {
  return fold(text.slice(0, 80))
    .replace(/^(\d{4}-\d{1,2}-\d{1,2})t(\d)/u, "$1 $2")
    .replace(/,/gu, " ")
    .replace(/\b(?:at|on|around|about|until|till|til)\b/gu, " ")
    .replace(/ +/gu, " ")
    .trim();
}

/**
 * Splits a folded text into a day and a time, in either order ("Sun 17:00", "5pm Sunday"); null when
 * it is neither. Tries every place between two words: at most ten.
 */
export function splitWhen(said: string, today: PlainDate): SplitWhen | null {
  const time = readTimeOfDay(said);
  if (time.ok) return { day: null, time: time.value };
  const day = readDay(said, today);
  if (day !== null) return { day, time: null };
  const words = said.split(" ").slice(0, 11);
  for (let cut = 1; cut < words.length; cut += 1) {
    const left = words.slice(0, cut).join(" ");
    const right = words.slice(cut).join(" ");
    const found = pair(left, right, today) ?? pair(right, left, today);
    if (found !== null) return found;
  }
  return null;
}

function pair(dayText: string, timeText: string, today: PlainDate): SplitWhen | null {
  const time = readTimeOfDay(timeText);
  if (!time.ok) return null;
  const day = readDay(dayText, today);
  return day === null ? null : { day, time: time.value };
}
