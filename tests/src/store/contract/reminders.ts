import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { reminderId, slotRuleId } from "../../../../shared/ids.ts";
import type { DerivedReminder } from "../../../../shared/reminder/types.ts";
import type { Deliveries } from "../../../../src/jobs/ports.ts";
import { time } from "../../../kit/stock.ts";
import { claimDue } from "../claim-kit.ts";
import type { Given } from "../contract.ts";
import { cooked, later, NOW, remind, reminder, type World, world } from "../kit.ts";

async function comingKeys(w: World): Promise<readonly string[]> {
  const rows = await w.store.stores.reminders.coming(w.member.id, 1000);
  return rows.map(({ key }) => key);
}

type Settlement = Parameters<Deliveries["settle"]>[0]["result"];

const at = NOW;
const SENT = { state: "sent", messageId: "m", where: "direct message" } as const;

export function reminderContract({ store }: Given): void {
  describe("the rewriting of reminders", () => {
    test("a scheduled row follows its reminder and keeps its id", async () => {
      const w = await world(store());
      await remind(w, [reminder("a")]);
      const [before] = await store().stores.reminders.coming(w.member.id, 10);
      const about = { ...reminder("a").about, portions: 5, meal: null };
      const moved = reminder("a", {
        kind: "discard today",
        dueAt: later(7),
        helpsUntil: later(8),
        about,
      });
      await remind(w, [moved]);
      const [after] = await store().stores.reminders.coming(w.member.id, 10);
      expect(after).toEqual({ ...before, ...moved });
      expect(after).toMatchObject({ state: "scheduled", attempts: 0, nonce: null });
      expect(await store().stores.reminders.find(after?.id ?? reminderId(""))).toEqual(after);
      expect(await store().stores.reminders.find(reminderId("none"))).toBeNull();
    });

    test("a key that was sent, failed or expired is never scheduled again", async () => {
      const w = await world(store());
      const all = ["sent", "failed", "expired"].map((key) => reminder(key));
      await remind(w, all);
      const { deliveries } = store();
      const results: Readonly<Record<string, Settlement>> = {
        sent: SENT,
        failed: { state: "failed", reason: "x" },
        expired: { state: "expired", reason: "too late" },
      };
      for (const row of await claimDue(store(), { due: later(60), at })) {
        const result = results[row.key];
        if (result === undefined) throw new Error(`nothing becomes of ${row.key}`);
        const ids = [row.id];
        await deliveries.settle({ nonce: row.nonce ?? "", ids, worker: "w", at, result });
      }
      expect(await comingKeys(w)).toEqual([]);
      await remind(w, []);
      await remind(w, all);
      expect(await comingKeys(w)).toEqual([]);
      expect(await claimDue(store(), { due: later(999) })).toEqual([]);
    });

    test("a row on its way is left alone, wanted or not", async () => {
      const w = await world(store());
      await remind(w, [reminder("a"), reminder("b"), reminder("c", { dueAt: later(61) })]);
      const held = await claimDue(store(), { due: later(60) });
      await remind(w, [reminder("a", { dueAt: later(500) }), reminder("d")]);
      const coming = await store().stores.reminders.coming(w.member.id, 10);
      expect(coming.filter(({ state }) => state === "claimed")).toEqual(held);
      expect(coming.map(({ key }) => key).toSorted()).toEqual(["a", "b", "d"]);
    });

    test("a claim during a rewrite wins or loses whole: a sent row is never left scheduled", async () => {
      const w = await world(store());
      const many = Array.from({ length: 40 }, (_, i) => reminder(`k${i}`));
      await remind(w, many);
      const moved = many.map((each) => ({ ...each, dueAt: later(300) }));
      const claims = [1, 2, 3].map((n) => claimDue(store(), { worker: `w${n}`, due: later(300) }));
      const [, ...held] = await Promise.all([remind(w, moved), ...claims]);
      const after = await store().stores.reminders.coming(w.member.id, 100);
      expect(held.flat()).toHaveLength(40);
      expect(after.map(({ state }) => state)).toEqual(Array(40).fill("claimed"));
      expect(new Set(after.map(({ key }) => key)).size).toBe(40);
    });

    test("a rewrite decided on an older stock writes nothing, neither reminders nor choices", async () => {
      const w = await world(store());
      await cooked(w, { reminders: [reminder("kept")] });
      const { reminders, members, meals } = store().stores;
      const meal = {
        id: slotRuleId("m"),
        name: "Tea",
        weekdays: [7],
        time: time("17:00"),
        portions: 1,
      };
      const stale = {
        memberId: w.member.id,
        version: 0,
        now: NOW,
        reminders: [reminder("stale")],
        replanAt: later(1),
        choice: { morning: time("06:00") },
        deliverTo: "channel" as const,
        meals: [meal],
      };
      expect(await reminders.replan(stale)).toBe("moved on");
      expect(await comingKeys(w)).toEqual(["kept"]);
      expect(await meals.list(w.member.id)).toEqual([]);
      // The cooking wrote reminders, and nothing else of the member.
      expect(await members.find(w.member.id)).toEqual({ ...w.member, planVersion: 1 });
      expect(await store().deliveries.toReplan(later(1), 10)).toEqual([]);
      expect(await reminders.replan({ ...stale, version: 1 })).toBe("recorded");
      expect(await comingKeys(w)).toEqual(["stale"]);
    });

    test("a rewrite racing with a change of the stock never overwrites the change's reminders", async () => {
      for (let round = 0; round < 10; round++) {
        const w = await world(store(), `r${round}`);
        const stale = Array.from({ length: 3 }, () => remind(w, [reminder("stale")]));
        const results = await Promise.all([
          ...stale.slice(0, round % 3),
          cooked(w, { reminders: [reminder("fresh")] }).then(() => "cooked"),
          ...stale.slice(round % 3),
        ]);
        expect(results).toContain("cooked");
        expect(await comingKeys(w)).toEqual(["fresh"]);
      }
    });

    test("rewrites of one version at once leave the whole set of one of them", async () => {
      const w = await world(store());
      const sets = Array.from({ length: 6 }, (_, i) => [reminder(`x${i}`), reminder(`y${i}`)]);
      const results = await Promise.allSettled(sets.map((set) => remind(w, set)));
      expect(results.some(({ status }) => status === "fulfilled")).toBe(true);
      const keys = (await comingKeys(w)).toSorted();
      expect(sets.map((set) => set.map(({ key }) => key))).toContainEqual(keys);
    });

    test("after any series of rewrites the scheduled rows are the last derived set", async () => {
      const w = await world(store());
      const one = fc.record({
        key: fc.constantFrom(..."abcdefgh"),
        due: fc.integer({ min: 1, max: 500 }),
      });
      const set = fc.uniqueArray(one, { selector: ({ key }) => key, maxLength: 8 });
      await fc.assert(
        fc.asyncProperty(fc.array(set, { minLength: 1, maxLength: 4 }), async (series) => {
          let last: readonly DerivedReminder[] = [];
          for (const each of series) {
            last = each.map(({ key, due }) => reminder(key, { dueAt: later(due) }));
            expect(await remind(w, last)).toBe("recorded");
          }
          const rows = await store().stores.reminders.coming(w.member.id, 100);
          const seen = rows.map(({ key, dueAt }) => `${key} ${dueAt}`);
          const wanted = last.map(({ key, dueAt }) => `${key} ${dueAt}`);
          expect(seen.toSorted()).toEqual(wanted.toSorted());
        }),
        { numRuns: 25 },
      );
    });

    test("hundreds of reminders are rewritten in one go", async () => {
      const w = await world(store());
      const many = (from: number) =>
        Array.from({ length: 700 }, (_, i) => reminder(`k${from + i}`));
      await remind(w, many(0));
      await remind(w, many(350));
      const keys = new Set(await comingKeys(w));
      expect(keys).toEqual(new Set(many(350).map(({ key }) => key)));
    });
  });
}
