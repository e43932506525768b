import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Reply } from "../../../commands/kit/reply.ts";
import { groupId } from "../../../shared/ids.ts";
import { buttonOf, MEMBER, OTHER, type Person, wordsOf } from "../../kit/bot.ts";
import { type Kitchen, openKitchen } from "../../kit/kitchen.ts";

let test: Kitchen["test"];
let log: Kitchen["log"];
beforeEach(async () => {
  ({ test, log } = await openKitchen());
});
afterEach(() => test.close());

const plan = (raw: Record<string, string>, kind = "skip", who: Person = MEMBER): Promise<Reply> =>
  test.ask(who, `plan ${kind}`, raw);
const show = async (who: Person = MEMBER): Promise<string> =>
  wordsOf(await test.ask(who, "plan show"));

/** The row of a meal in the plan. */
function rowOf(reply: Reply, label: string): string {
  const found = reply.parts
    .flatMap((part) => (part.kind === "rows" ? part.rows : []))
    .find((row) => row.label.startsWith(label));
  return `${found?.figure ?? "no row"} | ${found?.note ?? ""}`;
}

async function said(who: Person) {
  const { members, meals } = test.stores;
  const member = await members.open(groupId(who.group), who.userId, who.name);
  return (await meals.wishes(member.id)).exceptions.map(
    (one) => `${one.kind} ${one.date.toString()}`,
  );
}

async function coming(): Promise<readonly string[]> {
  const { members, reminders } = test.stores;
  const member = await members.open(groupId(MEMBER.group), MEMBER.userId, MEMBER.name);
  return (await reminders.coming(member.id, 50)).map(
    ({ kind, about, dueAt }) => `${kind} ${about.portions} ${dueAt.toString()}`,
  );
}

describe("the plan of the week", () => {
  it("says of each meal what it takes, from where, and why", async () => {
    await log();
    const reply = await test.ask(MEMBER, "plan show");
    expect(reply.heading).toBe(
      "Next: Barley and lamb pot, Mon 12 Oct, 12:30 lunch. 5 of 5 meals in seven days are covered.",
    );
    expect(rowOf(reply, "Mon 12 Oct")).toBe(
      "Barley and lamb pot | from the fridge; first to expire",
    );
    expect(rowOf(reply, "Thu 15 Oct")).toBe(
      "Barley and lamb pot | freeze now, thaw Tue 13 Oct, 19:00; no earlier meal takes it",
    );
    expect(wordsOf(reply)).toContain("Freeze now: 5 portions of Barley and lamb pot.");
  });
  it("says what is to be done where there are no meals, and where there is no food", async () => {
    expect((await test.ask(OTHER, "plan show")).heading).toMatch(/No meals are set/u);
    expect(await show(OTHER)).toContain("/meals days:");
    expect((await test.ask(MEMBER, "plan show")).heading).toMatch(/Nothing in stock/u);
    expect(await show()).toContain("Nothing in stock for 5 meals from Mon 12 Oct, 12:30 lunch on.");
  });
});

describe("skipping and eating out", () => {
  it("gives the portion to another meal and says what is left over", async () => {
    await log();
    const reply = await plan({ day: "Tue" });
    expect(reply.heading).toBe("Skipped: Tue 13 Oct, 12:30 lunch.");
    expect(rowOf(reply, "Tue 13 Oct")).toBe("skipped by you | ");
    expect(wordsOf(reply)).toContain("Freeze now: 6 portions of Barley and lamb pot.");
  });
  it("leaves out every meal of a span of days, and plans them again by one press", async () => {
    await log();
    const reply = await plan({ day: "Mon", until: "Wed" }, "out");
    expect(reply.heading).toBe("Eating out: 3 meals, Mon 12 Oct to Wed 14 Oct.");
    expect(await said(MEMBER)).toEqual(["out 2026-10-12", "out 2026-10-13", "out 2026-10-14"]);
    await test.press(MEMBER, buttonOf(reply, "Plan them again"));
    expect(await said(MEMBER)).toEqual([]);
  });
  it("names a meal of a day that has several, and the next week's where today's is over", async () => {
    await test.ask(MEMBER, "meals", { days: "every day", time: "18:00", name: "supper" });
    const reply = await plan({ day: "Sun", meal: "supper" });
    expect(reply.heading).toBe("Skipped: Sun 18 Oct, 18:00 supper.");
    await plan({ day: "Tue", meal: "supp" });
    expect(await said(MEMBER)).toEqual(["skip 2026-10-13", "skip 2026-10-18"]);
  });
  it("takes the thaw reminder of a skipped meal away at once, and brings it back", async () => {
    const logged = await log();
    await test.press(MEMBER, buttonOf(logged, "Froze 5"));
    const before = await coming();
    expect(before).toContain("thaw tonight 1 2026-10-13T18:00:00Z");
    await plan({ day: "Thu", until: "Fri" });
    expect((await coming()).join()).not.toContain("2026-10-13T18:00:00Z");
    await plan({ day: "Thu", until: "Fri" }, "clear");
    expect(await coming()).toEqual(before);
  });
  it.each([
    [{ day: "Sat" }, /no meal from stock to come on Sat 17 Oct/u],
    [{ day: "yesterday" }, /is over/u],
    [{ day: "whenever" }, /not a day to come/u],
    [{ day: "Mon", meal: "brunch" }, /no meal called “brunch”/u],
    [{ day: "Mon", until: "2027-03-01" }, /more than 62 days/u],
    [{ day: "" }, /Fill in day/u],
    [{ day: "<@1> **x**".repeat(3) }, /not a day to come/u],
  ])("refuses %j in a sentence and changes nothing", async (raw, sentence) => {
    expect(wordsOf(await plan(raw))).toMatch(sentence);
    expect(await said(MEMBER)).toEqual([]);
  });
  it("is forgotten by itself once the meal is over", async () => {
    await log();
    await plan({ day: "Mon" });
    test.clock.advanceTo(test.clock.now().add({ hours: 24 * 7 }));
    expect(await show()).toContain("Mon 19 Oct, 12:30 lunch");
    expect(await show()).not.toContain("skipped");
  });
});

describe("a pin", () => {
  it("keeps a dish for a meal after its date in the fridge: freeze now, thaw in time, pinned by you", async () => {
    await log();
    const reply = await plan({ what: "barley", day: "Fri" }, "pin");
    expect(reply.heading).toBe("Pinned: Barley and lamb pot, Fri 16 Oct, 12:30 lunch.");
    expect(rowOf(reply, "Fri 16 Oct")).toBe(
      "Barley and lamb pot | freeze now, thaw Wed 14 Oct, 19:00; pinned by you",
    );
    await test.press(MEMBER, buttonOf(reply, "Undo the pin"));
    expect(await said(MEMBER)).toEqual([]);
  });
  it("says what it costs when something else is left without a meal", async () => {
    await log({ portions: "1" });
    await test.ask(MEMBER, "batch log", {
      recipe: "Cucumber bowl",
      portions: "2",
      cooked: "18:30",
    });
    const reply = await plan({ what: "barley", day: "Tue" }, "pin");
    expect(wordsOf(reply)).toContain("leaves 1 portion of something else without a meal");
    expect(wordsOf(reply)).toContain("Spare: 1 portion of Cucumber bowl.");
  });
  it("is refused past the date of what freezes badly, with the meals that would do", async () => {
    await test.ask(MEMBER, "batch log", {
      recipe: "Cucumber bowl",
      portions: "2",
      cooked: "18:30",
    });
    const words = wordsOf(await plan({ what: "cucumber", day: "Thu" }, "pin"));
    expect(words).toContain("must be eaten by Tue 13 Oct and freezes badly");
    expect(words).toContain(
      "It can be pinned to Mon 12 Oct, 12:30 lunch; or Tue 13 Oct, 12:30 lunch.",
    );
    expect(await said(MEMBER)).toEqual([]);
  });
  it("is refused where the freezer's portion cannot thaw in time", async () => {
    const logged = await log({ portions: "2", freeze: "2" });
    expect(logged.heading).toContain("Logged");
    const words = wordsOf(await plan({ what: "barley", day: "Mon" }, "pin"));
    expect(words).toContain(
      "needs 24 hours in the fridge to thaw: Mon 12 Oct, 12:30 lunch is too soon",
    );
    expect(words).toContain("It can be pinned to Tue 13 Oct");
  });
  it("is refused when other meals have all of it", async () => {
    await log({ portions: "1" });
    await plan({ what: "barley", day: "Mon" }, "pin");
    expect(wordsOf(await plan({ what: "barley", day: "Tue" }, "pin"))).toContain(
      "All portions of Barley and lamb pot are pinned to other meals.",
    );
    expect(await said(MEMBER)).toEqual(["pin 2026-10-12"]);
  });
  it("falls away by itself when the dish is eaten, and the meal is planned anew", async () => {
    await log({ portions: "1" });
    await plan({ what: "barley", day: "Wed" }, "pin");
    await test.press(MEMBER, buttonOf(await test.ask(MEMBER, "stock"), "Ate 1"));
    await log({ portions: "2" }, "later");
    expect(rowOf(await test.ask(MEMBER, "plan show"), "Mon 12 Oct")).toContain("first to expire");
    expect(await show()).not.toContain("pinned");
  });
  it("follows the dish into the freezer", async () => {
    const logged = await log();
    await plan({ what: "barley", day: "Thu" }, "pin");
    await test.press(MEMBER, buttonOf(logged, "Froze 5"));
    expect(rowOf(await test.ask(MEMBER, "plan show"), "Thu 15 Oct")).toBe(
      "Barley and lamb pot | thaw Tue 13 Oct, 19:00; pinned by you",
    );
  });
  it.each([
    [{ what: "pizza", day: "Mon" }, /“pizza” is not in your stock/u],
    [{ what: "barley", day: "2026-12-14" }, /four weeks ahead/u],
  ])("refuses %j in a sentence", async (raw, sentence) => {
    await log();
    expect(wordsOf(await plan(raw, "pin"))).toMatch(sentence);
    expect(await said(MEMBER)).toEqual([]);
  });
});
