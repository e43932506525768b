import { afterEach, beforeEach, describe, expect, it } from "vitest";
import {
  buttonOf,
  COACH,
  fileOf,
  MEMBER,
  OTHER,
  POT_TEXT,
  STRANGER,
  wordsOf,
} from "../../kit/bot.ts";
import { type Kitchen, openKitchen } from "../../kit/kitchen.ts";

let test: Kitchen["test"];
let log: Kitchen["log"];
let portionsIn: Kitchen["portionsIn"];
beforeEach(async () => {
  ({ test, log, portionsIn } = await openKitchen());
});
afterEach(() => test.close());

describe("logging a batch", () => {
  it("says what to keep, what to freeze now and why, and plans the meals", async () => {
    const reply = await log();
    expect(reply.heading).toBe("Logged: 8 portions of Barley and lamb pot.");
    expect(wordsOf(reply)).toContain("Keep in the fridge 3 portions eat by Wed 14 Oct");
    expect(wordsOf(reply)).toContain("Freeze now 5 portions no meal takes them by Wed 14 Oct");
    expect(wordsOf(reply)).toContain(
      "Thu 15 Oct, 12:30 lunch from the freezer, thaw Tue 13 Oct, 19:00",
    );
    expect(reply.audience).toBe("private");
  });

  it("says of a recipe that freezes badly what is too many, and offers no freezing", async () => {
    const reply = await test.ask(MEMBER, "batch log", {
      recipe: "Cucumber bowl",
      portions: "4",
      cooked: "18:30",
    });
    expect(wordsOf(reply)).toContain(
      "Without a meal 2 portions freezes badly (the leaves turn limp)",
    );
    expect(reply.buttons.map((one) => one.label)).not.toContain("Froze 2 portions");
  });

  it("delivered twice is logged once", async () => {
    await log({}, "same");
    expect((await log({}, "same")).heading).toMatch(/already/u);
    expect(await portionsIn("fridge")).toBe(8);
  });

  it.each([
    [{ recipe: "No such pot" }, /No such pot/u],
    [{ portions: "0" }, /portions/u],
    [{ portions: "-4" }, /portions/u],
    [{ portions: "100000" }, /portions/u],
    [{ portions: "<@123> **8**" }, /portions/u],
    [{ cooked: "tomorrow 18:00" }, /./u],
    [{ cooked: "2026-09-11 18:00" }, /ago/u],
    [{ cooked: "when I was home" }, /not a time/u],
    [{ freeze: "9" }, /cannot freeze 9/u],
    [{ weight: "heavy" }, /heavy/u],
  ])("with %o is refused with a sentence and changes nothing", async (raw, sentence) => {
    const reply = await log(raw);
    expect(reply.heading).toMatch(sentence);
    expect(reply.heading).not.toMatch(/Error|undefined|at Object/u);
    expect(await portionsIn("fridge")).toBe(0);
  });
});

describe("buttons", () => {
  it("freeze what was advised, once, however often they are tapped", async () => {
    const id = buttonOf(await log(), "Froze 5");
    expect((await test.press(MEMBER, id)).heading).toBe("Froze 5 portions of Barley and lamb pot.");
    expect((await test.press(MEMBER, id)).heading).toMatch(/Nothing was changed/u);
    expect([await portionsIn("fridge"), await portionsIn("freezer")]).toEqual([3, 5]);
  });

  it("undo the last change, and only that", async () => {
    const froze = await test.press(MEMBER, buttonOf(await log(), "Froze 5"));
    const undo = buttonOf(froze, "Undo");
    expect((await test.press(MEMBER, undo)).heading).toBe("Undone: froze 5.");
    expect(await portionsIn("fridge")).toBe(8);
    expect((await test.press(MEMBER, undo)).heading).toMatch(/Nothing was undone/u);
    expect(await portionsIn("fridge")).toBe(8);
  });

  it("of somebody else's message do nothing, in the group or from another", async () => {
    const id = buttonOf(await log(), "Froze 5");
    for (const who of [OTHER, COACH, STRANGER]) {
      expect((await test.press(who, id)).heading).toMatch(/not yours/u);
    }
    expect(await portionsIn("freezer")).toBe(0);
  });

  it.each([
    "stock.move~nolot~ate~1~1",
    "stock.move~x~ate",
    "stock.move",
    "stock.undo~-1",
    "stock.lot~%~",
    "nonsense",
    "stock.remind~l1~ate~1~r1~r1",
  ])("%s, forged or of a lot that is gone, is answered with a sentence", async (id) => {
    const reply = await test.press(MEMBER, id);
    expect(reply.heading).toMatch(/\.$/u);
    expect(reply.heading).not.toMatch(/sorry|wrong on my side/iu);
  });

  it("of a reminder work once", async () => {
    await log();
    const board = await test.ask(MEMBER, "stock");
    const lot = board.choices[0]?.options[0]?.value ?? "";
    const id = `stock.remind~${lot}~ate~2~rabc~abc`;
    expect((await test.press(MEMBER, id)).heading).toMatch(/^Ate 2 portions/u);
    expect((await test.press(MEMBER, id)).heading).toMatch(/used already/u);
    expect(await portionsIn("fridge")).toBe(6);
  });
});

describe("the board", () => {
  it("says first what is eaten next, then what is where", async () => {
    await log({ freeze: "5" });
    const board = await test.ask(MEMBER, "stock");
    expect(board.heading).toBe(
      "Next: Barley and lamb pot, Mon 12 Oct, 12:30 lunch (first to expire).",
    );
    expect(wordsOf(board)).toContain("Fridge\nBarley and lamb pot 3 portions eat by Wed 14 Oct");
    expect(wordsOf(board)).toContain(
      "Freezer\nBarley and lamb pot 5 portions best before Mon 11 Jan",
    );
  });

  it("says first what must be thrown away", async () => {
    await log();
    test.clock.advanceTo(test.clock.now().add({ hours: 24 * 4 }));
    const board = await test.ask(MEMBER, "stock");
    expect(board.heading).toBe("Throw away 8 portions of Barley and lamb pot: past its date.");
    expect((await test.press(MEMBER, buttonOf(board, "Threw away 8"))).heading).toBe(
      "Threw away 8 portions of Barley and lamb pot.",
    );
  });

  it("is empty for a group that has nothing, whatever others have", async () => {
    await log();
    expect((await test.ask(STRANGER, "stock")).heading).toBe("Nothing in stock.");
    expect(
      (await test.ask(STRANGER, "batch log", { recipe: "Barley and lamb pot" })).heading,
    ).toMatch(/Barley and lamb pot/u);
    expect(await portionsIn("fridge")).toBe(8);
  });
});

describe("who may do what", () => {
  it("only the coach publishes", async () => {
    const reply = await test.ask(
      MEMBER,
      "recipe publish",
      fileOf(POT_TEXT.replace("Barley", "Other")),
    );
    expect(reply.heading).toMatch(/coach/u);
    expect(wordsOf(await test.ask(MEMBER, "recipe find", { words: "Other" }))).not.toContain(
      "Other and lamb pot",
    );
  });
});
