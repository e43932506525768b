import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Reply } from "../../../commands/kit/reply.ts";
import { buttonOf, MEMBER, OTHER, wordsOf } from "../../kit/bot.ts";
import { openReminded, type Reminded } from "../../kit/reminded.ts";

const TUESDAY_EVENING = "2026-10-13T18:00:00Z";

let kitchen: Reminded;
beforeEach(async () => {
  kitchen = await openReminded(true);
  await kitchen.at("2026-10-12T18:00:00Z");
});
afterEach(() => kitchen.test.close());

const first = (list: readonly Reply[]): Reply => {
  const [reply] = list;
  if (reply === undefined) throw new Error("nothing was told");
  return reply;
};
const labels = (reply: Reply) => reply.buttons.map(({ label }) => label);

describe("a reminder that is put off", () => {
  it("offers an hour while that helps, and tonight only while tonight is further off", async () => {
    const evening = first(await kitchen.at(TUESDAY_EVENING));
    expect(evening.heading).toMatch(/^Move 1 portion of Barley and lamb pot/u);
    expect(labels(evening)).toEqual(["Set 1 to thaw", "In an hour"]);
    const morning = first(await kitchen.at("2026-10-14T07:00:00Z"));
    expect(morning.heading).toMatch(/^Last good day/u);
    expect(labels(morning).slice(-2)).toEqual(["In an hour", "Tonight"]);
  });

  it("comes again at the new time, once, as another message", async () => {
    const { test, at, platform } = kitchen;
    const told = first(await at(TUESDAY_EVENING));
    test.clock.advanceTo(test.clock.now().add({ minutes: 5 }));
    const answer = await test.press(MEMBER, buttonOf(told, "In an hour"));
    expect(answer.heading).toBe("Told again Tue 13 Oct, 20:05.");
    expect(await at("2026-10-13T19:04:00Z")).toEqual([]);
    expect((await at("2026-10-13T19:05:00Z")).map(({ heading }) => heading)).toEqual([
      told.heading,
    ]);
    expect(await at("2026-10-13T20:30:00Z")).toEqual([]);
    const nonces = platform.stored.map(({ nonce }) => nonce);
    expect(new Set(nonces).size).toBe(nonces.length);
  });

  it("pressed twice comes once, at the time of the last press; pressed after it came, not again", async () => {
    const { test, at } = kitchen;
    const id = buttonOf(first(await at(TUESDAY_EVENING)), "In an hour");
    await Promise.all([test.press(MEMBER, id), test.press(MEMBER, id)]);
    test.clock.advanceTo(test.clock.now().add({ minutes: 10 }));
    await test.press(MEMBER, id);
    expect(await at("2026-10-13T19:00:00Z")).toEqual([]);
    expect(await at("2026-10-13T19:10:00Z")).toHaveLength(1);
    expect((await test.press(MEMBER, id)).heading).toMatch(/come again already/u);
    expect(await at("2026-10-13T20:20:00Z")).toEqual([]);
  });

  it("can be put off again with the button of the newer message", async () => {
    const { test, at } = kitchen;
    await test.press(MEMBER, buttonOf(first(await at(TUESDAY_EVENING)), "In an hour"));
    const again = first(await at("2026-10-13T19:00:00Z"));
    await test.press(MEMBER, buttonOf(again, "In an hour"));
    expect(await at("2026-10-13T20:00:00Z")).toHaveLength(1);
  });

  it("is refused to anybody else, and nothing comes of it", async () => {
    const { test, at } = kitchen;
    const id = buttonOf(first(await at(TUESDAY_EVENING)), "In an hour");
    expect((await test.press(OTHER, id)).heading).toMatch(/not yours/u);
    expect((await test.press(MEMBER, "reminders.later~nosuchrow~hour")).heading).toMatch(
      /too old/u,
    );
    expect(
      (await test.press(MEMBER, `${id.split("~").slice(0, 2).join("~")}~year`)).heading,
    ).toMatch(/too old/u);
    expect(await at("2026-10-13T19:00:00Z")).toEqual([]);
  });

  it("does not come when it was dealt with meanwhile, and is not listed any more", async () => {
    const { test, at } = kitchen;
    const told = first(await at(TUESDAY_EVENING));
    await test.press(MEMBER, buttonOf(told, "In an hour"));
    expect(wordsOf(await test.ask(MEMBER, "reminders"))).toContain("Tue 13 Oct, 20:00 Move 1");
    await test.press(MEMBER, buttonOf(told, "Set 1 to thaw"));
    expect(wordsOf(await test.ask(MEMBER, "reminders"))).not.toContain("Tue 13 Oct, 20:00");
    expect((await test.press(MEMBER, buttonOf(told, "In an hour"))).heading).toMatch(/dealt with/u);
    expect(await at("2026-10-13T19:00:00Z")).toEqual([]);
  });

  it("still comes when the reminders were derived anew in between", async () => {
    const { test, at } = kitchen;
    await test.press(MEMBER, buttonOf(first(await at(TUESDAY_EVENING)), "In an hour"));
    await test.ask(MEMBER, "reminders", { morning: "07:45" });
    expect(await at("2026-10-13T19:00:00Z")).toHaveLength(1);
  });

  it("cannot wait past the time it helps: a last day not into the next, a discard not past midnight", async () => {
    const { test, at } = kitchen;
    const last = first(await at("2026-10-14T07:00:00Z"));
    const put = await test.press(MEMBER, buttonOf(last, "Tonight"));
    expect(put.heading).toBe("Told again Wed 14 Oct, 19:00.");
    test.clock.advanceTo(test.clock.now().add({ hours: 15, minutes: 30 }));
    expect((await test.press(MEMBER, buttonOf(last, "In an hour"))).heading).toMatch(
      /cannot wait/u,
    );
    expect((await test.press(MEMBER, buttonOf(last, "Tonight"))).heading).toMatch(/past 19:00/u);
    const discard = first(await at("2026-10-15T07:00:00Z"));
    expect(discard.heading).toMatch(/^Throw away 3 portions/u);
    const later = buttonOf(discard, "In an hour");
    test.clock.advanceTo(test.clock.now().add({ hours: 15, minutes: 5 }));
    // The thaw of the same message may wait; the discard may not.
    const answer = wordsOf(await test.press(MEMBER, later));
    expect(answer).toMatch(/Move 1 portion/u);
    expect(answer).toMatch(/Not all of that message can wait/u);
    expect(answer).not.toMatch(/Throw away/u);
  });
});
