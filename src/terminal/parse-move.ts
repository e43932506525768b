import { Temporal } from "temporal-polyfill";
import { atWallClock, type Instant, type PlainDate, type PlainTime } from "../../shared/time.ts";

/** Where `now` shall move the clock, before it is known what time it is. */
export type Move =
  | { readonly kind: "by"; readonly days: number; readonly hours: number; readonly minutes: number }
  | { readonly kind: "date"; readonly date: PlainDate; readonly time: PlainTime }
  | { readonly kind: "days ahead"; readonly days: number; readonly time: PlainTime }
  /** 1 Monday … 7 Sunday. */
  | { readonly kind: "weekday"; readonly weekday: number; readonly time: PlainTime }
  | { readonly kind: "time"; readonly time: PlainTime };

const WEEKDAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
const FULL = /^(mon|tues|wednes|thurs|fri|satur|sun)day$/u;

/** Reads `+2h`, `+1d12h`, `2026-10-24 18:30`, `tomorrow 08:00`, `sun 18:30`, `18:30`. Null when it is none. */
export function parseMove(text: string): Move | null {
  const typed = text.trim().toLowerCase();
  const by = /^\+(?=\d)(?:(\d{1,3})d)?(?:(\d{1,4})h)?(?:(\d{1,5})m(?:in)?)?$/u.exec(typed);
  if (by !== null) {
    return {
      kind: "by",
      days: Number(by[1] ?? 0),
      hours: Number(by[2] ?? 0),
      minutes: Number(by[3] ?? 0),
    };
  }
  const match = /^(?:(\S+)(?:\s+(?:at\s+)?|(?<=\d)t(?=\d)))?(\d{1,2}:\d{2})$/u.exec(typed);
  const time = match === null ? null : timeOf(match[2] ?? "");
  return match === null || time === null ? null : onDay(match[1] ?? "", time);
}

function onDay(day: string, time: PlainTime): Move | null {
  if (day === "") return { kind: "time", time };
  if (day === "today") return { kind: "days ahead", days: 0, time };
  if (day === "tomorrow") return { kind: "days ahead", days: 1, time };
  const weekday = WEEKDAYS.indexOf(FULL.test(day) ? day.slice(0, 3) : day) + 1;
  if (weekday > 0) return { kind: "weekday", weekday, time };
  const date = dateOf(day);
  return date === null ? null : { kind: "date", date, time };
}

function timeOf(text: string): PlainTime | null {
  const [hour, minute] = text.split(":").map(Number);
  if (hour === undefined || minute === undefined || hour > 23 || minute > 59) return null;
  return Temporal.PlainTime.from({ hour, minute });
}

function dateOf(text: string): PlainDate | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/u.exec(text);
  if (match === null) return null;
  const [year, month, day] = match.slice(1).map(Number);
  try {
    return Temporal.PlainDate.from(
      { year: year ?? 0, month: month ?? 0, day: day ?? 0 },
      { overflow: "reject" },
    );
  } catch {
    // The 31st of June and the like.
    return null;
  }
}

/** The instant meant, by the wall clock of `zone`. A bare time or weekday is the next such one. */
export function resolveMove(move: Move, now: Instant, zone: string): Instant {
  const here = now.toZonedDateTimeISO(zone);
  const today = here.toPlainDate();
  switch (move.kind) {
    case "by":
      return here.add({ days: move.days, hours: move.hours, minutes: move.minutes }).toInstant();
    case "date":
      return atWallClock(move.date, move.time, zone);
    case "days ahead":
      return atWallClock(today.add({ days: move.days }), move.time, zone);
    case "weekday": {
      const ahead = (move.weekday - here.dayOfWeek + 7) % 7;
      return nextOf(atWallClock(today.add({ days: ahead }), move.time, zone), now, () =>
        atWallClock(today.add({ days: ahead + 7 }), move.time, zone),
      );
    }
    case "time":
      return nextOf(atWallClock(today, move.time, zone), now, () =>
        atWallClock(today.add({ days: 1 }), move.time, zone),
      );
  }
}

function nextOf(first: Instant, now: Instant, later: () => Instant): Instant {
  return Temporal.Instant.compare(first, now) > 0 ? first : later();
}
