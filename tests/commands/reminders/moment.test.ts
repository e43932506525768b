import { afterEach, describe, expect, it } from "vitest";
import { groupId } from "../../../shared/ids.ts";
import { buttonOf, MEMBER, wordsOf } from "../../kit/bot.ts";
import { openReminded, type Reminded } from "../../kit/reminded.ts";

let kitchen: Reminded;
afterEach(() => kitchen.test.close());

const EVENINGS = ["2026-10-12", "2026-10-13", "2026-10-14"] as const;

describe("while a member is away", () => {
  it("what could make somebody ill still comes, the rest is held", async () => {
    kitchen = await openReminded(false);
    const { test, told } = kitchen;
    await test.ask(MEMBER, "reminders", { away: "until Sun" });
    expect((await told("2026-10-12T07:00:00Z")).join()).toMatch(/Freeze 5 portions/u);
    expect(await told("2026-10-14T07:00:00Z")).toEqual([]);
    expect((await told("2026-10-15T07:00:00Z")).join()).toMatch(/Throw away 8 portions/u);
  });

  it("the last day of what was thawed comes too, since it cannot be frozen away", async () => {
    kitchen = await openReminded(true);
    const { test, at, told } = kitchen;
    await at("2026-10-12T18:00:00Z");
    const [thaw] = await at("2026-10-13T18:00:00Z");
    if (thaw === undefined) throw new Error("nothing to thaw");
    await test.press(MEMBER, buttonOf(thaw, "Set 1 to thaw"));
    await test.ask(MEMBER, "reminders", { away: "until Sun" });
    const mornings = [14, 15, 16].map((day) => `2026-10-${day}T07:00:00Z`);
    const words = [];
    for (const morning of mornings) words.push(...(await told(morning)));
    expect(words.filter((line) => /Last good day for 1 portion/u.test(line))).toHaveLength(1);
    expect(words.join()).not.toMatch(/Last good day for 3/u);
  });

  it("all is held for who says all, and told in one message when they are back", async () => {
    kitchen = await openReminded(true);
    const { test, told } = kitchen;
    const answer = await test.ask(MEMBER, "reminders", { away: "until Sun all" });
    expect(wordsOf(answer)).toContain("Away until Sun 18 Oct, 00:00 all is held");
    for (const day of [12, 13, 14, 15, 16, 17]) {
      expect(await told(`2026-10-${day}T07:00:00Z`)).toEqual([]);
      expect(await told(`2026-10-${day}T18:00:00Z`)).toEqual([]);
    }
    expect(await told("2026-10-18T06:59:00Z")).toEqual([]);
    const [back, ...more] = await told("2026-10-18T07:00:00Z");
    expect(more).toEqual([]);
    expect(back).toMatch(/^Welcome back/u);
    expect(back).toMatch(/Throw away 3 portions/u);
    expect(back).toMatch(/Move 1 portion .* for Mon 19 Oct/u);
    expect(back).not.toMatch(/Last good day/u);
  });

  it("what was held comes at once for who is back early", async () => {
    kitchen = await openReminded(true);
    const { test, told } = kitchen;
    await test.ask(MEMBER, "reminders", { away: "until Sun" });
    expect((await told("2026-10-14T07:00:00Z")).join()).not.toMatch(/Last good day/u);
    test.clock.advanceTo(test.clock.now().add({ hours: 2 }));
    await test.ask(MEMBER, "reminders", { away: "off" });
    const [back, ...more] = await told("2026-10-14T09:01:00Z");
    expect(more).toEqual([]);
    expect(back).toMatch(/^Welcome back.*\sLast good day for 3 portions/u);
    expect(await told("2026-10-14T09:02:00Z")).toEqual([]);
  });

  it("holds what was put off before", async () => {
    kitchen = await openReminded(true);
    const { test, at, told } = kitchen;
    await at("2026-10-12T18:00:00Z");
    const [thaw] = await at("2026-10-13T18:00:00Z");
    if (thaw === undefined) throw new Error("nothing to thaw");
    await test.press(MEMBER, buttonOf(thaw, "In an hour"));
    await test.ask(MEMBER, "reminders", { away: "12 hours" });
    expect(await told("2026-10-13T19:00:00Z")).toEqual([]);
    expect(await told("2026-10-14T06:59:00Z")).toEqual([]);
    expect((await told("2026-10-14T07:00:00Z")).join()).toMatch(/Move 1 portion/u);
  });
});

describe("a reminder that waits for a retry", () => {
  const cutOff = async (): Promise<void> => {
    kitchen = await openReminded(true);
    await kitchen.at("2026-10-12T18:00:00Z");
    kitchen.platform.script.push("lost request");
    expect(await kitchen.told("2026-10-13T18:00:00Z")).toEqual([]);
  };

  it("is withdrawn when its meal was taken off, and comes back with the meal", async () => {
    await cutOff();
    const { test, told } = kitchen;
    await test.ask(MEMBER, "meals", { remove: "lunch" });
    expect(await told("2026-10-13T18:01:00Z")).toEqual([]);
    expect(kitchen.platform.attempts.at(-1)?.attempt).toBe(1);
    await test.ask(MEMBER, "meals", { days: "Mon-Fri", time: "12:30" });
    // The evening has passed, so it is for the next morning.
    expect(await told("2026-10-13T18:03:00Z")).toEqual([]);
    expect((await told("2026-10-14T07:00:00Z")).join()).toMatch(/Move 1 portion/u);
  });

  it("tells the meal as it is now when the meal was moved", async () => {
    await cutOff();
    await kitchen.test.ask(MEMBER, "meals", { days: "Mon-Fri", time: "13:15" });
    expect((await kitchen.told("2026-10-13T18:01:00Z")).join()).toMatch(
      /for Thu 15 Oct, 13:15 lunch/u,
    );
    expect(await kitchen.told("2026-10-13T18:40:00Z")).toEqual([]);
  });

  it("is withdrawn when the food is gone, even when it has come too late by then", async () => {
    kitchen = await openReminded(false);
    const { test, told, platform } = kitchen;
    platform.script.push(...Array.from({ length: 3 }, () => "lost request" as const));
    expect(await told("2026-10-12T07:00:00Z")).toEqual([]);
    const { members, stocks } = test.stores;
    const member = await members.inGroup(groupId(MEMBER.group), MEMBER.userId);
    const [lot] = member === null ? [] : (await stocks.load(member.id)).lots;
    await test.press(MEMBER, `stock.move~${lot?.id}~threw~8~8`);
    expect(await told("2026-10-12T07:10:00Z")).toEqual([]);
    expect(await told("2026-10-15T07:00:00Z")).toEqual([]);
  });

  it("waits for the morning in the new zone of a member who has moved", async () => {
    await cutOff();
    await kitchen.test.ask(MEMBER, "reminders", { zone: "Asia/Tokyo" });
    // Half past three in the morning in Tokyo, and half an hour late.
    expect(await kitchen.told("2026-10-13T18:30:00Z")).toEqual([]);
    const words = [];
    for (const time of ["2026-10-13T19:30:00Z", "2026-10-13T21:59:00Z", "2026-10-13T22:00:00Z"]) {
      words.push(...(await kitchen.told(time)));
    }
    expect(words.join()).toMatch(/Move 1 portion/u);
  });
});

describe("after an outage that ends in quiet hours", () => {
  it("what still helps in the morning waits for it, and comes once", async () => {
    kitchen = await openReminded(true);
    await kitchen.at("2026-10-12T18:00:00Z");
    for (const time of ["2026-10-13T22:30:00Z", "2026-10-14T02:00:00Z", "2026-10-14T05:59:00Z"]) {
      expect(await kitchen.told(time)).toEqual([]);
    }
    expect((await kitchen.told("2026-10-14T06:00:00Z")).join()).toMatch(/^Move 1 portion/u);
    expect((await kitchen.told("2026-10-14T07:00:00Z")).join()).not.toMatch(/Move/u);
  });

  it("a safety reminder that would no longer help in the morning comes at once", async () => {
    kitchen = await openReminded(true);
    await kitchen.at("2026-10-12T18:00:00Z");
    expect((await kitchen.told("2026-10-14T22:30:00Z")).join()).toMatch(
      /Last good day for 3 portions/u,
    );
  });

  it("what no longer helps is told in one line, in the morning and once", async () => {
    kitchen = await openReminded(true);
    await kitchen.at("2026-10-12T18:00:00Z");
    expect(await kitchen.told("2026-10-15T01:00:00Z")).toEqual([]);
    expect(await kitchen.told("2026-10-15T02:00:00Z")).toEqual([]);
    const words = await kitchen.told("2026-10-15T06:00:00Z");
    expect(words.join("\n").match(/I was away/gu)).toHaveLength(1);
    expect(words.join("\n")).toMatch(/missed a reminder \(to thaw: .*and 1 more\)/u);
    expect((await kitchen.told("2026-10-15T07:00:00Z")).join()).not.toMatch(/I was away/u);
  });

  it("a reminder of the minute before quiet hours is not late", async () => {
    kitchen = await openReminded(false);
    await kitchen.test.ask(MEMBER, "reminders", { quiet: "19:00-08:30" });
    await kitchen.at("2026-10-12T17:59:00Z");
    // Planned for 18:59 instead of the quiet morning, swept a minute later.
    const words = [];
    for (const day of EVENINGS) words.push(...(await kitchen.told(`${day}T18:00:30Z`)));
    expect(words.join("\n")).toMatch(/Throw away|From tomorrow throw away/u);
  });
});
