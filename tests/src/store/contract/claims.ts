import { describe, expect, test } from "vitest";
import type { ReminderId } from "../../../../shared/ids.ts";
import { messagesOf } from "../../../../shared/reminder/group.ts";
import type { ReminderRow } from "../../../../shared/reminder/types.ts";
import type { Instant } from "../../../../shared/time.ts";
import type { Store } from "../../../../src/store/open.ts";
import { claimDue, messageOf } from "../claim-kit.ts";
import type { Given } from "../contract.ts";
import { later, NOW, remind, reminder, world } from "../kit.ts";

const SENT = { state: "sent", messageId: "m1", where: "channel" } as const;

/** A message of so many reminders of a member, due now, that a worker has claimed. */
async function held(store: Store, count: number, worker = "w1") {
  const w = await world(store);
  await remind(
    w,
    Array.from({ length: count }, (_, i) => reminder(`k${i}`, { dueAt: NOW })),
  );
  const message = messageOf(await claimDue(store, { worker }));
  return { ...message, w, settle: { nonce: message.nonce, ids: message.ids } };
}

function lease(worker: string, now: Instant) {
  return { worker, now, leaseUntil: now.add({ minutes: 2 }) };
}

async function statesOf(store: Store, ids: readonly ReminderId[]) {
  const rows = await Promise.all(ids.map((id) => store.stores.reminders.find(id)));
  return rows.map((row) => row?.state);
}

export function claimContract({ store, restart }: Given): void {
  describe("an abandoned message", () => {
    test("is seen once its lease has run out, and claimed again with all its rows, the attempt counted", async () => {
      const { ids, memberId, nonce } = await held(store(), 3);
      const { deliveries } = store();
      expect(await deliveries.abandoned(later(1), 10)).toEqual([]);
      const early = { memberId, nonce, ...lease("w2", later(1)) };
      expect(await deliveries.claimAgain(early)).toEqual([]);
      const seen = await deliveries.abandoned(later(2), 10);
      expect(seen.map((row) => [row.nonce, row.attempts])).toEqual(Array(3).fill([nonce, 1]));
      const again = { memberId, nonce, ...lease("w2", later(2)) };
      expect(await deliveries.claimAgain({ ...again, nonce: "other" })).toEqual([]);
      const rows = await deliveries.claimAgain(again);
      expect(rows.map(({ id }) => id).toSorted()).toEqual(ids.toSorted());
      for (const row of rows) {
        expect(row).toMatchObject({ state: "claimed", attempts: 2, nonce });
      }
      expect(await deliveries.abandoned(later(3), 10)).toEqual([]);
    });

    test("goes to one of several workers, whole", async () => {
      const { memberId, nonce } = await held(store(), 2);
      const { deliveries } = store();
      const tries = ["w2", "w3", "w4"].map((worker) =>
        deliveries.claimAgain({ memberId, nonce, ...lease(worker, later(2)) }),
      );
      const rows = await Promise.all(tries);
      expect(rows.map(({ length }) => length).toSorted()).toEqual([0, 0, 2]);
    });

    test("is never claimed as a new one, nor joined by what falls due for the same member", async () => {
      const { memberId, nonce, w } = await held(store(), 1);
      await remind(w, [reminder("more", { dueAt: later(1) })]);
      const fresh = await claimDue(store(), { worker: "w2", due: later(9) });
      expect(fresh.map(({ key }) => key)).toEqual(["more"]);
      expect(fresh[0]?.nonce).not.toBe(nonce);
      const again = { memberId, nonce, ...lease("w3", later(20)) };
      expect((await store().deliveries.claimAgain(again)).map(({ key }) => key)).toEqual(["k0"]);
    });

    test("is among at most the limit, the one that waits longest first", async () => {
      const [a, b] = [await world(store(), "a"), await world(store(), "b")];
      await remind(a, [reminder("a", { dueAt: NOW })]);
      await claimDue(store(), { at: later(5) });
      await remind(b, [reminder("b", { dueAt: NOW })]);
      await claimDue(store(), { at: later(4) });
      const seen = async (limit: number) =>
        (await store().deliveries.abandoned(later(9), limit)).map(({ key }) => key);
      expect(await seen(1)).toEqual(["b"]);
      expect(await seen(9)).toEqual(["b", "a"]);
    });
  });

  describe("the end of a delivery", () => {
    test("only who holds it settles it, and only once", async () => {
      const { ids, settle, memberId, nonce } = await held(store(), 2);
      const { deliveries } = store();
      const end = { ...settle, at: later(1), result: SENT };
      expect(await deliveries.settle({ ...end, worker: "w2" })).toBe(false);
      expect(await deliveries.settle({ ...end, nonce: "m", worker: "w1" })).toBe(false);
      expect(await deliveries.settle({ ...end, worker: "w1" })).toBe(true);
      expect(await deliveries.settle({ ...end, worker: "w1" })).toBe(false);
      expect(await statesOf(store(), ids)).toEqual(["sent", "sent"]);
      const again = { memberId, nonce, ...lease("w1", later(60)) };
      expect(await deliveries.claimAgain(again)).toEqual([]);
      expect(await claimDue(store(), { due: later(60) })).toEqual([]);
    });

    test("a worker whose delivery was taken over no longer settles it", async () => {
      const { settle, memberId, nonce } = await held(store(), 1);
      const { deliveries } = store();
      await deliveries.claimAgain({ memberId, nonce, ...lease("w2", later(5)) });
      const end = { ...settle, at: later(6), result: SENT };
      expect(await deliveries.settle({ ...end, worker: "w1" })).toBe(false);
      expect(await deliveries.settle({ ...end, worker: "w2" })).toBe(true);
    });

    test("a retry waits until its instant and keeps its nonce", async () => {
      const { settle, memberId, nonce, w } = await held(store(), 1);
      const { deliveries, stores } = store();
      const result = { state: "retry", retryAt: later(10), reason: "unknown" } as const;
      const retry = { ...settle, worker: "w1", at: NOW, result };
      expect(await deliveries.settle(retry)).toBe(true);
      expect(await deliveries.settle(retry)).toBe(false);
      expect(await deliveries.abandoned(later(9), 10)).toEqual([]);
      const again = (at: Instant) => deliveries.claimAgain({ memberId, nonce, ...lease("w2", at) });
      expect(await again(later(9))).toEqual([]);
      expect(String(await deliveries.nextDue())).toBe(String(later(10)));
      expect(await stores.reminders.coming(w.member.id, 9)).toMatchObject([{ state: "claimed" }]);
      expect(await again(later(10))).toMatchObject([{ attempts: 2, nonce }]);
    });

    test("waiting for the member is no try: it is taken back, and an earlier one still counts", async () => {
      const { settle, memberId, nonce } = await held(store(), 1);
      const { deliveries } = store();
      const wait = { ...settle, worker: "w1", at: NOW };
      expect(
        await deliveries.settle({ ...wait, result: { state: "waits", until: later(30) } }),
      ).toBe(true);
      expect(await deliveries.abandoned(later(29), 10)).toEqual([]);
      const again = (at: Instant) => deliveries.claimAgain({ memberId, nonce, ...lease("w1", at) });
      expect(await again(later(30))).toMatchObject([{ attempts: 1, nonce }]);
      const result = { state: "retry", retryAt: later(40), reason: "error 500" } as const;
      await deliveries.settle({ ...wait, result });
      expect(await again(later(40))).toMatchObject([{ attempts: 2 }]);
      await deliveries.settle({ ...wait, result: { state: "waits", until: later(90) } });
      expect(await again(later(90))).toMatchObject([{ attempts: 2 }]);
    });

    test("only the rows that are named are settled", async () => {
      const { ids, settle } = await held(store(), 2);
      const result = { state: "expired", reason: "late" } as const;
      const end = { ...settle, ids: ids.slice(1), worker: "w1", at: NOW, result };
      expect(await store().deliveries.settle(end)).toBe(true);
      expect(await statesOf(store(), ids)).toEqual(["claimed", "expired"]);
    });

    test("a delivery can end as expired when the member was told so", async () => {
      const { settle } = await held(store(), 1);
      const result = { state: "expired", reason: "told late" } as const;
      const end = { ...settle, worker: "w1", at: NOW, result };
      expect(await store().deliveries.settle(end)).toBe(true);
      expect(await store().deliveries.abandoned(later(99), 10)).toEqual([]);
    });
  });

  test("a restart between claim and settle loses nothing: the rows come back under their nonce", async () => {
    const { settle, memberId, nonce } = await held(store(), 2, "before");
    const { deliveries } = await restart();
    expect(await deliveries.abandoned(later(1), 10)).toEqual([]);
    const back = await deliveries.abandoned(later(2), 10);
    expect(back.map((row) => [row.nonce, row.attempts])).toEqual([
      [nonce, 1],
      [nonce, 1],
    ]);
    const again = { memberId, nonce, ...lease("after", later(2)) };
    expect(await deliveries.claimAgain(again)).toHaveLength(2);
    const end = { ...settle, worker: "after", at: later(3), result: SENT };
    expect(await deliveries.settle(end)).toBe(true);
    const once = await restart();
    expect(await once.deliveries.abandoned(later(99), 10)).toEqual([]);
    expect(await claimDue(once, { due: later(99) })).toEqual([]);
  });

  test("ten thousand due rows are claimed by four workers without overlap", async () => {
    const total = 10_000;
    const w = await world(store());
    await remind(
      w,
      Array.from({ length: total }, (_, i) => reminder(`k${i}`, { dueAt: NOW })),
    );
    const work = (worker: string): Promise<readonly ReminderRow[]> => claimDue(store(), { worker });
    const seen = (await Promise.all(["a", "b", "c", "d"].map(work))).flat();
    expect(seen).toHaveLength(total);
    expect(new Set(seen.map(({ id }) => id)).size).toBe(total);
    const rows = await store().stores.reminders.coming(w.member.id, total);
    expect(rows.every(({ attempts }) => attempts === 1)).toBe(true);
    // What goes into one message is bounded, and no two messages go under one nonce.
    const messages = messagesOf(seen);
    expect(messages.map((one) => one.rows.length)).toEqual(Array(total / 200).fill(200));
  });
}
