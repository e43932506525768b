import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { groupUndelivered } from "../../../commands/group/undelivered.ts";
import type { UndeliveredReminder } from "../../../commands/kit/undelivered.ts";
import { memberId } from "../../../shared/ids.ts";
import { COACH, MEMBER, openTestBot, STRANGER, type TestBot, wordsOf } from "../../kit/bot.ts";
import { readAloud, storesWith, testContext } from "../../kit/recipes-and-context.ts";
import { instant } from "../../kit/stock.ts";

const CLOSED = "direct message: closed (50007)";

/** What the command says of reminders that failed so. */
async function said(reasons: readonly string[], total = reasons.length): Promise<string> {
  const newest = reasons.map(
    (reason, n): UndeliveredReminder => ({
      memberId: memberId(`m${n}`),
      memberName: `Ana ${n}`,
      kind: "discard today",
      dueAt: instant("2026-10-10T07:00:00Z"),
      reason,
      isToldSince: n > 0,
    }),
  );
  const undelivered = {
    ofGroup: async () => ({ total, newest }),
    untold: async () => [],
    markTold: async () => undefined,
  };
  const context = testContext({ isCoach: true, stores: storesWith({ undelivered }) });
  return readAloud(await groupUndelivered.run(context, {}));
}

describe("/group undelivered", () => {
  it("says so when every reminder arrived", async () => {
    expect(await said([])).toBe("Every reminder of the last 30 days reached its member.");
  });

  it("names the member, the kind and the time, and whether they were told since", async () => {
    const words = await said([CLOSED, CLOSED]);
    expect(words).toMatch(/^2 reminders of the last 30 days did not reach anybody\./u);
    expect(words).toMatch(/Ana 0: discard today, Sat 10 Oct, \d\d:00 \([^;]*\)$/mu);
    expect(words).toMatch(
      /Ana 1: discard today, Sat 10 Oct, \d\d:00 \(.*; told at a command since\)$/mu,
    );
  });

  // The reasons are as src/discord/messenger.ts and src/jobs/deliver.ts write them.
  it.each([
    [CLOSED, /closed, and the group has no reminder channel/u, /\/group setup channel:/u],
    [
      `${CLOSED}; channel: refused (403, 50013)`,
      /closed, and the reminder channel does not let me write/u,
      /send messages in it/u,
    ],
    [
      `came too late; channel: refused (404, 10003); ${CLOSED}`,
      /closed, and the reminder channel does not let me write/u,
      /opens direct messages/u,
    ],
    ["direct message: refused (403, 50001)", /did not let me write to them/u, /\/stock/u],
    ["the member is gone", /no longer a member here/u, /\/stock/u],
    ["server error 500, after 8 tries", /gave no answer for too long/u, /\/stock/u],
    ["unreadable", /the record of it was damaged/u, /\/stock/u],
  ])("says in words why, and what can be done: %s", async (reason, why, remedy) => {
    const words = await said([reason]);
    expect(words).toMatch(why);
    expect(words).toMatch(remedy);
    expect(words).not.toMatch(/\d{5}|403|404|500/u);
  });

  it("says when there are more than are shown", async () => {
    expect(await said([CLOSED, CLOSED], 40)).toMatch(/^40 reminders[^\n]*\n\[The newest 2\]/u);
  });
});

describe("a reminder that reached nobody, on the real bot", () => {
  let bot: TestBot;
  beforeEach(async () => {
    bot = await openTestBot("2026-10-11T10:00:00Z");
  });
  afterEach(() => bot.close());

  it("is the coach's to see, of their own group, and nobody else's", async () => {
    const refused = wordsOf(await bot.ask(MEMBER, "group undelivered"));
    expect(refused).toMatch(/is for the group's coach/u);
    for (const coach of [COACH, STRANGER]) {
      expect(wordsOf(await bot.ask(coach, "group undelivered"))).toMatch(/reached its member/u);
    }
  });
});
