import { describe, expect, test } from "vitest";
import { replanMember } from "../../../../commands/kit/plan.ts";
import type { Stores } from "../../../../commands/kit/ports.ts";
import { reminderId, slotRuleId } from "../../../../shared/ids.ts";
import { time } from "../../../kit/stock.ts";
import { claimDue, messageOf } from "../claim-kit.ts";
import type { Given } from "../contract.ts";
import {
  cooked,
  cooking,
  eating,
  later,
  NOW,
  remind,
  reminder,
  type World,
  world,
} from "../kit.ts";

const SENT = { state: "sent", messageId: "m", where: "direct message" } as const;

const lunch = {
  id: slotRuleId("lunch"),
  name: "lunch",
  weekdays: [1, 2, 3, 4, 5, 6, 7],
  time: time("12:30"),
  portions: 1,
};

/** The rows of the keys, told in one message. Nothing else is scheduled. */
async function told(w: World, ...keys: readonly string[]) {
  await remind(
    w,
    keys.map((key) => reminder(key)),
  );
  const { nonce, ids } = messageOf(await claimDue(w.store, { due: later(60), at: NOW }));
  await w.store.deliveries.settle({ nonce, ids, worker: "w", at: NOW, result: SENT });
  const [first = reminderId("")] = ids;
  return w.store.stores.reminders.together(first);
}

async function coming(w: World) {
  const rows = await w.store.stores.reminders.coming(w.member.id, 100);
  return rows.map(({ key, dueAt }) => `${key} ${dueAt}`);
}

export function momentContract({ store }: Given): void {
  describe("reminders that come again", () => {
    test("what was told in one message is found by any of its rows, and nothing else", async () => {
      const w = await world(store());
      const rows = await told(w, "a", "b");
      expect(rows.map(({ key, state }) => [key, state])).toEqual([
        ["a", "sent"],
        ["b", "sent"],
      ]);
      const [, b] = rows;
      expect(await store().stores.reminders.together(b?.id ?? reminderId(""))).toEqual(rows);
      await remind(w, [reminder("c")]);
      const [c] = await store().stores.reminders.coming(w.member.id, 1);
      expect(await store().stores.reminders.together(c?.id ?? reminderId(""))).toEqual([]);
      expect(await store().stores.reminders.together(reminderId("none"))).toEqual([]);
    });

    test("they are scheduled once each, a later press moves them, and a rewrite leaves them", async () => {
      const w = await world(store());
      const rows = await told(w, "a", "b");
      const { reminders } = store().stores;
      await Promise.all([1, 2, 3].map(() => reminders.again(rows, later(30))));
      const waiting = await reminders.again(rows, later(40));
      expect(
        waiting.map(({ dueAt, state, nonce, attempts }) => [String(dueAt), state, nonce, attempts]),
      ).toEqual(rows.map(() => [String(later(40)), "scheduled", null, 0]));
      const before = await coming(w);
      expect(before).toHaveLength(2);
      await remind(w, []);
      expect(await coming(w)).toEqual(before);
      await remind(w, [reminder("a"), reminder("b")]);
      expect(await coming(w)).toEqual(before);
    });

    test("what came again is not scheduled anew", async () => {
      const w = await world(store());
      const rows = await told(w, "a");
      const { stores, deliveries } = store();
      await stores.reminders.again(rows, NOW);
      const { nonce, ids } = messageOf(await claimDue(store()));
      expect(await stores.reminders.again(rows, later(60))).toEqual([]);
      await deliveries.settle({ nonce, ids, worker: "w", at: NOW, result: SENT });
      expect(await stores.reminders.again(rows, later(60))).toEqual([]);
      expect(await coming(w)).toEqual([]);
    });
  });

  describe("the withdrawal of rows that are held", () => {
    test("lets go of those named, by who holds them, and frees their key", async () => {
      const w = await world(store());
      await remind(w, [reminder("a"), reminder("b")]);
      const { stores, deliveries } = store();
      const rows = await claimDue(store(), { due: later(60), at: NOW });
      const { nonce } = messageOf(rows);
      const gone = rows.filter(({ key }) => key === "a");
      const withdraw = { rows: gone, nonce, worker: "w", at: NOW, reason: "gone" };
      expect(await deliveries.withdraw({ ...withdraw, worker: "other" })).toBe(0);
      expect(await deliveries.withdraw({ ...withdraw, nonce: "other" })).toBe(0);
      expect(await deliveries.withdraw(withdraw)).toBe(1);
      expect(await deliveries.withdraw(withdraw)).toBe(0);
      const [a] = gone;
      expect(await stores.reminders.find(a?.id ?? reminderId(""))).toMatchObject({
        state: "expired",
      });
      expect(await coming(w)).toHaveLength(1);
      await remind(w, [reminder("a"), reminder("b")]);
      expect((await coming(w)).map((one) => one.split(" ")[0])).toEqual(["a", "b"]);
    });
  });

  describe("a write decided on older times or meals", () => {
    test("writes nothing: neither a rewrite nor a change of the stock", async () => {
      const w = await world(store());
      const { members, reminders, stocks } = store().stores;
      const lot = await cooked(w, { reminders: [reminder("cooked")] });
      const { planVersion } = (await members.find(w.member.id)) ?? w.member;
      const change = { memberId: w.member.id, version: 1, now: NOW, replanAt: null };
      const meals = { ...change, reminders: [reminder("new meals")], meals: [lunch] };
      expect(await reminders.replan({ ...meals, planVersion })).toBe("recorded");
      const stale = { ...change, planVersion, reminders: [reminder("old meals")] };
      expect(await reminders.replan(stale)).toBe("moved on");
      const eaten = { ...eating(w, lot, 2, "ate"), planVersion };
      expect(await stocks.record(eaten)).toBe("moved on");
      expect((await coming(w)).map((one) => one.split(" ").slice(0, -1).join(" "))).toEqual([
        "new meals",
      ]);
      expect((await stocks.load(w.member.id)).version).toBe(1);
      expect(await stocks.record({ ...eaten, planVersion: planVersion + 1 })).toBe("recorded");
    });

    test("is decided anew: a change of meals in the middle of a derivation is not overwritten", async () => {
      const w = await world(store());
      const { stores } = store();
      await stores.stocks.record(cooking(w, { version: 1, cause: "cook" }));
      let interrupted = 0;
      const meddling: Stores = {
        ...stores,
        meals: {
          ...stores.meals,
          wishes: async (id) => {
            const wishes = await stores.meals.wishes(id);
            interrupted += 1;
            // After the meals were read and before what follows from them is written.
            if (interrupted === 1) await replanMember(stores, w.member, NOW, { meals: [lunch] });
            return wishes;
          },
        },
      };
      await replanMember(meddling, w.member, NOW);
      const after = await coming(w);
      expect(interrupted).toBeGreaterThan(1);
      // Without a meal nothing is surplus; with one lunch a day some of it is.
      expect(after.join()).toMatch(/freeze\//u);
      await replanMember(stores, w.member, NOW);
      expect(await coming(w)).toEqual(after);
    });
  });
}
