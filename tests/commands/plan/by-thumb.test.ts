import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Reply } from "../../../commands/kit/reply.ts";
import { groupId } from "../../../shared/ids.ts";
import { buttonOf, MEMBER, OTHER, type Person, STRANGER, wordsOf } from "../../kit/bot.ts";
import { type Kitchen, openKitchen } from "../../kit/kitchen.ts";

let test: Kitchen["test"];
let log: Kitchen["log"];
beforeEach(async () => {
  ({ test, log } = await openKitchen());
});
afterEach(() => test.close());

async function said(who: Person) {
  const { members, meals } = test.stores;
  const member = await members.open(groupId(who.group), who.userId, who.name);
  return (await meals.wishes(member.id)).exceptions.map(
    (one) => `${one.kind} ${one.date.toString()}`,
  );
}

describe("by thumb", () => {
  const keyOf = (reply: Reply, label: string): string =>
    reply.choices[0]?.options.find((one) => one.label.startsWith(label))?.value ?? "";

  it("a meal is picked and skipped in two taps, pinned in two, and planned again", async () => {
    await log();
    const week = await test.ask(MEMBER, "plan show");
    const pick = week.choices[0]?.id ?? "";
    const tuesday = await test.press(MEMBER, pick, [keyOf(week, "Tue 13 Oct")]);
    expect(tuesday.heading).toBe("Tue 13 Oct, 12:30 lunch: Barley and lamb pot.");
    await test.press(MEMBER, buttonOf(tuesday, "Skip it"));
    expect(await said(MEMBER)).toEqual(["skip 2026-10-13"]);

    const friday = await test.press(MEMBER, pick, [keyOf(week, "Fri 16 Oct")]);
    const [pins] = friday.choices;
    const pinned = await test.press(MEMBER, pins?.id ?? "", [pins?.options[0]?.value ?? ""]);
    expect(pinned.heading).toMatch(/^Pinned: Barley and lamb pot/u);
    const again = await test.press(MEMBER, pick, [keyOf(week, "Tue 13 Oct")]);
    await test.press(MEMBER, buttonOf(again, "Plan it again"));
    expect(await said(MEMBER)).toEqual(["pin 2026-10-16"]);
  });

  it("the board leads to the week, and a lot says which meals it is meant for and why", async () => {
    await log({ portions: "2" });
    const board = await test.ask(MEMBER, "stock");
    const week = await test.press(MEMBER, buttonOf(board, "Week's meals"));
    expect(week.heading).toMatch(/^Next: Barley and lamb pot/u);
    const [lots] = board.choices;
    const lot = await test.press(MEMBER, lots?.id ?? "", [lots?.options[0]?.value ?? ""]);
    expect(wordsOf(lot)).toContain("Planned Mon 12 Oct, 12:30 lunch first to expire");
    expect(wordsOf(lot)).toContain("and Tue 13 Oct, 12:30 lunch first to expire");
  });

  it("nobody's buttons reach another's meals or food, nor do made-up ones", async () => {
    await log();
    const week = await test.ask(MEMBER, "plan show");
    const friday = await test.press(MEMBER, week.choices[0]?.id ?? "", [keyOf(week, "Fri 16 Oct")]);
    const [pins] = friday.choices;
    for (const who of [OTHER, STRANGER]) {
      const skip = await test.press(who, buttonOf(friday, "Skip it"));
      expect(skip.heading).toMatch(/over or off your list/u);
      await test.ask(who, "meals", { days: "Mon-Fri", time: "12:30" });
      const own = await test.ask(who, "plan show");
      const key = keyOf(own, "Fri 16 Oct");
      const stolen = await test.press(who, `plan show.pin~${key}`, [pins?.options[0]?.value ?? ""]);
      expect(stolen.heading).toMatch(/Nothing of that is left/u);
      expect(await said(who)).toEqual([]);
    }
    for (const id of [
      "plan show.skip~x",
      "plan show.clear~all~2026-02-30~2026-02-31",
      "plan show.clear~all~2026-10-12",
      "plan show.clear~all~2026-10-12~9999-12-31",
      "plan show.pin~~",
      "plan show.meal",
    ]) {
      expect((await test.press(MEMBER, id)).heading).not.toMatch(/went wrong/u);
    }
    expect(await said(MEMBER)).toEqual([]);
  });
});
