import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { rasterise } from "../../../src/pictures/raster.ts";
import { buttonOf, MEMBER, OTHER, wordsOf } from "../../kit/bot.ts";
import { type Kitchen, openKitchen } from "../../kit/kitchen.ts";

let test: Kitchen["test"];
let log: Kitchen["log"];
beforeEach(async () => {
  ({ test, log } = await openKitchen());
});
afterEach(() => test.close());

const later = (hours: number): void => test.clock.advanceTo(test.clock.now().add({ hours }));

describe("the first two lines of the board", () => {
  it("are the next meal, then what must go first", async () => {
    await log({ freeze: "5" });
    const board = await test.ask(MEMBER, "stock");
    expect(wordsOf(board).split("\n").slice(0, 2)).toEqual([
      "Next: Barley and lamb pot, Mon 12 Oct, 12:30 lunch.",
      "First to go: 3 portions of Barley and lamb pot, eat by Wed 14 Oct.",
    ]);
  });

  it("are all that is past its date, then the next meal from what is still good", async () => {
    await log();
    later(24 * 3);
    await log({ portions: "2", cooked: "now" });
    await test.ask(MEMBER, "batch log", { recipe: "Cucumber bowl", portions: "2", cooked: "now" });
    later(24);
    await test.ask(MEMBER, "batch log", { recipe: "Cucumber bowl", portions: "1", cooked: "now" });
    const [first, second] = wordsOf(await test.ask(MEMBER, "stock")).split("\n");
    expect(first).toBe("Throw away 8 portions of Barley and lamb pot: past its date.");
    expect(second).toMatch(/^Next: Cucumber bowl, Fri 16 Oct, 12:30 lunch\.$/u);
  });

  it("name every lot that is past its date", async () => {
    await log();
    await test.ask(MEMBER, "batch log", {
      recipe: "Cucumber bowl",
      portions: "2",
      cooked: "18:30",
    });
    later(24 * 5);
    expect(
      wordsOf(await test.ask(MEMBER, "stock"))
        .split("\n")
        .slice(0, 2),
    ).toEqual([
      "Throw away 2 portions of Cucumber bowl and 8 portions of Barley and lamb pot: past their dates.",
      "Nothing else is in stock.",
    ]);
  });

  it("say that nothing has to go while all of it is frozen", async () => {
    await log({ freeze: "8" });
    const [first, second] = wordsOf(await test.ask(MEMBER, "stock")).split("\n");
    expect(first).toContain("Next: Barley and lamb pot, still in the freezer, ");
    expect(second).toBe("Nothing has to go: all of it is in the freezer.");
  });

  it("come second to what a button did", async () => {
    const done = await test.press(MEMBER, buttonOf(await log(), "Froze 5"));
    expect(wordsOf(done).split("\n").slice(0, 3)).toEqual([
      "Froze 5 portions of Barley and lamb pot.",
      "Next: Barley and lamb pot, Mon 12 Oct, 12:30 lunch.",
      "First to go: 3 portions of Barley and lamb pot, eat by Wed 14 Oct.",
    ]);
  });

  it("are for a member without meals what goes first, and that no meal is planned", async () => {
    await test.ask(OTHER, "batch log", {
      recipe: "Barley and lamb pot",
      portions: "2",
      cooked: "18:30",
    });
    expect(wordsOf(await test.ask(OTHER, "stock")).split("\n")[0]).toMatch(
      /^Next: Barley and lamb pot, eat by \w+ 14 Oct; no meal is planned for it\.$/u,
    );
  });
});

describe("the picture of the board", () => {
  it("is a tap away, and every bar of it stands in rows below", async () => {
    await log({ freeze: "3" });
    const shown = await test.press(MEMBER, buttonOf(await test.ask(MEMBER, "stock"), "Picture"));
    const [picture] = shown.pictures;
    if (picture === undefined) throw new Error("no picture");
    expect(rasterise(picture)?.subarray(1, 4).toString("latin1")).toBe("PNG");
    expect(shown.heading).toBe("Next: Barley and lamb pot, Mon 12 Oct, 12:30 lunch.");
    expect(wordsOf(shown)).toContain(
      "Barley and lamb pot 5 portions eat by Wed 14 Oct; meals Mon 12 Oct (1), Tue 13 Oct (1), Wed 14 Oct (1)",
    );
    // Two more are to be frozen now, and are drawn and told apart from what is frozen already.
    expect(picture.alt).toContain(
      "To be frozen now, of those in the fridge: Barley and lamb pot, 2 portions, best before Mon 11 Jan",
    );
    expect(picture.alt).toMatch(
      /Freezer: Barley and lamb pot, 3 portions, .*set to thaw Tue 13 Oct \(1\)/u,
    );
    expect((await test.press(MEMBER, buttonOf(shown, "Back"))).choices).toHaveLength(1);
  });

  it("shows what is past its date first and apart, without a meal on it", async () => {
    await log();
    later(24 * 4);
    const shown = await test.press(MEMBER, buttonOf(await test.ask(MEMBER, "stock"), "Picture"));
    expect(shown.heading).toMatch(/^Throw away 8 portions/u);
    expect(shown.pictures[0]?.alt).toContain(
      "Throw away: Barley and lamb pot, 8 portions, was good until Wed 14 Oct.",
    );
  });

  it("is only ever of one's own stock", async () => {
    await log();
    const shown = await test.press(OTHER, "stock.picture");
    expect(shown.heading).toBe("Nothing in stock.");
    expect(shown.pictures[0]?.alt).toContain("Nothing in stock.");
  });
});
