import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { COACH, MEMBER, OTHER, type Person, wordsOf } from "../../kit/bot.ts";
import { date } from "../../kit/stock.ts";
import { openTargetBot, type TargetBot } from "./kit.ts";

let test: TargetBot;
beforeEach(async () => {
  test = await openTargetBot();
});
afterEach(() => test.close());

describe("the day in a member's own zone", () => {
  it("a target from today begins with the member's day, not with the server's", async () => {
    await test.ask(MEMBER, "reminders", { zone: "Pacific/Auckland" });
    await test.ask(OTHER, "reminders", { zone: "America/Chicago" });
    // 18:00 UTC on the 25th is the 26th in Auckland and noon of the 25th in Chicago.
    await test.set(MEMBER, { energy: "2100" });
    await test.set(OTHER, { energy: "2100" });
    const from = async (who: Person) =>
      (await test.decisions(who)).map((one) => one.from.toString());
    expect([await from(MEMBER), await from(OTHER)]).toEqual([["2026-11-26"], ["2026-11-25"]]);
  });

  it.each([
    ["2026-11-25T23:59:59Z", "Today, Wed 25 Nov: 2,100 kcal"],
    ["2026-11-26T00:00:00Z", "Today, Thu 26 Nov: 1,900 kcal"],
  ])("at %s a target from tomorrow is shown as %s", async (now, expected) => {
    await test.set(MEMBER, { energy: "2100" });
    await test.set(MEMBER, { energy: "1900", from: "tomorrow" });
    test.moveTo(now);
    expect(await test.show(MEMBER)).toContain(expected);
  });

  it("the coach's today is the member's", async () => {
    await test.ask(MEMBER, "reminders", { zone: "Pacific/Auckland" });
    await test.profile(MEMBER, { coachMaySetTargets: true });
    await test.set(COACH, { energy: "2100", member: "Ines" });
    expect((await test.decisions(MEMBER))[0]?.from).toEqual(date("2026-11-26"));
  });
});

describe("/targets show", () => {
  it("gives today first, then the days that differ, then what comes and what was", async () => {
    await test.set(MEMBER, { energy: "2000" });
    test.moveTo("2026-11-27T10:00:00Z");
    await test.set(MEMBER, { energy: "2100" });
    await test.set(MEMBER, { energy: "2400", days: "Sat Sun" });
    await test.set(MEMBER, { energy: "1900", from: "Mon", days: "weekdays" });
    const words = await test.show(MEMBER);
    expect(words.split("\n")).toEqual([
      "Today, Fri 27 Nov: 2,100 kcal",
      "Since today, set by you.",
      "By day",
      "Mon-Fri 2,100 kcal since today, set by you",
      "Sat, Sun 2,400 kcal since today, set by you",
      "Later",
      "Mon-Fri from Mon 30 Nov 1,900 kcal set by you",
      "Decided before",
      "every day from Wed 25 Nov 2,000 kcal set by you",
    ]);
  });

  it("tells a newcomer how to begin", async () => {
    expect(await test.show(OTHER)).toMatch(/no target\n.*\/targets set/u);
  });

  it("names the year of a date that is not in this one", async () => {
    await test.set(MEMBER, { energy: "2000" });
    test.moveTo("2027-01-04T10:00:00Z");
    expect(await test.show(MEMBER)).toContain("Since Wed 25 Nov 2026, set by you.");
  });
});

describe("/targets clear", () => {
  it("ends the named days, those planned with them, and leaves the others", async () => {
    await test.set(MEMBER, { energy: "2100" });
    await test.set(MEMBER, { energy: "1900", from: "1 Dec" });
    const sunday = await test.ask(MEMBER, "targets clear", { days: "Sun" });
    expect(sunday.heading).toBe("Cleared: no targets, Sun from today on.");
    expect(wordsOf(sunday)).toContain("Mon-Sat from Tue 1 Dec 1,900 kcal");
    await test.ask(MEMBER, "targets clear");
    expect(await test.show(MEMBER)).not.toContain("Later");
    test.moveTo("2026-12-02T10:00:00Z");
    expect(await test.show(MEMBER)).toContain("Today, Wed 2 Dec: no target");
  });

  it("says when there is nothing to clear, and writes nothing", async () => {
    expect((await test.ask(MEMBER, "targets clear")).heading).toMatch(/nothing to clear/u);
    expect(await test.decisions(MEMBER)).toEqual([]);
  });
});
