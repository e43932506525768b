import { describe, expect, test } from "vitest";
import { replanMember } from "../../../../commands/kit/plan.ts";
import { memberId } from "../../../../shared/ids.ts";
import { messagesOf } from "../../../../shared/reminder/group.ts";
import type { Instant } from "../../../../shared/time.ts";
import { claimDue } from "../claim-kit.ts";
import type { Given } from "../contract.ts";
import { cooked, later, NOW, remind, reminder, type World, world } from "../kit.ts";

const lease = (worker: string) => ({ worker, leaseUntil: later(2) });

/** Two reminders of a member, due at that instant. */
function twoDue(w: World, dueAt: Instant = NOW) {
  return remind(
    w,
    ["a", "b"].map((key) => reminder(key, { dueAt })),
  );
}

export function newClaimContract({ store, isShared }: Given): void {
  const next = (now: Instant, until: Instant, limit: number, worker = "w") =>
    store().deliveries.claimNext({ ...lease(worker), now, until, limit });

  describe("the claim of what was never tried", () => {
    test("a member with something due brings what falls due by the later instant, others wait", async () => {
      const [a, b] = [await world(store(), "a"), await world(store(), "b")];
      await remind(a, [
        reminder("now", { dueAt: NOW }),
        reminder("soon", { dueAt: later(20) }),
        reminder("at the edge", { dueAt: later(30) }),
        reminder("later", { dueAt: later(31) }),
      ]);
      await remind(b, [reminder("soon", { dueAt: later(20) })]);
      expect((await next(later(-1), later(30), 100)).rows).toEqual([]);
      const { rows } = await next(NOW, later(30), 100);
      expect(rows.map((row) => [row.memberId, row.key])).toEqual([
        [a.member.id, "now"],
        [a.member.id, "soon"],
        [a.member.id, "at the edge"],
      ]);
      expect((await next(NOW, later(30), 100)).rows).toEqual([]);
    });

    test("at most as many members as the limit says, who waits longest first, each with all that is due", async () => {
      const names = ["a", "b", "c", "d"];
      const worlds = await Promise.all(names.map((name) => world(store(), name)));
      await Promise.all(worlds.map((w, i) => twoDue(w, later(-10 + i))));
      const order: string[] = [];
      for (const limit of [1, 2, 9]) {
        const { rows } = await next(NOW, NOW, limit);
        const members = [...new Set(rows.map((row) => row.memberId))];
        expect(members.length).toBeLessThanOrEqual(limit);
        expect(rows).toHaveLength(members.length * 2);
        order.push(...members);
      }
      expect(order).toEqual(worlds.map(({ member }) => member.id));
      expect((await next(NOW, NOW, 9)).rows).toEqual([]);
    });

    test("each message has a nonce of its own, with the attempt counted and the plan it followed from", async () => {
      const [one, two] = [await world(store(), "one"), await world(store(), "two")];
      await twoDue(one);
      await twoDue(two);
      const { stores, deliveries } = store();
      await replanMember(stores, two.member, NOW);
      await twoDue(two);
      const { rows, planVersions } = await next(NOW, NOW, 9);
      const messages = messagesOf(rows);
      expect(messages.map((message) => message.rows.length)).toEqual([2, 2]);
      expect(new Set(messages.map(({ memberId }) => memberId)).size).toBe(2);
      for (const row of rows) expect(row).toMatchObject({ state: "claimed", attempts: 1 });
      // The platform takes no longer ones (resources/message).
      for (const { nonce } of messages) expect(nonce).toMatch(/^r[0-9a-f]{24}$/u);
      for (const { member } of [one, two]) {
        const now = await stores.members.find(member.id);
        expect(planVersions.get(member.id)).toBe(now?.planVersion);
      }
      for (const { nonce, rows: own } of messages) {
        const result = { state: "sent", messageId: "m", where: "channel" } as const;
        const ids = own.map(({ id }) => id);
        expect(await deliveries.settle({ nonce, ids, worker: "w", at: NOW, result })).toBe(true);
      }
    });

    test("of several workers only one gets a row, and nobody one that was claimed before", async () => {
      const worlds = await Promise.all(["a", "b", "c"].map((name) => world(store(), name)));
      for (const w of worlds) await twoDue(w);
      const workers = ["w1", "w2", "w3", "w4"];
      const held = await Promise.all(workers.map((worker) => claimDue(store(), { worker })));
      const ids = held.flat().map(({ id }) => id);
      expect(ids).toHaveLength(6);
      expect(new Set(ids).size).toBe(6);
      expect(await claimDue(store(), { worker: "w9", due: later(9) })).toEqual([]);
    });
  });

  describe("the workers that send at a time", () => {
    test("are counted while they hold something; on a file there is one", async () => {
      const [one, two] = [await world(store(), "one"), await world(store(), "two")];
      const { deliveries, upkeep } = store();
      await twoDue(one);
      await claimDue(store(), { worker: "w1" });
      await twoDue(two);
      await claimDue(store(), { worker: "w2" });
      const counted = await Promise.all(["w1", "w3"].map((one) => deliveries.others(one, NOW)));
      expect(counted).toEqual(isShared ? [1, 2] : [0, 0]);
      expect(await deliveries.others("w3", later(2))).toBe(0);
      await upkeep.giveBack("w1", NOW);
      expect(await deliveries.others("w3", NOW)).toBe(isShared ? 1 : 0);
    });
  });

  describe("the recipients of messages", () => {
    test("come with their group and with when their reminders are derived anew; who is gone does not", async () => {
      const w = await world(store());
      await cooked(w, { replanAt: later(90) });
      const { deliveries, stores } = store();
      const member = await stores.members.find(w.member.id);
      const group = await deliveries.group(w.member.id);
      const ids = [w.member.id, memberId("nobody"), w.member.id];
      const found = await deliveries.recipients(ids);
      expect([...found.keys()]).toEqual([w.member.id]);
      const one = found.get(w.member.id);
      if (one === undefined || one === "unreadable") throw new Error("it can be read");
      expect(one).toMatchObject({ member, group });
      expect(String(one.replanAt)).toBe(String(later(90)));
    });
  });
}
