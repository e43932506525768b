import { describe, expect, test } from "vitest";
import { replanMember } from "../../../../commands/kit/plan.ts";
import { memberId } from "../../../../shared/ids.ts";
import type { Given } from "../contract.ts";
import { cooked, later, NOW, remind, reminder, type World, world } from "../kit.ts";

const lease = (worker: string) => ({ worker, now: NOW, leaseUntil: later(2) });

/** Two reminders of a member, as a delivery under that nonce. */
async function delivery(w: World, nonce: string) {
  await remind(
    w,
    ["a", "b"].map((key) => reminder(key, { dueAt: NOW })),
  );
  const rows = await w.store.stores.reminders.coming(w.member.id, 2);
  return { nonce, ids: rows.map(({ id }) => id) };
}

export function newClaimContract({ store, isShared }: Given): void {
  describe("claims of several new deliveries in one statement", () => {
    test("each row comes under the nonce of its delivery, with the plan it followed from", async () => {
      const [one, two] = [await world(store(), "one"), await world(store(), "two")];
      const fresh = [await delivery(one, "n1"), await delivery(two, "n2")];
      await replanMember(store().stores, two.member, NOW);
      const again = await delivery(two, "n2");
      const { deliveries, stores } = store();
      const claimed = await deliveries.claimNew({
        fresh: [...fresh.slice(0, 1), again],
        ...lease("w"),
      });
      expect(claimed.rows).toHaveLength(4);
      for (const row of claimed.rows) {
        const nonce = row.memberId === one.member.id ? "n1" : "n2";
        expect(row).toMatchObject({ state: "claimed", attempts: 1, nonce });
      }
      for (const { member } of [one, two]) {
        const now = await stores.members.find(member.id);
        expect(claimed.planVersions.get(member.id)).toBe(now?.planVersion);
      }
      expect(await deliveries.due(later(1), later(31), 10)).toEqual([]);
      const result = { state: "sent", messageId: "m", where: "channel" } as const;
      expect(await deliveries.settle({ nonce: "n1", worker: "w", at: NOW, result })).toBe(true);
    });

    test("of several workers only one gets a row, and nobody one that was claimed before", async () => {
      const worlds = await Promise.all(["a", "b", "c"].map((name) => world(store(), name)));
      const fresh: Awaited<ReturnType<typeof delivery>>[] = [];
      for (const [n, w] of worlds.entries()) fresh.push(await delivery(w, `n${n}`));
      const { deliveries } = store();
      const tries = await Promise.all(
        ["w1", "w2", "w3", "w4"].map((worker) => deliveries.claimNew({ fresh, ...lease(worker) })),
      );
      const ids = tries.flatMap(({ rows }) => rows.map(({ id }) => id));
      expect(ids.toSorted()).toEqual(fresh.flatMap((one) => one.ids).toSorted());
      const late = { worker: "w9", now: later(9), leaseUntil: later(11) };
      expect((await deliveries.claimNew({ fresh, ...late })).rows).toEqual([]);
    });

    test("only the rows of a delivery that are named are settled", async () => {
      const w = await world(store());
      const { deliveries, stores } = store();
      const fresh = await delivery(w, "n");
      await deliveries.claimNew({ fresh: [fresh], ...lease("w") });
      const [first, second] = fresh.ids;
      if (first === undefined || second === undefined) throw new Error("two were scheduled");
      const late = { state: "expired", reason: "late" } as const;
      const settle = { nonce: "n", worker: "w", at: NOW };
      expect(await deliveries.settle({ ...settle, ids: [second], result: late })).toBe(true);
      expect(await stores.reminders.find(first)).toMatchObject({ state: "claimed" });
      expect(await stores.reminders.find(second)).toMatchObject({ state: "expired" });
    });
  });

  describe("the workers that send at a time", () => {
    test("are counted while they hold something; on a file there is one", async () => {
      const [one, two] = [await world(store(), "one"), await world(store(), "two")];
      const { deliveries, upkeep } = store();
      await deliveries.claimNew({ fresh: [await delivery(one, "n1")], ...lease("w1") });
      await deliveries.claimNew({ fresh: [await delivery(two, "n2")], ...lease("w2") });
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
      expect(one).toMatchObject({ member, group });
      expect(String(one?.replanAt)).toBe(String(later(90)));
    });
  });
}
