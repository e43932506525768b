import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { COACH, MEMBER, openTestBot, POT_TEXT, type TestBot, wordsOf } from "../../kit/bot.ts";

let test: TestBot;
beforeEach(async () => {
  test = await openTestBot("2026-10-11T18:00:00Z");
  await test.ask(COACH, "group setup", { zone: "Europe/Lisbon" });
  await test.publish(COACH, POT_TEXT);
});
afterEach(() => test.close());

describe("/reminders", () => {
  it("lists what is coming in the member's own zone, and moves with it", async () => {
    await test.ask(MEMBER, "batch log", { recipe: "Barley and lamb pot", cooked: "18:30" });
    expect(wordsOf(await test.ask(MEMBER, "reminders"))).toContain(
      "Wed 14 Oct, 08:00 Last good day for 6 portions",
    );
    await test.ask(MEMBER, "reminders", { zone: "America/Chicago", morning: "7am" });
    expect(wordsOf(await test.ask(MEMBER, "reminders"))).toContain(
      "Wed 14 Oct, 07:00 Last good day for 6 portions",
    );
  });

  it.each([
    [{ zone: "Lisbon time" }, /zone/iu],
    [{ morning: "25:00" }, /25:00/u],
    [{ quiet: "late" }, /22:00-07:00/u],
    [{ away: "someday" }, /until Sun, 3 days/u],
    [{ morning: "20:00", evening: "19:00" }, /before the evening/u],
    [{ where: "pigeon" }, /where/u],
  ])("refuses %o with a sentence and changes nothing", async (raw, sentence) => {
    const before = wordsOf(await test.ask(MEMBER, "reminders"));
    expect((await test.ask(MEMBER, "reminders", raw as Record<string, string>)).heading).toMatch(
      sentence,
    );
    expect(wordsOf(await test.ask(MEMBER, "reminders"))).toBe(before);
  });

  it("being away is shown and can be ended", async () => {
    expect(wordsOf(await test.ask(MEMBER, "reminders", { away: "3 days" }))).toContain(
      "Away until Wed 14 Oct",
    );
    expect(wordsOf(await test.ask(MEMBER, "reminders", { away: "off" }))).not.toContain("Away");
  });
});

describe("/meals", () => {
  it("adds, replaces by name, lists and removes", async () => {
    expect((await test.ask(MEMBER, "meals", { days: "weekdays", time: "12:30" })).heading).toBe(
      "Noted: lunch, Mon-Fri 12:30, 1 portion.",
    );
    await test.ask(MEMBER, "meals", {
      days: "Sat Sun",
      time: "1 pm",
      name: "Lunch",
      portions: "2",
    });
    expect(wordsOf(await test.ask(MEMBER, "meals"))).toContain("4 portions a week from stock.");
    expect((await test.ask(MEMBER, "meals", { remove: "lunch" })).heading).toBe(
      "Taken off: lunch.",
    );
    expect((await test.ask(MEMBER, "meals")).heading).toBe("No meals are eaten from stock yet.");
  });
  it.each([
    [{ days: "Mon-Fri" }, /days and its time/u],
    [{ days: "Blursday", time: "12:30" }, /Blursday/u],
    [{ remove: "brunch" }, /no meal called/u],
  ])("refuses %o with a sentence", async (raw, sentence) => {
    expect((await test.ask(MEMBER, "meals", raw as Record<string, string>)).heading).toMatch(
      sentence,
    );
  });
});
