import { describe, expect, test } from "vitest";
import type { Given } from "../contract.ts";
import { cooked, later, NOW, remind, reminder, world } from "../kit.ts";

export function timingContract({ store }: Given): void {
  describe("what is due", () => {
    test("a member with something due brings what falls due by the later instant, others wait", async () => {
      const a = await world(store(), "a");
      const b = await world(store(), "b");
      await remind(a, [
        reminder("now", { dueAt: NOW }),
        reminder("soon", { dueAt: later(20) }),
        reminder("at the edge", { dueAt: later(30) }),
        reminder("later", { dueAt: later(31) }),
      ]);
      await remind(b, [reminder("soon", { dueAt: later(20) })]);
      const due = await store().deliveries.due(NOW, later(30), 100);
      expect(due.map(({ memberId, key }) => [memberId, key])).toEqual([
        [a.member.id, "now"],
        [a.member.id, "soon"],
        [a.member.id, "at the edge"],
      ]);
      expect(await store().deliveries.due(later(-1), later(30), 100)).toEqual([]);
    });

    test("at most the limit, earliest first", async () => {
      const w = await world(store());
      const minutes = [5, 3, 1, 4, 2];
      await remind(
        w,
        minutes.map((m) => reminder(`k${m}`, { dueAt: later(m) })),
      );
      const due = await store().deliveries.due(later(5), later(35), 3);
      expect(due.map(({ key }) => key)).toEqual(["k1", "k2", "k3"]);
    });

    test("a page ends between two members: what one message tells is not parted by it", async () => {
      const worlds = await Promise.all(["a", "b", "c", "d"].map((name) => world(store(), name)));
      // Due at one instant, as at seven in the evening, and written in turn.
      for (const key of ["x", "y", "z"]) {
        await Promise.all(
          worlds.map((w) => {
            const keys = ["x", "y", "z"].slice(0, "xyz".indexOf(key) + 1);
            return remind(
              w,
              keys.map((each) => reminder(each, { dueAt: NOW })),
            );
          }),
        );
      }
      for (const limit of [3, 5, 7, 11]) {
        const due = await store().deliveries.due(later(1), later(31), limit);
        expect(due).toHaveLength(limit - (limit % 3));
        const members = [...new Set(due.map(({ memberId }) => memberId))];
        expect(members).toHaveLength(due.length / 3);
      }
      expect(await store().deliveries.due(later(1), later(31), 2)).toHaveLength(2);
    });

    test("the next instant is the earliest of a reminder, a lease and a replan", async () => {
      const { deliveries } = store();
      expect(await deliveries.nextDue()).toBeNull();
      const w = await world(store());
      await cooked(w, { replanAt: later(100), reminders: [reminder("a", { dueAt: later(50) })] });
      expect(String(await deliveries.nextDue())).toBe(String(later(50)));
      const [row] = await store().stores.reminders.coming(w.member.id, 1);
      const ids = row === undefined ? [] : [row.id];
      const claim = { ids, nonce: "n", worker: "w", now: NOW, leaseUntil: later(70) };
      await deliveries.claim(claim);
      expect(String(await deliveries.nextDue())).toBe(String(later(70)));
      await deliveries.expire(ids, later(71), "too late");
      expect(String(await deliveries.nextDue())).toBe(String(later(100)));
      await remind(w, [], 1);
      expect(await deliveries.nextDue()).toBeNull();
    });

    test("members are taken for replanning from their instant on, earliest first, at most the limit", async () => {
      const names = ["a", "b", "c"];
      const worlds = await Promise.all(names.map((name) => world(store(), name)));
      await Promise.all(worlds.map((w, i) => cooked(w, { replanAt: later(30 - 10 * i) })));
      const ids = worlds.map(({ member }) => member.id).toReversed();
      const { deliveries } = store();
      expect(await deliveries.toReplan(later(9), 10)).toEqual([]);
      expect(await deliveries.toReplan(later(20), 1)).toEqual(ids.slice(0, 1));
      expect(await deliveries.toReplan(later(21), 10)).toEqual(ids.slice(1, 2));
      expect(await deliveries.toReplan(later(21), 10)).toEqual([]);
      expect(await deliveries.toReplan(later(99), 2)).toEqual(ids.slice(0, 2));
      expect(await deliveries.toReplan(later(99), 2)).toEqual(ids.slice(2));
    });

    test("a member who was taken and not replanned comes back after two minutes", async () => {
      const w = await world(store());
      await cooked(w, { replanAt: later(5) });
      const { deliveries } = store();
      expect(await deliveries.toReplan(later(5), 10)).toEqual([w.member.id]);
      expect(String(await deliveries.nextDue())).toBe(String(later(7)));
      expect(await deliveries.toReplan(later(6), 10)).toEqual([]);
      expect(await deliveries.toReplan(later(7), 10)).toEqual([w.member.id]);
      await remind(w, [], 1);
      expect(await deliveries.toReplan(later(99), 10)).toEqual([]);
    });

    test("a new zone of the group is not overtaken by what was derived before it", async () => {
      const w = await world(store());
      await cooked(w, { replanAt: later(600) });
      const { deliveries, stores } = store();
      await stores.groups.set(w.member.groupId, { zone: "Asia/Tokyo" });
      // Derived from the zone as it was, written after the change.
      const late = { memberId: w.member.id, version: 1, reminders: [], replanAt: later(900) };
      expect(await stores.reminders.replan(late)).toBe("recorded");
      expect(await deliveries.toReplan(NOW, 10)).toEqual([w.member.id]);
      expect(await stores.reminders.replan(late)).toBe("recorded");
      expect(String(await deliveries.nextDue())).toBe(String(later(900)));
    });

    test("closed direct messages are noted and taken back", async () => {
      const w = await world(store());
      const { deliveries, stores } = store();
      await deliveries.setDirectClosed(w.member.id, later(3));
      expect(String((await stores.members.find(w.member.id))?.directClosedAt)).toBe(
        String(later(3)),
      );
      await deliveries.setDirectClosed(w.member.id, null);
      expect((await stores.members.find(w.member.id))?.directClosedAt).toBeNull();
      expect((await deliveries.group(w.member.id))?.id).toBe(w.member.groupId);
    });
  });
}
