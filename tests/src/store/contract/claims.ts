import { describe, expect, test } from "vitest";
import type { ReminderId } from "../../../../shared/ids.ts";
import type { Instant } from "../../../../shared/time.ts";
import type { Store } from "../../../../src/store/open.ts";
import type { Given } from "../contract.ts";
import { later, NOW, remind, reminder, type World, world } from "../kit.ts";

const SENT = { state: "sent", messageId: "m1", where: "channel" } as const;

/** A member with this many reminders due now, and their ids. */
async function waiting(store: Store, count: number): Promise<World & { ids: ReminderId[] }> {
  const w = await world(store);
  await remind(
    w,
    Array.from({ length: count }, (_, i) => reminder(`k${i}`, { dueAt: NOW })),
  );
  const rows = await store.stores.reminders.coming(w.member.id, count);
  return { ...w, ids: rows.map(({ id }) => id) };
}

function lease(nonce: string, worker: string, now: Instant = NOW) {
  return { nonce, worker, now, leaseUntil: now.add({ minutes: 2 }) };
}

export function claimContract({ store, restart }: Given): void {
  describe("claims", () => {
    test("a claim counts the attempt and gives the rows it now holds", async () => {
      const { ids } = await waiting(store(), 2);
      const held = await store().deliveries.claim({ ids, ...lease("n", "w") });
      expect(held.map(({ id }) => id).toSorted()).toEqual(ids.toSorted());
      for (const row of held) {
        expect(row).toMatchObject({ state: "claimed", attempts: 1, nonce: "n" });
      }
      expect(await store().deliveries.due(later(1), later(31), 10)).toEqual([]);
    });

    test("of two workers only one holds a row, under whatever nonce", async () => {
      const { ids } = await waiting(store(), 1);
      const { deliveries } = store();
      const tries = ["n", "n", "other", "other"].map((nonce, i) =>
        deliveries.claim({ ids, ...lease(nonce, `w${i}`) }),
      );
      const held = await Promise.all(tries);
      expect(held.flat()).toHaveLength(1);
      expect(await deliveries.claim({ ids, ...lease("n", "w9") })).toEqual([]);
    });

    test("a lease that ran out is taken over only under the same nonce, with the attempt counted", async () => {
      const { ids } = await waiting(store(), 3);
      const { deliveries } = store();
      await deliveries.claim({ ids, ...lease("n", "w1") });
      expect(await deliveries.claim({ ids, ...lease("other", "w2", later(3)) })).toEqual([]);
      const due = await deliveries.due(later(2), later(32), 10);
      expect(due.map(({ nonce }) => nonce)).toEqual(["n", "n", "n"]);
      const first = ids.slice(0, 1);
      const held = await deliveries.claim({ ids: first, ...lease("n", "w2", later(2)) });
      expect(held.map(({ attempts }) => attempts)).toEqual([2, 2, 2]);
    });

    test("only who holds a delivery settles it, and only once", async () => {
      const { ids } = await waiting(store(), 2);
      const { deliveries, stores } = store();
      await deliveries.claim({ ids, ...lease("n", "w1") });
      const settle = { nonce: "n", at: later(1), result: SENT };
      expect(await deliveries.settle({ ...settle, worker: "w2" })).toBe(false);
      expect(await deliveries.settle({ ...settle, nonce: "m", worker: "w1" })).toBe(false);
      expect(await deliveries.settle({ ...settle, worker: "w1" })).toBe(true);
      expect(await deliveries.settle({ ...settle, worker: "w1" })).toBe(false);
      const rows = await Promise.all(ids.map((id) => stores.reminders.find(id)));
      expect(rows.map((row) => row?.state)).toEqual(["sent", "sent"]);
      expect(await deliveries.claim({ ids, ...lease("n", "w1", later(60)) })).toEqual([]);
      expect(await deliveries.expire(ids, later(60), "late")).toBe(0);
    });

    test("a worker whose delivery was taken over no longer settles it", async () => {
      const { ids } = await waiting(store(), 1);
      const { deliveries } = store();
      await deliveries.claim({ ids, ...lease("n", "w1") });
      await deliveries.claim({ ids, ...lease("n", "w2", later(5)) });
      const settle = { nonce: "n", at: later(6), result: SENT };
      expect(await deliveries.settle({ ...settle, worker: "w1" })).toBe(false);
      expect(await deliveries.settle({ ...settle, worker: "w2" })).toBe(true);
    });

    test("a retry waits until its instant and keeps its nonce", async () => {
      const { ids, member } = await waiting(store(), 1);
      const { deliveries, stores } = store();
      await deliveries.claim({ ids, ...lease("n", "w1") });
      const result = { state: "retry", retryAt: later(10), reason: "unknown" } as const;
      const retry = { nonce: "n", worker: "w1", at: NOW, result };
      expect(await deliveries.settle(retry)).toBe(true);
      expect(await deliveries.settle(retry)).toBe(false);
      expect(await deliveries.due(later(9), later(9), 10)).toEqual([]);
      expect(await deliveries.claim({ ids, ...lease("n", "w2", later(9)) })).toEqual([]);
      expect(String(await deliveries.nextDue())).toBe(String(later(10)));
      expect(await stores.reminders.coming(member.id, 9)).toMatchObject([{ state: "claimed" }]);
      expect(await deliveries.claim({ ids, ...lease("n", "w2", later(10)) })).toMatchObject([
        { attempts: 2, nonce: "n" },
      ]);
    });

    test("what comes too late expires, unless somebody is at it", async () => {
      const { ids } = await waiting(store(), 3);
      const { deliveries, stores } = store();
      const [held, ...rest] = ids;
      await deliveries.claim({ ids: held === undefined ? [] : [held], ...lease("n", "w1") });
      expect(await deliveries.expire(ids, later(1), "too late")).toBe(2);
      const states = await Promise.all(rest.map((id) => stores.reminders.find(id)));
      expect(states.map((row) => row?.state)).toEqual(["expired", "expired"]);
      expect(await deliveries.expire(ids, later(2), "too late")).toBe(1);
      expect(await deliveries.settle({ nonce: "n", worker: "w1", at: NOW, result: SENT })).toBe(
        false,
      );
    });

    test("a delivery can end as expired when the member was told so", async () => {
      const { ids } = await waiting(store(), 1);
      const { deliveries } = store();
      await deliveries.claim({ ids, ...lease("n", "w1") });
      const result = { state: "expired", reason: "told late" } as const;
      expect(await deliveries.settle({ nonce: "n", worker: "w1", at: NOW, result })).toBe(true);
      expect(await deliveries.due(later(99), later(99), 10)).toEqual([]);
    });

    test("a restart between claim and settle loses nothing: the rows come back under their nonce", async () => {
      const { ids } = await waiting(store(), 2);
      await store().deliveries.claim({ ids, ...lease("n", "before") });
      const { deliveries } = await restart();
      expect(await deliveries.due(later(1), later(31), 10)).toEqual([]);
      const back = await deliveries.due(later(2), later(32), 10);
      expect(back.map(({ nonce, attempts }) => [nonce, attempts])).toEqual([
        ["n", 1],
        ["n", 1],
      ]);
      expect(await deliveries.claim({ ids, ...lease("n", "after", later(2)) })).toHaveLength(2);
      const settle = { nonce: "n", worker: "after", at: later(3), result: SENT };
      expect(await deliveries.settle(settle)).toBe(true);
      const again = await restart();
      expect(await again.deliveries.due(later(99), later(99), 10)).toEqual([]);
    });

    test("ten thousand due rows are claimed by four workers without overlap", async () => {
      const total = 10_000;
      const { member } = await waiting(store(), total);
      const { deliveries } = store();
      const seen: ReminderId[] = [];
      const work = async (worker: string): Promise<void> => {
        for (let round = 0; ; round++) {
          const due = await deliveries.due(NOW, NOW, 250);
          if (due.length === 0) return;
          const ids = due.map(({ id }) => id);
          const held = await deliveries.claim({ ids, ...lease(`${worker}.${round}`, worker) });
          seen.push(...held.map(({ id }) => id));
        }
      };
      await Promise.all(["a", "b", "c", "d"].map(work));
      expect(seen).toHaveLength(total);
      expect(new Set(seen).size).toBe(total);
      const rows = await store().stores.reminders.coming(member.id, total);
      expect(rows.every(({ attempts }) => attempts === 1)).toBe(true);
    });
  });
}
