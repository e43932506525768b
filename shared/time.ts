import { Temporal } from "temporal-polyfill";

export type Instant = Temporal.Instant;
export type PlainDate = Temporal.PlainDate;
export type PlainTime = Temporal.PlainTime;

/**
 * The instant at which a wall clock in `zone` shows `date` and `time`. A time that a clock change
 * leaves out moves later by the gap; one that occurs twice is the first
 * (RFC 5545 section 3.3.5; Temporal "compatible").
 */
export function atWallClock(date: PlainDate, time: PlainTime, zone: string): Instant {
  return date
    .toPlainDateTime(time)
    .toZonedDateTime(zone, { disambiguation: "compatible" })
    .toInstant();
}

/** The calendar date a wall clock in `zone` shows at `instant`. */
export function dateIn(instant: Instant, zone: string): PlainDate {
  return instant.toZonedDateTimeISO(zone).toPlainDate();
}

/** The time of day a wall clock in `zone` shows at `instant`. */
export function timeIn(instant: Instant, zone: string): PlainTime {
  return instant.toZonedDateTimeISO(zone).toPlainTime();
}

/** Whole calendar days from `from` to `to`; negative when `to` is earlier. */
export function daysBetween(from: PlainDate, to: PlainDate): number {
  return from.until(to, { largestUnit: "days" }).days;
}

export function isBefore(a: Instant, b: Instant): boolean {
  return Temporal.Instant.compare(a, b) < 0;
}

export function isDateBefore(a: PlainDate, b: PlainDate): boolean {
  return Temporal.PlainDate.compare(a, b) < 0;
}
