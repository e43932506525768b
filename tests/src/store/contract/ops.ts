import { describe, expect, test } from "vitest";
import { draftId, groupId, type ReminderId, slotRuleId } from "../../../../shared/ids.ts";
import type { DerivedReminder } from "../../../../shared/reminder/types.ts";
import type { Instant } from "../../../../shared/time.ts";
import { date } from "../../../kit/stock.ts";
import { claimDue, messageOf, settleDue as settle } from "../claim-kit.ts";
import type { Given } from "../contract.ts";
import { later, NOW, remind, reminder, type World, world } from "../kit.ts";

const SENT = { state: "sent", messageId: "m", where: "direct message" } as const;
const FAILED = { state: "failed", reason: "direct message: closed (50007)" } as const;
const DAY = 24 * 60;
const on = async () => true;

/** A reminder that fell due so many days before now and helped for two hours. */
function old(key: string, days: number, rest: Partial<DerivedReminder> = {}): DerivedReminder {
  const dueAt = later(-days * DAY);
  return reminder(key, { dueAt, helpsUntil: dueAt.add({ hours: 2 }), ...rest });
}

async function left(w: World, ids: readonly ReminderId[]): Promise<readonly string[]> {
  const rows = await Promise.all(ids.map((id) => w.store.stores.reminders.find(id)));
  return rows.flatMap((row) => (row === null ? [] : [row.key]));
}

export function opsContract({ store }: Given): void {
  describe("giving back", () => {
    test("makes what a worker holds due at once under its nonce, and no longer the worker's", async () => {
      const w = await world(store());
      const { deliveries, upkeep } = store();
      await remind(w, [reminder("a", { dueAt: NOW }), reminder("b", { dueAt: NOW })]);
      const { memberId, nonce, ids } = messageOf(await claimDue(store()));
      expect(await upkeep.giveBack("w", later(1))).toBe(2);
      expect(await upkeep.giveBack("w", later(1))).toBe(0);
      const left = await deliveries.abandoned(later(1), 10);
      expect(left.map((row) => [row.nonce, row.attempts])).toEqual([
        [nonce, 1],
        [nonce, 1],
      ]);
      const late = { nonce, ids, worker: "w", at: later(1), result: SENT };
      expect(await deliveries.settle(late)).toBe(false);
      const lease = { worker: "v", now: later(1), leaseUntil: later(3) };
      expect(await deliveries.claimAgain({ memberId, nonce, ...lease })).toHaveLength(2);
    });

    test("leaves alone what another worker holds, what waits for its next try and what is done", async () => {
      const w = await world(store());
      const { deliveries, upkeep } = store();
      await remind(
        w,
        ["other", "retry", "done"].map((key, i) => reminder(key, { dueAt: later(i - 9) })),
      );
      await claimDue(store(), { worker: "v", due: later(-9), at: NOW });
      await settle(w, later(-8), { state: "retry", retryAt: later(10), reason: "x" });
      await settle(w, later(-7), SENT);
      expect(await upkeep.giveBack("w", later(1))).toBe(0);
      expect(await deliveries.abandoned(later(1), 10)).toEqual([]);
    });
  });

  describe("clearing away", () => {
    test("takes what ended before the day, and nothing that waits or is on its way, however old", async () => {
      const w = await world(store());
      const kept = ["waits", "held", "recent"];
      // In the order in which they fell due, so that each is claimed by itself.
      const keys = ["held", "recent", "sent", "failed", "expired"];
      await remind(
        w,
        keys.map((key, i) => old(key, 110 - i)),
      );
      const long = later(-99 * DAY);
      const due = (key: string): Instant => later(-(110 - keys.indexOf(key)) * DAY);
      const rows = [...(await store().stores.reminders.coming(w.member.id, 100))];
      await settle(w, due("held"), null, long);
      // Due as long ago, but only delivered lately, after an outage.
      await settle(w, due("recent"), SENT, later(-89 * DAY));
      await settle(w, due("sent"), SENT, long);
      await settle(w, due("failed"), FAILED, long);
      await settle(w, due("expired"), { state: "expired", reason: "x" }, long);
      await remind(w, [old("waits", 200)]);
      rows.push(...(await store().stores.reminders.coming(w.member.id, 1)));
      const before = later(-90 * DAY);
      expect(await store().upkeep.pruneReminders(before, on)).toBe(3);
      expect(await store().upkeep.pruneReminders(before, on)).toBe(0);
      const ids = rows.map(({ id }) => id);
      expect((await left(w, ids)).toSorted()).toEqual(kept.toSorted());
    });

    test("keeps what may still help: derived anew it would be sent a second time", async () => {
      const w = await world(store());
      const helps = old("freezer quality", 100, { helpsUntil: later(-80 * DAY) });
      await remind(w, [helps]);
      const ids = await settle(w, NOW, SENT, later(-99 * DAY));
      expect(await store().upkeep.pruneReminders(later(-90 * DAY), on)).toBe(0);
      expect(await left(w, ids)).toEqual(["freezer quality"]);
      expect(await store().upkeep.pruneReminders(later(-79 * DAY), on)).toBe(1);
    });

    test("goes piece by piece, also where hundreds ended at one instant, and stops when told", async () => {
      const w = await world(store());
      const keys = Array.from({ length: 620 }, (_, i) => `k${String(i).padStart(3, "0")}`);
      await remind(
        w,
        keys.map((key, i) => old(key, i < 400 ? 100 : 101)),
      );
      await settle(w, NOW, SENT, later(-99 * DAY));
      let asked = 0;
      const twice = async () => {
        asked += 1;
        return asked <= 2;
      };
      const first = await store().upkeep.pruneReminders(later(-90 * DAY), twice);
      expect(first).toBe(100);
      expect(await store().upkeep.pruneReminders(later(-90 * DAY), on)).toBe(520);
    });

    test("takes drafts that nobody has touched since", async () => {
      const w = await world(store());
      const { drafts } = store().stores;
      const draft = {
        groupId: w.member.groupId,
        by: w.member.id,
        title: "t",
        text: "t",
        takenFor: {},
      };
      await drafts.save({ ...draft, id: draftId("old"), changedAt: later(-181 * DAY) });
      await drafts.save({ ...draft, id: draftId("new"), changedAt: later(-179 * DAY) });
      expect(await store().upkeep.pruneDrafts(later(-180 * DAY), on)).toBe(1);
      expect((await drafts.list(w.member.id)).map(({ id }) => id)).toEqual(["new"]);
    });

    test("takes what was said of meals that are over", async () => {
      const w = await world(store());
      const { reminders, meals } = store().stores;
      const said = (day: string) =>
        ({ mealId: slotRuleId("m"), date: date(day), kind: "skip" }) as const;
      const set = [said("2026-10-01"), said("2026-10-02"), said("2026-10-03")];
      const plan = { memberId: w.member.id, version: 0, now: NOW, reminders: [], replanAt: null };
      await reminders.replan({ ...plan, exceptions: { set, clear: [] } });
      expect(await store().upkeep.pruneMealExceptions(date("2026-10-02"), async () => false)).toBe(
        0,
      );
      expect(await store().upkeep.pruneMealExceptions(date("2026-10-02"), on)).toBe(1);
      expect((await meals.wishes(w.member.id)).exceptions).toEqual(set.slice(1));
    });
  });

  describe("what could not be delivered", () => {
    test("is shown to its group alone, the newest first, without the food", async () => {
      const [a, b] = [await world(store(), "a"), await world(store(), "b")];
      await remind(a, [old("first", 2), old("second", 1), old("long ago", 31)]);
      await remind(b, [old("of b", 1)]);
      await settle(a, later(-DAY), FAILED);
      await remind(a, [old("sent", 1)]);
      await settle(a, later(-DAY), SENT);
      const { undelivered } = store().stores;
      const shown = await undelivered.ofGroup(a.member.groupId, later(-30 * DAY), 10);
      expect(shown.total).toBe(2);
      expect(shown.newest.map(({ dueAt }) => dueAt)).toEqual([later(-DAY), later(-2 * DAY)]);
      expect(shown.newest[0]).toEqual({
        memberId: a.member.id,
        memberName: "Ana",
        kind: "thaw tonight",
        dueAt: later(-DAY),
        reason: FAILED.reason,
        isToldSince: false,
      });
      const none = await undelivered.ofGroup(groupId("group-c"), later(-30 * DAY), 10);
      expect(none).toEqual({ total: 0, newest: [] });
    });

    test("counts all and lists as many as were asked for", async () => {
      const w = await world(store());
      const keys = Array.from({ length: 5 }, (_, i) => `k${i}`);
      await remind(
        w,
        keys.map((key, i) => old(key, i)),
      );
      await settle(w, NOW, FAILED);
      const { total, newest } = await store().stores.undelivered.ofGroup(
        w.member.groupId,
        later(-30 * DAY),
        2,
      );
      expect([total, newest.length]).toEqual([5, 2]);
    });

    test("is told to the member until it was told, also where it came too late with nobody told", async () => {
      const w = await world(store());
      const days = { failed: 5, late: 4, "told late": 3, sent: 2 };
      await remind(
        w,
        Object.entries(days).map(([key, ago]) => old(key, ago)),
      );
      const told = "came too late to help; the member was told";
      await settle(w, later(-5 * DAY), FAILED);
      await settle(w, later(-4 * DAY), {
        state: "expired",
        reason: "came too late; refused (403, 1)",
      });
      await settle(w, later(-3 * DAY), { state: "expired", reason: told });
      await settle(w, later(-2 * DAY), SENT);
      const { undelivered } = store().stores;
      const untold = await undelivered.untold(w.member.id, later(-14 * DAY), 9);
      expect(untold.map(({ key }) => key)).toEqual(["failed", "late"]);
      await undelivered.markTold(untold.slice(0, 1).map(({ id }) => id));
      const rest = await undelivered.untold(w.member.id, later(-14 * DAY), 9);
      expect(rest.map(({ key }) => key)).toEqual(["late"]);
      const { newest } = await undelivered.ofGroup(w.member.groupId, later(-30 * DAY), 9);
      expect(newest.map(({ isToldSince }) => isToldSince)).toEqual([false, true]);
    });
  });
}
