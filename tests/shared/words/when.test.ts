import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, test } from "vitest";
import { readDuration } from "../../../shared/words/read-duration.ts";
import { readTimeOfDay } from "../../../shared/words/read-time-of-day.ts";
import { readUntil } from "../../../shared/words/read-until.ts";
import { readWeekdays } from "../../../shared/words/read-weekdays.ts";
import { readWhen } from "../../../shared/words/read-when.ts";
import { writeDate, writeTime, writeWhen } from "../../../shared/words/write-when.ts";

const BERLIN = "Europe/Berlin";
/** Wednesday 28 October 2026, 18:00 in Berlin. */
const NOW = Temporal.Instant.from("2026-10-28T17:00:00Z");

function inBerlin(local: string): string {
  return Temporal.PlainDateTime.from(local).toZonedDateTime(BERLIN).toInstant().toString();
}

describe("a moment that has been", () => {
  test.each([
    ["now", "2026-10-28T18:00"],
    ["17:30", "2026-10-28T17:30"],
    ["5:30 pm", "2026-10-28T17:30"],
    ["today 17:30", "2026-10-28T17:30"],
    ["yesterday 18:30", "2026-10-27T18:30"],
    ["yesterday at 6pm", "2026-10-27T18:00"],
    ["yesterday", "2026-10-27T18:00"],
    ["last night", "2026-10-27T18:00"],
    ["Sun", "2026-10-25T18:00"],
    ["Sun 17:00", "2026-10-25T17:00"],
    ["5pm Sunday", "2026-10-25T17:00"],
    ["last sunday", "2026-10-25T18:00"],
    ["Wed", "2026-10-28T18:00"],
    ["last Wednesday", "2026-10-21T18:00"],
    ["Wed 19:00", "2026-10-21T19:00"],
    ["2026-10-24 18:30", "2026-10-24T18:30"],
    ["2026-10-24T18:30", "2026-10-24T18:30"],
    ["24 Oct 18:30", "2026-10-24T18:30"],
    ["October 24th, 6:30pm", "2026-10-24T18:30"],
    ["Sat 24 Oct, 18:30", "2026-10-24T18:30"],
    ["2 hours ago", "2026-10-28T16:00"],
    ["20 min ago", "2026-10-28T17:40"],
    ["half an hour ago", "2026-10-28T17:30"],
    ["2 days ago", "2026-10-26T18:00"],
  ])("%s is understood", (text, local) => {
    const read = readWhen(text, NOW, BERLIN);
    expect(read.ok && read.value.toString()).toBe(inBerlin(local));
  });

  test("today without a time is now while 18:00 is still to come", () => {
    const morning = Temporal.Instant.from("2026-10-28T09:00:00Z");
    for (const text of ["today", "Wed", "28 Oct"]) {
      const read = readWhen(text, morning, BERLIN);
      expect(read.ok && read.value.equals(morning)).toBe(true);
    }
  });

  test("a bare time of late last evening, typed after midnight, was yesterday's", () => {
    const read = readWhen("23:45", Temporal.Instant.from("2026-10-27T23:30:00Z"), BERLIN);
    expect(read.ok && read.value.toString()).toBe(inBerlin("2026-10-27T23:45"));
  });

  test("a bare time that is soon stays in the future, for the caller to refuse", () => {
    const read = readWhen("18:30", NOW, BERLIN);
    expect(read.ok && Temporal.Instant.compare(read.value, NOW)).toBe(1);
  });

  test.each([
    ["", "when not understood"],
    ["soon", "when not understood"],
    ["tomorrow", "when not understood"],
    ["25:00", "when not understood"],
    ["31 Feb", "no such date"],
    ["2026-13-01", "no such date"],
    ["Mon 24 Oct", "weekday does not fit date"],
    ["999999999 days ago", "when not understood"],
  ])("%s is refused", (text, code) => {
    const read = readWhen(text, NOW, BERLIN);
    expect(read.ok ? null : read.problem.code).toBe(code);
  });

  test("31 December said on 1 January was yesterday", () => {
    const read = readWhen("31 Dec 20:00", Temporal.Instant.from("2027-01-01T10:00:00Z"), BERLIN);
    expect(read.ok && read.value.toString()).toBe(inBerlin("2026-12-31T20:00"));
  });

  test("an hour that occurs twice is the first, one that is left out moves later by the gap", () => {
    const twice = readWhen("Sun 02:30", NOW, BERLIN);
    expect(twice.ok && twice.value.toString()).toBe("2026-10-25T00:30:00Z");
    const spring = Temporal.Instant.from("2026-03-29T12:00:00Z");
    const leftOut = readWhen("today 02:30", spring, BERLIN);
    expect(leftOut.ok && leftOut.value.toString()).toBe("2026-03-29T01:30:00Z");
  });

  test("the day is the one the zone has, not the one in Greenwich", () => {
    const now = Temporal.Instant.from("2026-10-28T03:00:00Z");
    const read = readWhen("today 19:30", now, "America/New_York");
    expect(read.ok && read.value.toString()).toBe("2026-10-27T23:30:00Z");
  });

  test("no text makes it throw", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 120 }), (text) => {
        for (const read of [readWhen(text, NOW, BERLIN), readUntil(text, NOW, BERLIN)]) {
          expect(typeof read.ok).toBe("boolean");
        }
      }),
    );
  });

  test("what is written is read back to the minute, in any zone and across clock changes", () => {
    const zones = fc.constantFrom(
      BERLIN,
      "America/New_York",
      "Australia/Lord_Howe",
      "Asia/Kolkata",
      "UTC",
    );
    const minutesAgo = fc.integer({ min: 1, max: 150 * 24 * 60 });
    fc.assert(
      fc.property(zones, minutesAgo, (zone, minutes) => {
        const at = NOW.subtract({ minutes });
        const text = writeWhen(at, zone);
        const read = readWhen(text, NOW, zone);
        expect(read.ok).toBe(true);
        // Of an hour that occurs twice the text cannot tell which; the wall clock is the same.
        expect(read.ok && writeWhen(read.value, zone)).toBe(text);
      }),
    );
  });
});

describe("a moment to come", () => {
  test.each([
    ["tomorrow", "2026-10-29T00:00"],
    ["Fri", "2026-10-30T00:00"],
    ["until Friday", "2026-10-30T00:00"],
    ["Wed", "2026-11-04T00:00"],
    ["next week", "2026-11-02T00:00"],
    ["Fri 18:00", "2026-10-30T18:00"],
    ["2026-11-02", "2026-11-02T00:00"],
    ["2 Nov", "2026-11-02T00:00"],
    ["3 days", "2026-10-31T18:00"],
    ["for a week", "2026-11-04T18:00"],
    ["2h", "2026-10-28T20:00"],
    ["20:00", "2026-10-28T20:00"],
    ["08:00", "2026-10-29T08:00"],
  ])("%s is understood", (text, local) => {
    const read = readUntil(text, NOW, BERLIN);
    expect(read.ok && read.value.toString()).toBe(inBerlin(local));
  });

  test.each([
    ["yesterday", "not in the future"],
    ["2026-10-01", "not in the future"],
    ["0 days", "not in the future"],
    ["2031-01-01", "too far ahead"],
    ["99999 weeks", "too far ahead"],
    ["some day", "when not understood"],
  ])("%s is refused", (text, code) => {
    const read = readUntil(text, NOW, BERLIN);
    expect(read.ok ? null : read.problem.code).toBe(code);
  });

  test("days are calendar days: over the end of summer time three of them are 73 hours", () => {
    const now = Temporal.Instant.from("2026-10-23T08:00:00Z");
    const read = readUntil("3 days", now, BERLIN);
    expect(read.ok && now.until(read.value, { largestUnit: "hours" }).hours).toBe(73);
  });

  test("where a clock change leaves midnight out, the day begins later", () => {
    // Cairo, 24 April 2026: clocks go from 00:00 to 01:00.
    const read = readUntil(
      "2026-04-24",
      Temporal.Instant.from("2026-04-20T10:00:00Z"),
      "Africa/Cairo",
    );
    expect(read.ok && read.value.toString()).toBe("2026-04-23T22:00:00Z");
  });
});

describe("times, weekdays and lengths", () => {
  test.each([
    ["19:00", "19:00"],
    ["7pm", "19:00"],
    ["7.30 pm", "19:30"],
    ["7:05 p.m.", "19:05"],
    ["19", "19:00"],
    ["0630", "06:30"],
    ["12am", "00:00"],
    ["12 pm", "12:00"],
    ["noon", "12:00"],
  ])("%s is a time of day", (text, expected) => {
    const read = readTimeOfDay(text);
    expect(read.ok && writeTime(read.value)).toBe(expected);
  });

  test.each(["24:00", "7:60", "0pm", "15 am", "half seven", "", "-1"])(
    "%s is no time of day",
    (text) => {
      expect(readTimeOfDay(text).ok).toBe(false);
    },
  );

  test.each([
    ["Mon-Fri", [1, 2, 3, 4, 5]],
    ["weekdays", [1, 2, 3, 4, 5]],
    ["every day", [1, 2, 3, 4, 5, 6, 7]],
    ["Mon, Wed and Fri", [1, 3, 5]],
    ["Sat Sun", [6, 7]],
    ["sundays", [7]],
    ["Fri-Mon", [1, 5, 6, 7]],
    ["Mon to Thu, Sat", [1, 2, 3, 4, 6]],
    ["every day except Sun", [1, 2, 3, 4, 5, 6]],
  ])("%s are weekdays", (text, days) => {
    expect(readWeekdays(text)).toEqual({ ok: true, value: days });
  });

  test.each([
    ["", "no weekday"],
    ["Mon-Funday", "weekday not understood"],
    ["Mon-Tue-Wed", "weekday not understood"],
    ["constructor", "weekday not understood"],
    ["Mon except Mon", "no weekday"],
  ])("%s are no weekdays", (text, code) => {
    const read = readWeekdays(text);
    expect(read.ok ? null : read.problem.code).toBe(code);
  });

  test.each([
    ["3 days", { months: 0, days: 3, minutes: 0 }],
    ["a week", { months: 0, days: 7, minutes: 0 }],
    ["2h", { months: 0, days: 0, minutes: 120 }],
    ["1 h 30 min", { months: 0, days: 0, minutes: 90 }],
    ["1½ hours", { months: 0, days: 0, minutes: 90 }],
    ["two months", { months: 2, days: 0, minutes: 0 }],
  ])("%s is a length of time", (text, span) => {
    expect(readDuration(text)).toEqual({ ok: true, value: span });
  });

  test("half a day is refused: it is no number of calendar days", () => {
    expect(readDuration("half a day").ok).toBe(false);
  });

  test("dates are written short, in English, whatever the machine speaks", () => {
    expect(writeDate(Temporal.PlainDate.from("2026-10-28"))).toBe("Wed 28 Oct");
    expect(writeWhen(NOW, "Australia/Lord_Howe")).toBe("Thu 29 Oct, 04:00");
  });
});
