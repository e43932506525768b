import { describe, expect, it } from "vitest";
import { reminderId } from "../../../shared/ids.ts";
import { againKey, factKey, helpsAt, isAgain, laterAt } from "../../../shared/reminder/again.ts";
import { choice, instant, time } from "../../kit/stock.ts";

describe("the key of a reminder put off", () => {
  it("names the message it was told in and the fact, however often it is put off", () => {
    const key = "thaw/rule/2026-10-15/lot1";
    const once = againKey({ id: reminderId("r1"), key });
    const twice = againKey({ id: reminderId("r2"), key: once });
    expect(new Set([key, once, twice]).size).toBe(3);
    expect([key, once, twice].map(factKey)).toEqual([key, key, key]);
    expect([key, once, twice].map(isAgain)).toEqual([false, true, true]);
  });
});

describe("when a reminder put off comes again", () => {
  it("is an hour later by the clock that runs on, also over a clock change", () => {
    // Lisbon, 25 October 2026: the hour from 01:00 to 02:00 occurs twice (IANA).
    const before = instant("2026-10-25T00:30:00Z");
    expect(laterAt("hour", choice(), before)?.toString()).toBe("2026-10-25T01:30:00Z");
  });

  it("is tonight at the member's evening hour, before quiet hours, and never a past one", () => {
    const noon = instant("2026-10-13T11:00:00Z");
    expect(laterAt("tonight", choice(), noon)?.toString()).toBe("2026-10-13T18:00:00Z");
    const late = choice({ evening: time("23:00") });
    expect(laterAt("tonight", late, noon)?.toString()).toBe("2026-10-13T20:59:00Z");
    expect(laterAt("tonight", choice(), instant("2026-10-13T18:00:00Z"))).toBeNull();
  });

  it("is refused from the instant on at which it no longer helps", () => {
    const row = { kind: "thaw tonight", helpsUntil: instant("2026-10-14T11:30:00Z") } as const;
    const now = instant("2026-10-13T18:00:00Z");
    expect(helpsAt(row, instant("2026-10-14T11:29:59Z"), choice(), now)).toBe(true);
    expect(helpsAt(row, instant("2026-10-14T11:30:00Z"), choice(), now)).toBe(false);
  });

  it("is within the same day for a discard, in the member's zone", () => {
    const row = { kind: "discard today", helpsUntil: instant("2026-10-29T00:00:00Z") } as const;
    const now = instant("2026-10-13T21:30:00Z");
    // 22:30 in Lisbon: an hour later is the same day by UTC, and 23:30 by the member's clock.
    expect(helpsAt(row, instant("2026-10-13T22:30:00Z"), choice(), now)).toBe(true);
    expect(helpsAt(row, instant("2026-10-13T23:00:00Z"), choice(), now)).toBe(false);
  });
});
