import { Temporal as Second } from "@js-temporal/polyfill";
import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { atWallClock, dateIn } from "../../shared/time.ts";

/**
 * RFC 5545 (IETF, Internet Calendaring and Scheduling, 2009) section 3.3.5: a local time that does not
 * occur uses the offset before the gap; one that occurs twice is the first. Offsets: IANA time zone
 * data as Node carries it. Expected instants worked out by hand from those offsets.
 */
const CASES = [
  ["New York, spring gap", "America/New_York", "2026-03-08", "02:30", "2026-03-08T07:30:00Z"],
  ["New York, repeated hour", "America/New_York", "2026-11-01", "01:30", "2026-11-01T05:30:00Z"],
  ["Berlin, spring gap", "Europe/Berlin", "2026-03-29", "02:30", "2026-03-29T01:30:00Z"],
  ["Berlin, repeated hour", "Europe/Berlin", "2026-10-25", "02:30", "2026-10-25T00:30:00Z"],
  [
    "Lord Howe, half-hour gap",
    "Australia/Lord_Howe",
    "2026-10-04",
    "02:15",
    "2026-10-03T15:45:00Z",
  ],
  [
    "Lord Howe, repeated half hour",
    "Australia/Lord_Howe",
    "2026-04-05",
    "01:45",
    "2026-04-04T14:45:00Z",
  ],
  ["Havana, gap at midnight", "America/Havana", "2026-03-08", "00:30", "2026-03-08T05:30:00Z"],
  ["Cairo, gap at midnight", "Africa/Cairo", "2026-04-24", "00:00", "2026-04-23T22:00:00Z"],
] as const;

describe("a wall clock across a clock change", () => {
  it.each(CASES)("%s", (_name, zone, date, time, expected) => {
    const at = atWallClock(Temporal.PlainDate.from(date), Temporal.PlainTime.from(time), zone);
    expect(at.toString()).toBe(expected);
  });

  it("Samoa skipped 30 December 2011: a time on that day falls on the next", () => {
    const at = atWallClock(
      Temporal.PlainDate.from("2011-12-30"),
      Temporal.PlainTime.from("12:00"),
      "Pacific/Apia",
    );
    expect(dateIn(at, "Pacific/Apia").toString()).toBe("2011-12-31");
  });
});

describe("against a second implementation of Temporal (@js-temporal/polyfill)", () => {
  const zones = [
    "America/New_York",
    "Europe/Lisbon",
    "Australia/Lord_Howe",
    "America/Havana",
    "Africa/Cairo",
    "Asia/Kathmandu",
    "America/Santiago",
    "Pacific/Apia",
  ];
  it("gives the same instant for any date, time and zone", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.integer({ min: 0, max: 365 * 4 }),
        fc.integer({ min: 0, max: 24 * 60 - 1 }),
        (zone, day, minute) => {
          const date = Temporal.PlainDate.from("2025-01-01").add({ days: day });
          const time = Temporal.PlainTime.from("00:00").add({ minutes: minute });
          const other = Second.PlainDateTime.from(
            `${date.toString()}T${time.toString()}`,
          ).toZonedDateTime(zone);
          expect(atWallClock(date, time, zone).epochMilliseconds).toBe(other.epochMilliseconds);
        },
      ),
      { numRuns: 2000 },
    );
  });
});
