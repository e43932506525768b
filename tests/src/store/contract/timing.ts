import { describe, expect, test } from "vitest";
import { claimDue, messageOf } from "../claim-kit.ts";
import type { Given } from "../contract.ts";
import { cooked, later, NOW, remind, reminder, world } from "../kit.ts";

export function timingContract({ store }: Given): void {
  describe("when something is due", () => {
    test("the next instant is the earliest of a reminder, a lease and a replan", async () => {
      const { deliveries } = store();
      expect(await deliveries.nextDue()).toBeNull();
      const w = await world(store());
      await cooked(w, { replanAt: later(100), reminders: [reminder("a", { dueAt: later(50) })] });
      expect(String(await deliveries.nextDue())).toBe(String(later(50)));
      const rows = await claimDue(store(), { due: later(50), at: later(68) });
      expect(String(await deliveries.nextDue())).toBe(String(later(70)));
      const { nonce, ids } = messageOf(rows);
      const result = { state: "expired", reason: "too late" } as const;
      await deliveries.settle({ nonce, ids, worker: "w", at: later(71), result });
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

    test("a rewrite leaves what is due to be told, and has the member replanned at once", async () => {
      const w = await world(store());
      const { deliveries, stores } = store();
      await remind(w, [reminder("due", { dueAt: NOW }), reminder("to come")]);
      await remind(w, []);
      const keys = async () =>
        (await stores.reminders.coming(w.member.id, 10)).map(({ key }) => key);
      expect(await keys()).toEqual(["due"]);
      expect(await deliveries.toReplan(NOW, 10)).toEqual([w.member.id]);
      const { nonce, ids } = messageOf(await claimDue(store(), { due: NOW, at: NOW }));
      const result = { state: "sent", messageId: "m", where: "channel" } as const;
      await deliveries.settle({ nonce, ids, worker: "w", at: NOW, result });
      await remind(w, []);
      expect(await deliveries.nextDue()).toBeNull();
    });

    test("a new zone of the group is not overtaken by what was derived before it", async () => {
      const w = await world(store());
      await cooked(w, { replanAt: later(600) });
      const { deliveries, stores } = store();
      await stores.groups.set(w.member.groupId, { zone: "Asia/Tokyo" });
      // Derived from the zone as it was, written after the change.
      const late = {
        memberId: w.member.id,
        version: 1,
        now: NOW,
        reminders: [],
        replanAt: later(900),
      };
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
