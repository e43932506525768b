import { describe, expect, test } from "vitest";
import type { Food } from "../../../../shared/food/types.ts";
import { causeId, foodId, targetId } from "../../../../shared/ids.ts";
import type { TargetRule } from "../../../../shared/target/types.ts";
import { date } from "../../../kit/stock.ts";
import type { Given } from "../contract.ts";
import { later, NOW, type World, world } from "../kit.ts";
import { packed } from "../packed.ts";

function put(w: World, food: Food, cause: string) {
  const { groupId, id: by } = w.member;
  return w.store.stores.foods.put({ groupId, by, causeId: causeId(cause), now: NOW, food });
}

function rule(w: World, id: string, rest: Partial<TargetRule> = {}): TargetRule {
  return {
    id: targetId(id),
    memberId: w.member.id,
    from: date("2026-10-12"),
    weekdays: [1, 2, 3],
    figures: { energyKcal: 2100, proteinG: 120 },
    setBy: w.member.id,
    setAt: NOW,
    ...rest,
  };
}

export function peopleContract({ store, restart }: Given): void {
  describe("profiles, a group's own foods, targets", () => {
    test("a profile changes what it names and stays", async () => {
      const w = await world(store());
      const { members } = store().stores;
      await members.setProfile(w.member.id, { allergens: ["milk", "tree nuts"] });
      const set = await members.setProfile(w.member.id, {
        vulnerable: ["under five"],
        coachMaySetTargets: true,
      });
      const profile = {
        allergens: ["milk", "tree nuts"],
        vulnerable: ["under five"],
        coachMaySetTargets: true,
      };
      expect(set.profile).toEqual(profile);
      const after = await (await restart()).stores.members.find(w.member.id);
      expect(after?.profile).toEqual(profile);
    });

    test("a member is found by user id or by a name that is theirs alone, within the group only", async () => {
      const w = await world(store(), "a");
      await world(store(), "b");
      const { members } = store().stores;
      const bo = await members.open(w.member.groupId, "user2", "Bó");
      const byName = (name: string) => members.inGroup(w.member.groupId, name);
      expect((await byName("user2"))?.id).toBe(bo.id);
      expect((await byName("bo"))?.id).toBe(bo.id);
      expect((await byName("ANA"))?.id).toBe(w.member.id);
      expect(await byName("nobody")).toBeNull();
      await members.open(w.member.groupId, "user3", "ana");
      expect(await byName("Ana")).toBeNull();
    });

    test("a group's food is read back whole, and another group does not see it", async () => {
      const w = await world(store(), "a");
      const other = await world(store(), "b");
      expect(await put(w, packed, "put1")).toEqual({ food: packed, isNew: true });
      const again = await restart();
      expect(await again.stores.foods.list(w.member.groupId)).toEqual([packed]);
      expect(await again.stores.foods.list(other.member.groupId)).toEqual([]);
      const versions = [w, other].map(
        async ({ member }) => (await again.stores.groups.open(member.groupId, "x")).foodsVersion,
      );
      expect(await Promise.all(versions)).toEqual([1, 0]);
    });

    test("a food of the same name takes the place of the earlier one and its id", async () => {
      const w = await world(store());
      await put(w, packed, "put1");
      await put(w, { ...packed, id: foodId("own2"), name: "Oat drink" }, "put2");
      const newer = { ...packed, id: foodId("own3"), name: "STONE MILL crispbread", refusePct: 1 };
      const result = await put(w, newer, "put3");
      expect(result).toEqual({ food: { ...newer, id: "own1" }, isNew: false });
      const { foods, groups } = store().stores;
      const names = (await foods.list(w.member.groupId)).map(({ id, name }) => [id, name]);
      expect(names).toEqual([
        ["own1", "STONE MILL crispbread"],
        ["own2", "Oat drink"],
      ]);
      await put(w, newer, "put3");
      expect((await groups.open(w.member.groupId, "x")).foodsVersion).toBe(3);
    });

    test("foods put at once are all kept, each in its own place", async () => {
      const w = await world(store());
      const names = ["A", "B", "C", "D", "E"];
      await Promise.all(
        names.map((name) => put(w, { ...packed, id: foodId(`own-${name}`), name }, `put-${name}`)),
      );
      const list = await store().stores.foods.list(w.member.groupId);
      expect(list.map(({ name }) => name).sort()).toEqual(names);
    });

    test("targets are kept in the order taken, once for each cause", async () => {
      const w = await world(store());
      const { targets } = store().stores;
      const first = rule(w, "t1");
      const second = rule(w, "t2", { figures: {}, weekdays: [7], setBy: null, setAt: later(1) });
      await targets.add(first, causeId("set1"));
      await targets.add(second, causeId("set2"));
      await targets.add({ ...second, weekdays: [1] }, causeId("set2"));
      expect(await (await restart()).stores.targets.list(w.member.id)).toEqual([first, second]);
    });
  });
}
