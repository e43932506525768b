import { Temporal as Second } from "@js-temporal/polyfill";
import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { mealSlots } from "../../shared/allocation/slots.ts";
import { slotRuleId } from "../../shared/ids.ts";
import { isQuiet, outsideQuiet } from "../../shared/reminder/quiet.ts";
import { atWallClock, dateIn } from "../../shared/time.ts";
import { readUntil } from "../../shared/words/read-until.ts";
import { choice, date, instant, time } from "../kit/stock.ts";

/**
 * Clock changes as the IANA Time Zone Database has them (files australasia, southamerica, northamerica,
 * asia, europe; as Node carries it), and what a calendar does with them: RFC 5545 (IETF, Internet
 * Calendaring and Scheduling, 2009) section 3.3.5. Expected instants worked out by hand from the offsets
 * named beside them.
 */
const CASES = [
  // Samoa, Rule and Zone Pacific/Apia: -10 (summer) until the end of 29 December 2011, +14 from 31 December.
  [
    "the last moment before Samoa's skipped day",
    "Pacific/Apia",
    "2011-12-29",
    "23:59",
    "2011-12-30T09:59:00Z",
  ],
  [
    "a time on the skipped day: later by the gap of 24 hours",
    "Pacific/Apia",
    "2011-12-30",
    "08:00",
    "2011-12-30T18:00:00Z",
  ],
  ["the first moment after it", "Pacific/Apia", "2011-12-31", "00:00", "2011-12-30T10:00:00Z"],
  // Kwajalein skipped 21 August 1993: -12 to +12.
  [
    "a time on Kwajalein's skipped day",
    "Pacific/Kwajalein",
    "1993-08-21",
    "08:00",
    "1993-08-21T20:00:00Z",
  ],
  // Lord Howe: +10:30, summer +11. First Sunday of October 02:00, first Sunday of April 02:00.
  [
    "Lord Howe's gap of half an hour, its first minute",
    "Australia/Lord_Howe",
    "2026-10-04",
    "02:00",
    "2026-10-03T15:30:00Z",
  ],
  [
    "Lord Howe's gap, just after it",
    "Australia/Lord_Howe",
    "2026-10-04",
    "02:30",
    "2026-10-03T15:30:00Z",
  ],
  [
    "Lord Howe's repeated half hour: the first",
    "Australia/Lord_Howe",
    "2026-04-05",
    "01:30",
    "2026-04-04T14:30:00Z",
  ],
  // Southern hemisphere: summer ends in April and begins in September or October.
  [
    "Sydney, spring gap in October",
    "Australia/Sydney",
    "2026-10-04",
    "02:30",
    "2026-10-03T16:30:00Z",
  ],
  [
    "Sydney, repeated hour in April",
    "Australia/Sydney",
    "2026-04-05",
    "02:30",
    "2026-04-04T15:30:00Z",
  ],
  [
    "Auckland, spring gap in September",
    "Pacific/Auckland",
    "2026-09-27",
    "02:15",
    "2026-09-26T14:15:00Z",
  ],
  [
    "Auckland, repeated hour in April",
    "Pacific/Auckland",
    "2026-04-05",
    "02:45",
    "2026-04-04T13:45:00Z",
  ],
  // Chatham: +12:45, summer +13:45, at 02:45.
  [
    "Chatham, gap at a quarter to three",
    "Pacific/Chatham",
    "2026-09-27",
    "03:00",
    "2026-09-26T14:15:00Z",
  ],
  // A negative offset at midnight: Santiago -04, summer -03, changes at 24:00 of a Saturday.
  [
    "Santiago, the hour from midnight that is left out",
    "America/Santiago",
    "2026-09-06",
    "00:30",
    "2026-09-06T04:30:00Z",
  ],
  [
    "Santiago, the last hour of the day that occurs twice",
    "America/Santiago",
    "2026-04-04",
    "23:30",
    "2026-04-05T02:30:00Z",
  ],
  // St John's -03:30, summer -02:30: half past the hour in UTC.
  ["St John's, spring gap", "America/St_Johns", "2026-03-08", "02:30", "2026-03-08T06:00:00Z"],
] as const;

describe("a wall clock across the world's clock changes", () => {
  it.each(CASES)("%s", (_name, zone, day, hour, expected) => {
    expect(atWallClock(date(day), time(hour), zone).toString()).toBe(expected);
    const other = Second.PlainDateTime.from(`${day}T${hour}`).toZonedDateTime(zone);
    expect(other.toInstant().toString()).toBe(expected);
  });
});

const lunch = {
  id: slotRuleId("m"),
  name: "supper",
  weekdays: [1, 2, 3, 4, 5, 6, 7],
  time: time("00:30"),
  portions: 1,
};

describe("meals and days across them", () => {
  it("a meal in an hour that occurs twice is one meal, at the first", () => {
    const nightly = { ...lunch, time: time("23:30") };
    const slots = mealSlots([nightly], instant("2026-04-04T12:00:00Z"), "America/Santiago", 1);
    expect(slots.map(({ at }) => at.toString())).toEqual([
      "2026-04-05T02:30:00Z",
      "2026-04-06T03:30:00Z",
    ]);
  });

  it("a meal in an hour that is left out is one meal, later by the gap", () => {
    const slots = mealSlots([lunch], instant("2026-09-05T12:00:00Z"), "America/Santiago", 2);
    expect(slots.map(({ at }) => at.toString())).toEqual([
      "2026-09-06T04:30:00Z",
      "2026-09-07T03:30:00Z",
    ]);
  });

  it("the date before midnight is the member's own where the offset is negative", () => {
    // 03:30 in UTC is half past eleven of the evening before in Santiago's summer.
    expect(dateIn(instant("2026-12-01T02:30:00Z"), "America/Santiago").toString()).toBe(
      "2026-11-30",
    );
    expect(dateIn(instant("2026-12-01T03:00:00Z"), "America/Santiago").toString()).toBe(
      "2026-12-01",
    );
  });

  it("a day that begins at one in the morning is awaited until its first moment", () => {
    const until = readUntil("Sun", instant("2026-09-04T12:00:00Z"), "America/Santiago");
    expect(until.ok ? until.value.toString() : until.problem).toBe("2026-09-06T04:00:00Z");
  });
});

describe("quiet hours against a second implementation of Temporal (@js-temporal/polyfill)", () => {
  const zones = [
    "Australia/Lord_Howe",
    "Pacific/Apia",
    "Pacific/Chatham",
    "America/Santiago",
    "America/Havana",
    "Africa/Cairo",
    "America/St_Johns",
    "Europe/Lisbon",
  ];
  const clock = fc
    .integer({ min: 0, max: 1439 })
    .map((minute) => Temporal.PlainTime.from("00:00").add({ minutes: minute }));
  const at = fc
    .integer({ min: Date.UTC(2025, 0, 1) / 60_000, max: Date.UTC(2028, 0, 1) / 60_000 })
    .map((minute) => Temporal.Instant.fromEpochMilliseconds(minute * 60_000));

  it("says the same of any minute", () => {
    fc.assert(
      fc.property(fc.constantFrom(...zones), at, clock, clock, (zone, now, from, until) => {
        const quiet = choice({ zone, quietFrom: from, quietUntil: until });
        const shown = Second.Instant.from(now.toString()).toZonedDateTimeISO(zone).toPlainTime();
        const minuteOf = (t: { hour: number; minute: number }): number => t.hour * 60 + t.minute;
        // Counted on the dial from the beginning on, so that midnight is no special case.
        const dial = (t: { hour: number; minute: number }): number =>
          (minuteOf(t) - minuteOf(from) + 1440) % 1440;
        expect(isQuiet(now, quiet)).toBe(dial(shown) < dial(until));
      }),
      { numRuns: 1500 },
    );
  });

  it("ends within a day and a gap, later than now, and never before its time of day", () => {
    fc.assert(
      fc.property(fc.constantFrom(...zones), at, (zone, now) => {
        const quiet = choice({ zone });
        const later = outsideQuiet(now, quiet, "later");
        const wait = now.until(later).total("hours");
        if (!isQuiet(now, quiet)) expect(wait).toBe(0);
        else expect(wait > 0 && wait <= 10).toBe(true);
        expect(isQuiet(later, quiet)).toBe(false);
        const earlier = outsideQuiet(now, quiet, "earlier");
        expect(earlier.until(now).total("hours")).toBeGreaterThanOrEqual(0);
        expect(isQuiet(earlier, quiet)).toBe(false);
      }),
      { numRuns: 1500 },
    );
  });
});
