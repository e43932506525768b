import { describe, expect, test } from "vitest";
import type { RecipeDraft } from "../../../../commands/kit/ports.ts";
import { draftId, foodId, recipeId, revisionId } from "../../../../shared/ids.ts";
import type { Given } from "../contract.ts";
import { cooked, eating, later, NOW, publish, recipe, type World, world } from "../kit.ts";

function draft(w: World, rest: Partial<RecipeDraft> = {}): RecipeDraft {
  return {
    id: draftId("d1"),
    groupId: w.member.groupId,
    by: w.member.id,
    title: "Bean pot",
    text: "Bean pot\n\nMakes 4 portions\n½ tsp salt",
    takenFor: { "odd beans": foodId("pinto-beans-canned") },
    changedAt: NOW,
    ...rest,
  };
}

export function draftContract({ store, restart }: Given): void {
  describe("drafts and the life of a recipe", () => {
    test("a draft is read back whole after a restart, and the one changed last comes first", async () => {
      const w = await world(store());
      const { drafts } = store().stores;
      await drafts.save(draft(w));
      await drafts.save(draft(w, { id: draftId("d2"), changedAt: later(1) }));
      await drafts.save(draft(w, { text: "Other", takenFor: {}, changedAt: later(2) }));
      const again = (await restart()).stores.drafts;
      const changed = draft(w, { text: "Other", takenFor: {}, changedAt: later(2) });
      expect(await again.find(draftId("d1"))).toEqual(changed);
      expect((await again.list(w.member.id)).map(({ id }) => id)).toEqual(["d1", "d2"]);
    });

    test("a dropped draft is gone, and dropping it again is no fault", async () => {
      const w = await world(store());
      const { drafts } = store().stores;
      await drafts.save(draft(w));
      await drafts.drop(draftId("d1"));
      await drafts.drop(draftId("d1"));
      expect(await drafts.find(draftId("d1"))).toBeNull();
    });

    test("the source of a recipe is what was written for its newest revision, in its own group only", async () => {
      const a = await world(store(), "a");
      const b = await world(store(), "b");
      const { recipes } = store().stores;
      const { published } = await publish(a, recipe({ title: "Barley pot" }), "c2");
      expect(await recipes.source(a.member.groupId, published.id)).toEqual({
        text: "text of Barley pot",
        takenFor: { "odd barley": "pearl-barley-dry" },
      });
      expect(await recipes.source(b.member.groupId, published.id)).toBeNull();
      expect(await recipes.source(a.member.groupId, recipeId("none"))).toBeNull();
    });

    test("all recipes come in their newest revision, and the version tells when that changes", async () => {
      const w = await world(store());
      const { recipes, groups } = store().stores;
      await publish(w, recipe({ title: "Apple crumble" }), "c2");
      const newer = await publish(w, recipe({ title: "Barley pot", portions: 9 }), "c3");
      const all = await recipes.all(w.member.groupId);
      expect(all.map(({ recipe: { title, portions } }) => [title, portions])).toEqual([
        ["Apple crumble", recipe().portions],
        ["Barley pot", 9],
      ]);
      expect((await groups.open(w.member.groupId, "x")).recipesVersion).toBe(3);
      await recipes.withdraw(w.member.groupId, newer.published.id, NOW);
      expect((await groups.open(w.member.groupId, "x")).recipesVersion).toBe(4);
      expect((await recipes.all(w.member.groupId)).map((one) => one.recipe.title)).toEqual([
        "Apple crumble",
      ]);
    });

    test("a withdrawn recipe is not found, its revisions and batches stay, and publishing brings it back", async () => {
      const w = await world(store());
      await cooked(w);
      const { recipes, stocks } = store().stores;
      const { groupId } = w.member;
      expect(await recipes.withdraw(groupId, w.published.id, NOW)).toBe(true);
      expect(await recipes.withdraw(groupId, w.published.id, NOW)).toBe(false);
      expect(await recipes.find(groupId, w.published.id)).toBeNull();
      expect(await recipes.search(groupId, "", 9)).toEqual([]);
      expect(await recipes.revision(groupId, w.published.revisionId)).toEqual(w.published);
      expect((await stocks.load(w.member.id)).batches).toHaveLength(1);
      const back = await publish(w, w.published.recipe, "again");
      expect(back.published).toMatchObject({ id: w.published.id, revisionNumber: 2 });
      expect(await recipes.find(groupId, w.published.id)).toEqual(back.published);
    });

    test("neither a revision nor a withdrawal crosses the group's border", async () => {
      const a = await world(store(), "a");
      const b = await world(store(), "b");
      const { recipes } = store().stores;
      expect(await recipes.revision(b.member.groupId, a.published.revisionId)).toBeNull();
      expect(await recipes.revision(a.member.groupId, revisionId("none"))).toBeNull();
      expect(await recipes.withdraw(b.member.groupId, a.published.id, NOW)).toBe(false);
      expect(await recipes.find(a.member.groupId, a.published.id)).toEqual(a.published);
    });

    test("who has a recipe are those with portions of it, and those who cooked it since then", async () => {
      const w = await world(store());
      const { recipes, stocks } = store().stores;
      const has = async (since: typeof NOW) =>
        (await recipes.whoHas(w.member.groupId, w.published.id, since)).map(({ id }) => id);
      expect(await has(NOW)).toEqual([]);
      const lot = await cooked(w);
      expect(await has(later(9999))).toEqual([w.member.id]);
      await stocks.record(eating(w, lot, 2, "ate all", lot.portions));
      expect(await has(later(9999))).toEqual([]);
      expect(await has(NOW.subtract({ hours: 24 * 30 }))).toEqual([w.member.id]);
    });
  });
}
