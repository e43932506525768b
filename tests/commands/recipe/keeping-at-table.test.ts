import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { buttonOf, COACH, MEMBER, OTHER, wordsOf } from "../../kit/bot.ts";
import { type KeepingKit, openKeepingKit, STEW, STEW_NAME } from "./keeping-kit.ts";

let kit: KeepingKit;
beforeEach(async () => {
  kit = await openKeepingKit();
});
afterEach(() => kit.test.close());

describe("a member with somebody vulnerable at the table", () => {
  it.each(["pregnant", "under five", "over 65", "weak immune system"])(
    "such as %s keeps the chart's time on card, log and stock",
    async (table) => {
      await kit.test.publish(COACH, STEW);
      await kit.confirm();
      await kit.test.ask(MEMBER, "me", { table });
      expect(await kit.card(MEMBER)).toContain(
        "keeps 3 days in the fridge the chart's 3 days; the coach's 5 are not for your table;",
      );
      expect(wordsOf(await kit.log(MEMBER))).toContain("eat by Wed 14 Oct; the chart's 3 days;");
      expect(await kit.remindersOf(MEMBER, "last good day")).toEqual(["2026-10-14"]);
      // For others in the group it counts.
      expect(wordsOf(await kit.log(OTHER))).toContain("eat by Fri 16 Oct");
    },
  );

  it("has the chart's time for what is in stock as soon as they say so, reminders too", async () => {
    await kit.test.publish(COACH, STEW);
    await kit.confirm();
    await kit.log(MEMBER);
    expect(await kit.remindersOf(MEMBER, "last good day")).toEqual(["2026-10-16"]);
    const told = await kit.test.ask(MEMBER, "me", { table: "under five" });
    expect(told.alerts).toContain(`Another date: 4 portions of ${STEW_NAME}, eat by Wed 14 Oct.`);
    expect(await kit.stockOf(MEMBER)).toContain("eat by Wed 14 Oct; the chart's 3 days");
    expect(await kit.remindersOf(MEMBER, "last good day")).toEqual(["2026-10-14"]);
    expect(await kit.remindersOf(MEMBER, "discard today")).toEqual(["2026-10-14"]);
  });

  it("is told at once to throw away what the chart would not have kept", async () => {
    await kit.test.publish(COACH, STEW);
    await kit.confirm();
    await kit.log(MEMBER);
    kit.test.clock.advanceTo(kit.test.clock.now().add({ hours: 24 * 4 }));
    expect(await kit.stockOf(MEMBER)).not.toContain("Throw away");
    const told = await kit.test.ask(MEMBER, "me", { table: "pregnant" });
    expect(told.alerts[0]).toBe(
      `Throw away 4 portions of ${STEW_NAME}: by the chart, which counts for your table, good until Wed 14 Oct.`,
    );
    expect((await kit.test.ask(MEMBER, "stock")).heading).toMatch(/^Throw away 4 portions/u);
  });

  it("has the coach's time again when nobody vulnerable eats along any more", async () => {
    await kit.test.publish(COACH, STEW);
    await kit.confirm();
    await kit.test.ask(MEMBER, "me", { table: "over 65" });
    await kit.log(MEMBER);
    await kit.test.ask(MEMBER, "me", { table: "nobody" });
    expect(await kit.stockOf(MEMBER)).toContain("eat by Fri 16 Oct; coach's word");
    expect(await kit.remindersOf(MEMBER, "last good day")).toEqual(["2026-10-16"]);
  });

  it("is thought of when others give portions away", async () => {
    await kit.test.publish(COACH, STEW);
    await kit.confirm();
    await kit.log(MEMBER);
    const lot = (await kit.test.ask(MEMBER, "stock")).choices[0]?.options[0]?.value ?? "";
    const gave = await kit.test.press(MEMBER, `stock.move~${lot}~gave~1~4`);
    expect(gave.heading).toMatch(/coach's word\. With somebody pregnant.*eat it by Wed 14 Oct\.$/u);
  });

  it("is not given away to the coach", async () => {
    await kit.test.publish(COACH, STEW);
    await kit.confirm();
    await kit.test.ask(MEMBER, "me", { table: "pregnant" });
    await kit.log(MEMBER);
    const words = wordsOf(await kit.takeBack());
    expect(words).toContain("Ines: 4 portions (fridge)");
    expect(words).not.toMatch(/Ines.*(?:pregnant|chart)/u);
  });

  it("does not get the longer time by undoing after having said so", async () => {
    await kit.test.publish(COACH, STEW);
    await kit.confirm();
    await kit.log(MEMBER);
    const board = await kit.test.ask(MEMBER, "stock");
    const frozen = await kit.test.press(MEMBER, buttonOf(board, "Ate 1"));
    await kit.test.ask(MEMBER, "me", { table: "pregnant" });
    await kit.test.press(MEMBER, buttonOf(frozen, "Undo"));
    expect(await kit.stockOf(MEMBER)).toContain("4 portions eat by Wed 14 Oct");
  });
});
