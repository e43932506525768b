import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Reply } from "../../../commands/kit/reply.ts";
import { groupId } from "../../../shared/ids.ts";
import type { Movement } from "../../../shared/stock/types.ts";
import { buttonOf, MEMBER, wordsOf } from "../../kit/bot.ts";
import { type Kitchen, openKitchen } from "../../kit/kitchen.ts";
import { instant } from "../../kit/stock.ts";

let test: Kitchen["test"];
let log: Kitchen["log"];
let portionsIn: Kitchen["portionsIn"];
beforeEach(async () => {
  ({ test, log, portionsIn } = await openKitchen());
  await log();
});
afterEach(() => test.close());

/** Opens the first lot of the board: one tap. */
async function open(portions?: string): Promise<Reply> {
  const board = await test.ask(MEMBER, "stock");
  const choice = board.choices[0];
  const lot = choice?.options[0]?.value ?? "";
  const shown = await test.press(MEMBER, choice?.id ?? "", [lot]);
  return portions === undefined ? shown : test.press(MEMBER, listOf(shown, "How many"), [portions]);
}

function listOf(reply: Reply, placeholder: string): string {
  return reply.choices.find((one) => one.placeholder.startsWith(placeholder))?.id ?? "";
}

async function ledger(): Promise<readonly Movement[]> {
  const member = await test.stores.members.open(groupId(MEMBER.group), MEMBER.userId, MEMBER.name);
  const { changes } = await test.stores.stocks.ledger(member.id);
  return changes.flatMap((change) => change.movements);
}

describe("half portions", () => {
  it("are eaten from the opened lot with one button more, and written as people write them", async () => {
    const after = await test.press(MEMBER, buttonOf(await open(), "Ate ½"));
    expect(after.heading).toBe("Ate ½ portion of Barley and lamb pot.");
    expect(wordsOf(after)).toContain("Barley and lamb pot 7½ portions");
    expect(await portionsIn("fridge")).toBe(7.5);
    expect((await test.press(MEMBER, buttonOf(after, "Undo ate ½"))).heading).toBe(
      "Undone: ate ½.",
    );
    expect(await portionsIn("fridge")).toBe(8);
  });

  it("freeze, thaw, go to somebody and leave the board like whole ones", async () => {
    const froze = await test.press(MEMBER, buttonOf(await open("2.5"), "Froze 2½"));
    expect(froze.heading).toBe("Froze 2½ portions of Barley and lamb pot.");
    expect([await portionsIn("fridge"), await portionsIn("freezer")]).toEqual([5.5, 2.5]);
    const gave = await test.press(MEMBER, buttonOf(await open("5"), "Gave away 5"));
    expect(buttonOf(gave, "Ate ½ Barley")).toBeDefined();
    expect(wordsOf(gave)).toContain("Barley and lamb pot ½ portion eat by");
    expect(wordsOf(gave)).not.toMatch(/0\.5|NaN|null/u);
  });

  it("leave no meal short or doubled: a lone half is nobody's meal", async () => {
    await test.press(MEMBER, buttonOf(await open("5.5"), "Froze 5½"));
    const board = await test.ask(MEMBER, "stock");
    // Two and a half in the fridge, three lunches before Wednesday's end.
    expect(board.heading).toBe(
      "Next: Barley and lamb pot, Mon 12 Oct, 12:30 lunch (first to expire).",
    );
    expect(wordsOf(board)).toContain(
      "Spare: ½ portion of Barley and lamb pot. A meal takes whole portions: have it beside something",
    );
  });

  it.each(["0.25", "-0.5", "1e9", "½", "NaN"])(
    "of %s, forged, are refused with a sentence",
    async (n) => {
      const id = buttonOf(await open(), "Ate ½").replace("~0.5~", `~${n}~`);
      expect((await test.press(MEMBER, id)).heading).toMatch(/\.$/u);
      expect(await portionsIn("fridge")).toBe(8);
    },
  );
});

describe("throwing away", () => {
  it("is done with the second tap and asks for nothing", async () => {
    const after = await test.press(MEMBER, buttonOf(await open(), "Threw away 1"));
    expect(after.heading).toBe("Threw away 1 portion of Barley and lamb pot.");
    expect((await ledger()).at(-1)).toMatchObject({ kind: "threw away", reason: null });
  });

  it.each(["spoiled", "past its date", "did not like", "too much"])(
    "keeps “%s” when that is the second tap",
    async (reason) => {
      const id = listOf(await open("1.5"), "Threw away 1½, because");
      const after = await test.press(MEMBER, id, [reason]);
      expect(after.heading).toBe(`Threw away 1½ portions of Barley and lamb pot, ${reason}.`);
      expect((await ledger()).at(-1)).toMatchObject({ portions: 1.5, reason });
      expect((await test.press(MEMBER, id, [reason])).heading).toMatch(/Nothing was changed/u);
    },
  );

  it("past its date needs no reason: that is the reason", async () => {
    test.clock.advanceTo(instant("2026-10-15T08:00:00Z"));
    const board = await test.ask(MEMBER, "stock");
    await test.press(MEMBER, buttonOf(board, "Threw away 8"));
    expect((await ledger()).at(-1)).toMatchObject({ portions: 8, reason: "past its date" });
  });

  it("for a reason of one's own making is refused", async () => {
    const id = listOf(await open(), "Threw away");
    expect((await test.press(MEMBER, id, ["the cat"])).heading).toMatch(/too old to work/u);
    expect(await portionsIn("fridge")).toBe(8);
  });
});

describe("a wrong count", () => {
  it("is put right with the second tap, and can be undone", async () => {
    const after = await test.press(MEMBER, listOf(await open(), "Wrong count"), ["6.5"]);
    expect(after.heading).toBe(
      "Counted anew: 6½ portions of Barley and lamb pot in the fridge, not 8.",
    );
    expect((await ledger()).at(-1)).toMatchObject({ kind: "corrected", portions: 1.5, to: null });
    await test.press(MEMBER, buttonOf(after, "Undo corrected 1½"));
    expect(await portionsIn("fridge")).toBe(8);
  });

  it("upwards goes as far as was cooked, and eaten portions stay eaten", async () => {
    await test.press(MEMBER, buttonOf(await open("3"), "Ate 3"));
    const shown = await open();
    const list = shown.choices.find((one) => one.placeholder.startsWith("Wrong count"));
    expect(list?.options.map((one) => one.value)).toContain("8");
    expect(list?.options.map((one) => one.value)).not.toContain("8.5");
    await test.press(MEMBER, list?.id ?? "", ["7"]);
    expect(await portionsIn("fridge")).toBe(7);
    expect(await ledger()).toMatchObject([
      { kind: "cooked", portions: 8 },
      { kind: "ate", portions: 3 },
      { kind: "corrected", portions: 2, from: null },
    ]);
    const forged = await test.press(MEMBER, listOf(await open(), "Wrong count"), ["9"]);
    expect(forged.heading).toMatch(/8 portions at most can be there, not 9/u);
  });

  it("of none there empties the lot", async () => {
    const after = await test.press(MEMBER, listOf(await open(), "Wrong count"), ["0"]);
    expect(after.heading).toMatch(/^Counted anew: 0 portions/u);
    expect(wordsOf(after)).toContain("Log what you cook");
  });
});
