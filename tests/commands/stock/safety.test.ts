import { Temporal } from "temporal-polyfill";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { groupId } from "../../../shared/ids.ts";
import { buttonOf, MEMBER, wordsOf } from "../../kit/bot.ts";
import { type Kitchen, openKitchen } from "../../kit/kitchen.ts";

let test: Kitchen["test"];
let log: Kitchen["log"];
let portionsIn: Kitchen["portionsIn"];
beforeEach(async () => {
  ({ test, log, portionsIn } = await openKitchen());
});
afterEach(() => test.close());

describe("undo", () => {
  it("brings back the last portion of a batch that nothing was left of", async () => {
    await log({ portions: "1" });
    const ate = await test.press(MEMBER, buttonOf(await test.ask(MEMBER, "stock"), "Ate 1"));
    expect(ate.parts.length).toBeGreaterThan(0);
    expect((await test.press(MEMBER, buttonOf(ate, "Undo ate 1"))).heading).toBe("Undone: ate 1.");
    expect(await portionsIn("fridge")).toBe(1);
  });

  it("does not make fresh again what has been thawing since another day", async () => {
    await log({ freeze: "8" });
    const lot = (await test.ask(MEMBER, "stock")).choices[0]?.options[0]?.value ?? "";
    const thawed = await test.press(MEMBER, `stock.move~${lot}~thaw~3~8`);
    const undo = buttonOf(thawed, "Undo set to thaw 3");
    test.clock.advanceTo(test.clock.now().add({ hours: 24 }));
    expect((await test.press(MEMBER, undo)).heading).toMatch(/thawing since another day/u);
    expect([await portionsIn("thawing"), await portionsIn("freezer")]).toEqual([3, 5]);
  });

  it("is not offered for what is long done", async () => {
    await log();
    test.clock.advanceTo(test.clock.now().add({ hours: 49 }));
    const board = await test.ask(MEMBER, "stock");
    expect(board.buttons.filter((one) => one.label.startsWith("Undo"))).toEqual([]);
  });
});

describe("moving to another zone", () => {
  it("westwards does not make food keep longer", async () => {
    await test.ask(MEMBER, "reminders", { zone: "Pacific/Auckland" });
    // Monday 12 October, 07:00 there; the same instant is Sunday in Los Angeles.
    await log({ cooked: "now" });
    expect(wordsOf(await test.ask(MEMBER, "stock"))).toContain("eat by Thu 15 Oct");
    await test.ask(MEMBER, "reminders", { zone: "America/Los_Angeles" });
    expect(wordsOf(await test.ask(MEMBER, "stock"))).toContain("eat by Wed 14 Oct");
  });
});

describe("a reminder's button pressed a day late", () => {
  it("dates the thaw to the day it was told", async () => {
    await log({ freeze: "8" });
    const member = await test.stores.members.open(
      groupId(MEMBER.group),
      MEMBER.userId,
      MEMBER.name,
    );
    const row = (await test.stores.reminders.coming(member.id, 50)).find(
      (one) => one.kind === "thaw tonight",
    );
    if (row === undefined) throw new Error("no thaw reminder was derived");
    test.clock.advanceTo(row.dueAt.add({ hours: 24 }));
    await test.press(MEMBER, `stock.remind~${row.about.lotId}~thaw~1~r1~${row.id}`);
    const stock = await test.stores.stocks.load(member.id);
    const told = row.dueAt.toZonedDateTimeISO("Europe/Lisbon").toPlainDate();
    expect(stock.lots.find((one) => one.place === "thawing")?.since.toString()).toBe(
      told.toString(),
    );
  });
});

describe("a meal that is on the table", () => {
  it("is not called left over for two hours, and is after that", async () => {
    await log({ portions: "3" });
    // Monday, half an hour after lunch in Lisbon, the portion not marked yet.
    test.clock.advanceTo(Temporal.Instant.from("2026-10-12T12:00:00Z"));
    expect(wordsOf(await test.ask(MEMBER, "stock"))).not.toContain("Freeze now");
    test.clock.advanceTo(Temporal.Instant.from("2026-10-12T13:30:00Z"));
    expect(wordsOf(await test.ask(MEMBER, "stock"))).toContain("Freeze now: 1 portion");
  });
});
