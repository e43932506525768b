import { Temporal } from "temporal-polyfill";
import { fail, type Outcome, ok } from "../outcome.ts";
import type { PlainTime } from "../time.ts";
import { fold } from "./fold.ts";
import { excerpt, type TimeProblem } from "./problems.ts";

const CLOCK = /^(\d{1,2})(?:[:.h](\d{2}))? ?(am|pm|h|o'clock)?$/u;
const FOUR_DIGITS = /^(\d{2})(\d{2})$/u;
const NAMED: Readonly<Record<string, readonly [hour: number, minute: number]>> = {
  noon: [12, 0],
  midday: [12, 0],
  midnight: [0, 0],
};

/** Reads a time of day: "19:00", "7pm", "7.30 pm", "19", "1900", "noon". A bare hour is on the 24-hour clock. */
export function readTimeOfDay(text: string): Outcome<PlainTime, TimeProblem> {
  const said = fold(text.slice(0, 40))
    .replace(/\b([ap])\.? ?m\.?$/u, "$1m")
    .replace(/([0-9])([ap])m$/u, "$1 $2m");
  const time = named(said) ?? clock(said);
  return time === null ? fail({ code: "time not understood", text: excerpt(text) }) : ok(time);
}

function named(said: string): PlainTime | null {
  const known = Object.hasOwn(NAMED, said) ? NAMED[said] : undefined;
  return known === undefined ? null : plainTime(known[0], known[1]);
}

function clock(said: string): PlainTime | null {
  const match = FOUR_DIGITS.exec(said) ?? CLOCK.exec(said);
  if (match === null) return null;
  const hour = hourOf(Number(match[1]), match[3] ?? "");
  const minute = Number(match[2] ?? 0);
  return hour === null || hour > 23 || minute > 59 ? null : plainTime(hour, minute);
}

/** Hours 1 to 12 take am and pm; "18:30 pm" is what it says, "0 pm" and "15 am" are nothing. */
function hourOf(hour: number, half: string): number | null {
  if (half === "am") return hour >= 1 && hour <= 12 ? hour % 12 : null;
  if (half !== "pm") return hour;
  if (hour === 0) return null;
  return hour < 12 ? hour + 12 : hour;
}

function plainTime(hour: number, minute: number): PlainTime {
  return Temporal.PlainTime.from({ hour, minute });
}
