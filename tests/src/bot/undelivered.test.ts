import { describe, expect, it } from "vitest";
import { reply } from "../../../commands/kit/reply.ts";
import type { Undelivered } from "../../../commands/kit/undelivered.ts";
import type { ReminderRow } from "../../../shared/reminder/types.ts";
import { withUndelivered } from "../../../src/bot/undelivered.ts";
import { silentLog } from "../../../src/log.ts";
import { storesWith, testContext } from "../../kit/recipes-and-context.ts";
import { rowOf, T0 } from "../jobs/fake-deliveries.ts";

/** A member with these reminders untold, and what was noted as told. */
function untold(rows: readonly ReminderRow[], over: Partial<Undelivered> = {}) {
  const told = new Set<string>();
  const undelivered: Undelivered = {
    ofGroup: async () => ({ total: 0, newest: [] }),
    untold: async () => rows.filter(({ id }) => !told.has(id)),
    markTold: async (ids) => {
      for (const id of ids) told.add(id);
    },
    ...over,
  };
  return { told, context: testContext({ now: T0, stores: storesWith({ undelivered }) }) };
}

const due = (hours: number) => ({
  dueAt: T0.add({ hours }),
  helpsUntil: T0.add({ hours: hours + 12 }),
});
const ANSWER = reply("Nothing in stock.");

describe("the next answer after a reminder that reached nobody", () => {
  it("says on top what it asked for, once", async () => {
    const { context, told } = untold([rowOf("a", due(-2))]);
    const first = await withUndelivered(context, ANSWER, silentLog);
    expect(first.heading).toBe(ANSWER.heading);
    expect(first.alerts).toEqual([
      expect.stringMatching(/^A reminder could not reach you on .*: .*1 portion of Bean pot/u),
      expect.stringContaining("/stock"),
    ]);
    expect([...told]).toEqual(["a"]);
    expect(await withUndelivered(context, ANSWER, silentLog)).toEqual(ANSWER);
  });

  it("asks for nothing that is over, and says only what it was about", async () => {
    const { context } = untold([rowOf("a", due(-48))]);
    const { alerts } = await withUndelivered(context, ANSWER, silentLog);
    expect(alerts[0]).toMatch(/: discard today, Bean pot\.$/u);
  });

  it("keeps it for another time when the whole channel would read it", async () => {
    const { context, told } = untold([rowOf("a", due(-2))]);
    const shown = reply("Board", { audience: "shown" });
    expect(await withUndelivered(context, shown, silentLog)).toEqual(shown);
    expect([...told]).toEqual([]);
  });

  it("is given all the same when that cannot be looked up or noted", async () => {
    const broken = async () => Promise.reject(new Error("no database"));
    const errors: string[] = [];
    const log = { error: (_fields: object, message: string) => errors.push(message) };
    for (const over of [{ untold: broken }, { markTold: broken }]) {
      const { context } = untold([rowOf("a", due(-2))], over);
      expect(await withUndelivered(context, ANSWER, log)).toEqual(ANSWER);
    }
    expect(errors).toHaveLength(2);
  });
});
