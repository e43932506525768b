import { afterEach, describe, expect, it } from "vitest";
import { buttonOf, MEMBER, wordsOf } from "../../kit/bot.ts";
import { openReminded, type Reminded } from "../../kit/reminded.ts";
import { instant } from "../../kit/stock.ts";

let kitchen: Reminded;
afterEach(() => kitchen.test.close());

/** Cooks the same once more. */
async function cookAgain({ test }: Reminded): Promise<void> {
  const asked = { recipe: "Barley and lamb pot", cooked: "now" };
  expect((await test.ask(MEMBER, "batch log", asked)).heading).toMatch(/^Logged/u);
}

describe("a member who is faster than the sweep", () => {
  const first: readonly (readonly [string, (member: Reminded) => Promise<unknown>])[] = [
    ["sets another hour", ({ test }) => test.ask(MEMBER, "reminders", { evening: "19:00" })],
    ["logs another batch", cookAgain],
  ];

  it.each(first)("is told all the same what they missed in an outage: %s", async (_, act) => {
    kitchen = await openReminded(true);
    const { test, told } = kitchen;
    await told("2026-10-12T18:00:00Z");
    // Down from Monday evening to Thursday noon: Tuesday's thaw and Wednesday's last day go untold.
    test.clock.advanceTo(instant("2026-10-15T11:00:00Z"));
    await act(kitchen);
    const [message, ...more] = await told("2026-10-15T11:00:10Z");
    expect(more).toEqual([]);
    expect(message).toMatch(/Throw away \d portions?/u);
    expect(message).toMatch(/missed/u);
    expect(await told("2026-10-15T11:01:00Z")).toEqual([]);
  });

  it("is told the last day, not that it was missed, where it is still that day", async () => {
    kitchen = await openReminded(true);
    const { test, told } = kitchen;
    await told("2026-10-13T18:00:00Z");
    // Past midnight in Lisbon; in New York, where the member has gone, it is Wednesday evening.
    test.clock.advanceTo(instant("2026-10-14T23:30:00Z"));
    await test.ask(MEMBER, "reminders", { zone: "America/New_York" });
    expect((await told("2026-10-14T23:30:10Z")).join()).toMatch(/Last good day for 3 portions/u);
  });

  it("sees what is due, and nothing of the past, in the list", async () => {
    kitchen = await openReminded(true);
    const { test, told } = kitchen;
    await told("2026-10-12T18:00:00Z");
    test.clock.advanceTo(instant("2026-10-15T11:00:00Z"));
    const words = wordsOf(await test.ask(MEMBER, "reminders"));
    expect(words).toMatch(/Next reminder: due now\./u);
    expect(words).toMatch(/due now Throw away 3 portions/u);
    expect(words).not.toMatch(/1[0-4] Oct,/u);
  });

  it("puts nothing off by a change in the very minute", async () => {
    kitchen = await openReminded(false);
    const { test, told } = kitchen;
    test.clock.advanceTo(instant("2026-10-12T07:00:20Z"));
    await test.ask(MEMBER, "reminders", { evening: "19:30" });
    expect((await told("2026-10-12T07:00:40Z")).join()).toMatch(/Freeze 5 portions/u);
  });

  it("is told the thing as it is after a change in the very minute", async () => {
    kitchen = await openReminded(false);
    const { test, told } = kitchen;
    test.clock.advanceTo(instant("2026-10-12T07:00:20Z"));
    const some = { what: "freeze", recipe: "lamb pot", portions: "2" };
    await test.ask(MEMBER, "batch move", some);
    expect((await told("2026-10-12T07:00:40Z")).join()).toMatch(/Freeze 3 portions/u);
  });

  it("is not told of what is gone by then", async () => {
    kitchen = await openReminded(true);
    const { test, told } = kitchen;
    await told("2026-10-12T18:00:00Z");
    test.clock.advanceTo(instant("2026-10-15T11:00:00Z"));
    const stock = await test.ask(MEMBER, "stock");
    await test.press(MEMBER, buttonOf(stock, "Threw away 3"));
    const words = (await told("2026-10-15T11:00:10Z")).join();
    expect(words).not.toMatch(/Throw away|last good day/iu);
  });
});
