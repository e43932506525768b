import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { buttonOf, MEMBER, OTHER, wordsOf } from "../../kit/bot.ts";
import { type Kitchen, openKitchen } from "../../kit/kitchen.ts";
import { instant } from "../../kit/stock.ts";

let test: Kitchen["test"];
let log: Kitchen["log"];
let portionsIn: Kitchen["portionsIn"];
beforeEach(async () => {
  ({ test, log, portionsIn } = await openKitchen());
});
afterEach(() => test.close());

const ate = (raw: Record<string, string> = {}, requestId?: string) =>
  test.ask(MEMBER, "batch ate", raw, requestId);

describe("having eaten one", () => {
  it("without saying which takes what must go first, says which box that is, and can be undone", async () => {
    await log({ freeze: "5" });
    await test.ask(MEMBER, "batch log", {
      recipe: "Cucumber bowl",
      portions: "4",
      cooked: "18:30",
    });
    const reply = await ate();
    // Two days in the fridge for the bowl, three for the pot.
    expect(reply.heading).toBe("Ate 1 portion of Cucumber bowl.");
    expect(wordsOf(reply)).toContain("Look for: Cucumber bowl");
    expect(wordsOf(reply)).toContain("Cooked Sun 11 Oct");
    expect(wordsOf(reply)).toMatch(/Label [0-9A-Z]{5}/u);
    expect(wordsOf(reply)).toContain("Place fridge");
    expect(wordsOf(reply)).toContain("Date eat by Tue 13 Oct");
    expect(wordsOf(reply)).toContain("Left of these 3 portions");
    expect(await portionsIn("fridge")).toBe(6);
    expect((await test.press(MEMBER, buttonOf(reply, "Undo"))).heading).toBe("Undone: ate 1.");
    expect(await portionsIn("fridge")).toBe(7);
  });

  it.each([
    ["½", 7.5, "Ate ½ portion"],
    ["0.5", 7.5, "Ate ½ portion"],
    ["1½", 6.5, "Ate 1½ portions"],
    ["2 portions", 6, "Ate 2 portions"],
  ])("of %s portions", async (portions, left, heading) => {
    await log();
    const reply = await ate({ recipe: "lamb pot", portions });
    expect(reply.heading).toBe(`${heading} of Barley and lamb pot.`);
    expect(await portionsIn("fridge")).toBe(left);
  });

  it("from the freezer is for when nothing else is ready, and says how to heat it", async () => {
    await log({ freeze: "8" });
    const reply = await ate();
    expect(wordsOf(reply)).toContain("Place freezer");
    expect(wordsOf(reply)).toContain("straight from frozen to 74 °C");
  });

  it("is refused where all is past its date, with the button that throws it away", async () => {
    await log();
    test.clock.advanceTo(instant("2026-10-15T08:00:00Z"));
    const reply = await ate();
    expect(reply.heading).toBe(
      "All that is left is past its date: throw it away. Nothing was recorded.",
    );
    expect(await portionsIn("fridge")).toBe(8);
    await test.press(MEMBER, buttonOf(reply, "Threw away 8"));
    expect(await portionsIn("fridge")).toBe(0);
  });

  it("delivered twice is eaten once, and at once twice is eaten twice", async () => {
    await log();
    await ate({}, "same");
    expect((await ate({}, "same")).heading).toMatch(/recorded already/u);
    expect(await portionsIn("fridge")).toBe(7);
    await Promise.all([ate({}, "one"), ate({}, "two")]);
    expect(await portionsIn("fridge")).toBe(5);
  });

  it.each([
    [{ recipe: "cake" }, /none of that in stock/u],
    [{ portions: "9" }, /only 8 portions there, not 9/u],
    [{ portions: "0.3" }, /not a number of portions/u],
    [{ portions: "all" }, /not a number of portions/u],
    [{ portions: "-1" }, /not a number of portions/u],
  ])("with %o is refused with a sentence and changes nothing", async (raw, sentence) => {
    await log();
    expect((await ate(raw)).heading).toMatch(sentence);
    expect(await portionsIn("fridge")).toBe(8);
  });

  it("touches nobody else's stock", async () => {
    await log();
    expect((await test.ask(OTHER, "batch ate")).heading).toMatch(/none of that in stock/u);
    expect(await portionsIn("fridge")).toBe(8);
  });
});
