import { describe, expect, it } from "vitest";
import { helpsAt } from "../../../shared/reminder/again.ts";
import { isNotice, noticeTimes } from "../../../shared/reminder/notice.ts";
import { REMINDER_KINDS } from "../../../shared/reminder/types.ts";
import { choice, instant } from "../../kit/stock.ts";

const quiet = choice({ zone: "Europe/Lisbon" });

describe("when news of a recipe are told", () => {
  it("is at once, but in the quiet hours at their end", () => {
    const noon = instant("2026-10-12T12:00:00Z");
    expect(noticeTimes(quiet, noon).dueAt).toEqual(noon);
    // 23:30 in Lisbon, quiet until 07:00 (06:00 UTC).
    expect(noticeTimes(quiet, instant("2026-10-11T22:30:00Z")).dueAt).toEqual(
      instant("2026-10-12T06:00:00Z"),
    );
  });

  it("is for thirty days, and only once", () => {
    const now = instant("2026-10-12T12:00:00Z");
    const { helpsUntil } = noticeTimes(quiet, now);
    expect(helpsUntil).toEqual(instant("2026-11-11T12:00:00Z"));
    const soon = now.add({ hours: 1 });
    expect(helpsAt({ kind: "recipe changed", helpsUntil }, soon, quiet, now)).toBe(false);
    expect(helpsAt({ kind: "last good day", helpsUntil }, soon, quiet, now)).toBe(true);
  });

  it("goes for the two kinds about recipes alone", () => {
    expect(REMINDER_KINDS.filter((kind) => isNotice({ kind }))).toEqual([
      "recipe changed",
      "recipe withdrawn",
    ]);
  });
});
