import type { Instant, PlainDate, PlainTime } from "../time.ts";

// Written out rather than asked of Intl, whose English changes from one runtime to the next.
const WEEKDAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
const MONTHS = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split(" ");

/** An instant as a wall clock in `zone` shows it, short for a phone: "Wed 28 Oct, 18:30". */
export function writeWhen(instant: Instant, zone: string): string {
  const local = instant.toZonedDateTimeISO(zone);
  return `${writeDate(local.toPlainDate())}, ${writeTime(local.toPlainTime())}`;
}

/** A calendar date, short for a phone: "Wed 28 Oct". */
export function writeDate(date: PlainDate): string {
  return `${writeWeekday(date.dayOfWeek)} ${date.day} ${MONTHS[date.month - 1] ?? ""}`;
}

/** A time of day on the 24-hour clock: "18:30". */
export function writeTime(time: PlainTime): string {
  return `${String(time.hour).padStart(2, "0")}:${String(time.minute).padStart(2, "0")}`;
}

/** A weekday by its number, 1 for Monday to 7 for Sunday: "Wed". */
export function writeWeekday(weekday: number): string {
  return WEEKDAYS[weekday - 1] ?? "";
}
