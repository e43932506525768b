import { describe, expect, test } from "vitest";
import type { Meals, Member } from "../../../../commands/kit/ports.ts";
import { groupId, memberId, slotRuleId } from "../../../../shared/ids.ts";
import { date, time } from "../../../kit/stock.ts";
import type { Given } from "../contract.ts";
import { cooked, later, NOW, world } from "../kit.ts";

export function groupContract({ store, restart }: Given): void {
  describe("groups and members", () => {
    test("a group is made with defaults when first seen and keeps what is set", async () => {
      const { groups } = store().stores;
      expect(await groups.open(groupId("1"), "North")).toEqual({
        id: "1",
        name: "North",
        coachRoleId: null,
        reminderChannelId: null,
        zone: "Etc/UTC",
        labelStyle: "eu",
        foodsVersion: 0,
        recipesVersion: 0,
      });
      await groups.set(groupId("1"), { coachRoleId: "7", zone: "Europe/Lisbon" });
      await groups.set(groupId("1"), { reminderChannelId: "9" });
      const after = await (await restart()).stores.groups.open(groupId("1"), "North renamed");
      expect(after).toEqual({
        id: "1",
        name: "North renamed",
        coachRoleId: "7",
        reminderChannelId: "9",
        zone: "Europe/Lisbon",
        labelStyle: "eu",
        foodsVersion: 0,
        recipesVersion: 0,
      });
    });

    test("many first requests at once make one group and one member", async () => {
      const { groups, members } = store().stores;
      const asks = Array.from({ length: 20 }, async () => {
        const group = await groups.open(groupId("1"), "North");
        return (await members.open(group.id, "u", "Ana")).id;
      });
      expect(new Set(await Promise.all(asks)).size).toBe(1);
    });

    test("a member starts with the group's zone and the default times", async () => {
      const { groups, members } = store().stores;
      await groups.open(groupId("1"), "North");
      await groups.set(groupId("1"), { zone: "America/New_York" });
      const member = await members.open(groupId("1"), "u", "Ana");
      const { choice, planVersion, ...rest } = member;
      expect(planVersion).toBe(0);
      expect(rest).toEqual({
        id: expect.stringMatching(/^[0-9a-z]{12}$/u),
        groupId: "1",
        userId: "u",
        name: "Ana",
        zoneIsOwn: false,
        deliverTo: "direct message",
        directClosedAt: null,
        profile: { allergens: [], vulnerable: [], coachMaySetTargets: false },
        wantsRecipeNews: true,
      });
      const { zone, pausedUntil, pausesSafety, ...times } = choice;
      expect([zone, pausedUntil, pausesSafety]).toEqual(["America/New_York", null, false]);
      expect(Object.values(times).map(String)).toEqual([
        "08:00:00",
        "19:00:00",
        "22:00:00",
        "07:00:00",
      ]);
      expect(await members.find(member.id)).toEqual(member);
      expect(await members.find(memberId("nobody"))).toBeNull();
    });

    test("one person in two groups is two members", async () => {
      const a = await world(store(), "a");
      const b = await world(store(), "b");
      expect(a.member.userId).toBe(b.member.userId);
      expect(a.member.id).not.toBe(b.member.id);
    });

    test("a new zone of the group counts for members without their own and replans them", async () => {
      const w = await world(store());
      await cooked(w);
      const other = await store().stores.members.open(w.member.groupId, "user2", "Bo");
      const zone = "Asia/Tokyo";
      const choice = { zone, zoneIsOwn: true };
      const { reminders, members, groups } = store().stores;
      const replanAt = later(600);
      await reminders.replan({
        memberId: other.id,
        version: 0,
        now: NOW,
        reminders: [],
        replanAt,
        choice,
      });
      expect(await store().deliveries.toReplan(NOW, 10)).toEqual([]);
      await groups.set(w.member.groupId, { zone: "Europe/Paris" });
      expect((await members.find(w.member.id))?.choice.zone).toBe("Europe/Paris");
      expect((await members.find(other.id))?.choice.zone).toBe(zone);
      expect(await store().deliveries.toReplan(NOW, 10)).toEqual([w.member.id]);
    });

    test("a choice changes what it names and nothing else", async () => {
      const w = await world(store());
      const { reminders, members, meals } = store().stores;
      const meal = {
        id: slotRuleId("m1"),
        name: "Lunch",
        weekdays: [1, 2, 5],
        time: time("12:30"),
        portions: 2,
      };
      const plan = { memberId: w.member.id, version: 0, now: NOW, reminders: [], replanAt: null };
      await reminders.replan({ ...plan, choice: { evening: time("20:15") }, meals: [meal] });
      await reminders.replan({ ...plan, deliverTo: "channel", choice: { pausedUntil: later(5) } });
      const after = await members.find(w.member.id);
      expect(String(after?.choice.evening)).toBe("20:15:00");
      expect(String(after?.choice.morning)).toBe("08:00:00");
      expect(String(after?.choice.pausedUntil)).toBe(String(later(5)));
      expect([after?.deliverTo, after?.zoneIsOwn]).toEqual(["channel", false]);
      expect(await meals.list(w.member.id)).toEqual([meal]);
      const changed = [
        { ...meal, portions: 3 },
        { ...meal, id: slotRuleId("m2"), name: "Tea" },
      ];
      await reminders.replan({ ...plan, meals: changed });
      expect(await meals.list(w.member.id)).toEqual(changed);
      await reminders.replan({ ...plan, meals: [] });
      expect(await meals.list(w.member.id)).toEqual([]);
    });

    test("what is said of single meals replaces what was said of them, and of no others", async () => {
      const [w, other] = [await world(store()), await world(store(), "b")];
      const { reminders, meals } = store().stores;
      const { batchId } = await cooked(w);
      const of = (day: string) => ({ mealId: slotRuleId("m1"), date: date(day) });
      const skip = { ...of("2026-10-12"), kind: "skip" } as const;
      const pin = { ...of("2026-10-13"), kind: "pin", batchId } as const;
      const out = { ...skip, kind: "out" } as const;
      const plan = { memberId: w.member.id, version: 1, now: NOW, reminders: [], replanAt: null };
      const theirs = { ...plan, memberId: other.member.id, version: 0 };
      await reminders.replan({ ...plan, exceptions: { set: [skip, pin], clear: [] } });
      await reminders.replan({ ...theirs, exceptions: { set: [skip], clear: [] } });
      const said = async ({ id }: Member, at: Meals = meals) => (await at.wishes(id)).exceptions;
      expect(await said(w.member)).toEqual([skip, pin]);
      await reminders.replan({ ...plan, exceptions: { set: [out], clear: [of("2026-10-13")] } });
      expect([await said(w.member), await said(other.member)]).toEqual([[out], [skip]]);
      const stale = { ...plan, version: 0, exceptions: { set: [], clear: [out] } };
      expect(await reminders.replan(stale)).toBe("moved on");
      expect(await said(w.member, (await restart()).stores.meals)).toEqual([out]);
    });

    test("a setting is what it was last set to, also after a restart", async () => {
      expect(await store().settings.get("hash")).toBeNull();
      await store().settings.set("hash", "a");
      await store().settings.set("hash", "b");
      expect(await (await restart()).settings.get("hash")).toBe("b");
    });
  });
}
