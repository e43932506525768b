import { describe, expect, test } from "vitest";
import type { KeepingWord } from "../../../../commands/kit/keeping-words.ts";
import { causeId } from "../../../../shared/ids.ts";
import { keeping } from "../../../kit/stock.ts";
import type { Given } from "../contract.ts";
import { cooking, later, NOW, publish, recipe, versionOf, type World, world } from "../kit.ts";

const PARTS = [{ part: "Base", coachDays: 5, chartDays: 3, source: "cooked grain" }];

function add(
  w: World,
  position: number,
  kind: KeepingWord["kind"],
  cause: string,
  rest: { readonly revisionId?: World["published"]["revisionId"] } = {},
) {
  return w.store.stores.keepingWords.add({
    id: `word-${cause}`,
    groupId: w.member.groupId,
    revisionId: w.published.revisionId,
    position,
    causeId: causeId(cause),
    kind,
    parts: PARTS,
    by: w.member.id,
    at: later(position),
    ...rest,
  });
}

export function keepingWordContract({ store, restart }: Given): void {
  describe("a coach's word on how long a revision keeps", () => {
    test("stays as it was given, with who and when, after what follows and after a restart", async () => {
      const w = await world(store());
      expect(await add(w, 1, "given", "c1")).toBe("recorded");
      expect(await add(w, 2, "taken back", "c2")).toBe("recorded");
      const again = await restart();
      const list = await again.stores.keepingWords.list(w.member.groupId, w.published.revisionId);
      const by = { id: w.member.id, name: "Ana" };
      const { revisionId } = w.published;
      expect(list).toEqual([
        { revisionId, position: 1, kind: "given", parts: PARTS, by, at: later(1) },
        { revisionId, position: 2, kind: "taken back", parts: PARTS, by, at: later(2) },
      ]);
    });

    test("stands on the recipe as it is found until it is taken back", async () => {
      const w = await world(store());
      const { recipes } = store().stores;
      const { groupId } = w.member;
      const found = async () => [
        (await recipes.find(groupId, recipe().title, await versionOf(w)))?.longerWord,
        (await recipes.revision(groupId, w.published.revisionId))?.longerWord,
        (await recipes.all(groupId))[0]?.longerWord,
      ];
      expect(await found()).toEqual([null, null, null]);
      await add(w, 1, "given", "c1");
      const word = { by: "Ana", at: later(1) };
      expect(await found()).toEqual([word, word, word]);
      await add(w, 2, "taken back", "c2");
      expect(await found()).toEqual([null, null, null]);
    });

    test("holds for its revision alone", async () => {
      const w = await world(store());
      await add(w, 1, "given", "c1");
      const next = await publish(w, recipe({ portions: 8 }), "second");
      expect(next.published.longerWord).toBeNull();
    });

    test("tells those that keep the group's recipes in memory that they have changed", async () => {
      const w = await world(store());
      const version = async () =>
        (await store().stores.groups.open(w.member.groupId, "Kitchen a")).recipesVersion;
      const before = await version();
      await add(w, 1, "given", "c1");
      expect(await version()).toBe(before + 1);
    });

    test("is written once for one cause, and not in the place of another", async () => {
      const w = await world(store());
      expect(await add(w, 1, "given", "c1")).toBe("recorded");
      expect(await add(w, 1, "given", "c1")).toBe("already");
      expect(await add(w, 1, "taken back", "c2")).toBe("moved on");
      const { keepingWords } = store().stores;
      expect(await keepingWords.list(w.member.groupId, w.published.revisionId)).toHaveLength(1);
    });

    test("of two given at once one is written", async () => {
      const w = await world(store());
      const both = await Promise.all([add(w, 1, "given", "c1"), add(w, 1, "given", "c2")]);
      expect(both.toSorted()).toEqual(["moved on", "recorded"]);
    });

    test("is neither written nor seen from another group", async () => {
      const a = await world(store(), "a");
      const b = await world(store(), "b");
      const { revisionId } = a.published;
      expect(await add(b, 1, "given", "c1", { revisionId })).toBe("moved on");
      await add(a, 1, "given", "c2");
      const { keepingWords } = store().stores;
      expect(await keepingWords.list(b.member.groupId, revisionId)).toEqual([]);
    });
  });

  describe("a batch with both times", () => {
    test("comes back with both, the chart's counting until it is known who eats", async () => {
      const w = await world(store());
      const time = (fridgeDays: number) => ({ fridgeDays, limitedBy: "Base", remarks: [] });
      const longer = { chart: time(3), coach: time(5) };
      const first = cooking(w, { version: 1, cause: "cook" });
      if (first.newBatch === null) throw new Error("a cooking without a batch");
      const newBatch = { ...first.newBatch, keeping: keeping({ fridgeDays: 5, longer }) };
      expect(await store().stores.stocks.record({ ...first, newBatch })).toBe("recorded");
      const { batches } = await store().stores.stocks.load(w.member.id);
      expect(batches[0]?.keeping).toEqual(keeping({ fridgeDays: 3, longer }));
    });
  });

  describe("who eats along", () => {
    test("is written together with the reminders that follow, or not at all", async () => {
      const w = await world(store());
      const { reminders, members } = store().stores;
      const plan = { memberId: w.member.id, now: NOW, reminders: [], replanAt: NOW };
      const profile = { vulnerable: ["under five"] } as const;
      expect(await reminders.replan({ ...plan, version: 7, profile })).toBe("moved on");
      expect((await members.find(w.member.id))?.profile.vulnerable).toEqual([]);
      expect(await reminders.replan({ ...plan, version: 0, profile })).toBe("recorded");
      expect((await members.find(w.member.id))?.profile.vulnerable).toEqual(["under five"]);
    });
  });
}
