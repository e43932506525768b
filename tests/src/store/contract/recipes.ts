import { describe, expect, test } from "vitest";
import type { Given } from "../contract.ts";
import { NOW, publication, publish, recipe, versionOf, world } from "../kit.ts";

export function recipeContract({ store, restart }: Given): void {
  describe("recipes", () => {
    test("a published recipe comes back whole, by id and by title whatever its case and accents", async () => {
      const w = await world(store());
      const what = recipe({ title: "Crème Brûlée Oats" });
      const { published, isNew } = await publish(w, what, "c1");
      expect(isNew).toBe(true);
      expect(published).toMatchObject({ revisionNumber: 1, groupId: w.member.groupId });
      const { recipes } = (await restart()).stores;
      expect(published.recipe).toEqual(what);
      expect(await recipes.find(w.member.groupId, published.id)).toEqual(published);
      expect(await recipes.find(w.member.groupId, " creme  BRULEE oats ")).toEqual(published);
      expect(await recipes.find(w.member.groupId, "creme brulee")).toBeNull();
    });

    test("publishing the same title makes a new revision of the same recipe", async () => {
      const w = await world(store());
      const second = await publish(w, recipe({ title: "BARLEY POT", portions: 8 }), "c2");
      expect(second.isNew).toBe(false);
      expect(second.published.id).toBe(w.published.id);
      expect(second.published.revisionNumber).toBe(2);
      expect(second.published.revisionId).not.toBe(w.published.revisionId);
      const { recipes } = store().stores;
      expect(await recipes.find(w.member.groupId, w.published.id)).toEqual(second.published);
      expect(await recipes.search(w.member.groupId, "", 10)).toEqual([
        { id: w.published.id, title: "BARLEY POT", portions: 8, tags: ["lunch", "one pot"] },
      ]);
    });

    test("what was found before is not given any more once a recipe is published or withdrawn", async () => {
      const w = await world(store());
      const { recipes } = store().stores;
      const { groupId } = w.member;
      const found = async () =>
        (await recipes.find(groupId, "barley pot", await versionOf(w)))?.revisionNumber;
      expect([await found(), await found()]).toEqual([1, 1]);
      const { published } = await publish(w, recipe({ portions: 8 }), "c2");
      expect([await found(), await found()]).toEqual([2, 2]);
      await recipes.withdraw(groupId, published.id, NOW);
      expect(await found()).toBeUndefined();
    });

    test("the same cause twice gives the first result again, also when another came in between", async () => {
      const w = await world(store());
      const first = await publish(w, recipe({ title: "Bean stew" }), "c1");
      await publish(w, recipe({ title: "Bean stew", portions: 9 }), "c2");
      expect(await publish(w, recipe({ title: "Bean stew", portions: 4 }), "c1")).toEqual(first);
      const found = await store().stores.recipes.find(w.member.groupId, "bean stew");
      expect(found?.revisionNumber).toBe(2);
    });

    test("publications of one title at once are numbered without a gap, one cause once", async () => {
      const w = await world(store());
      const results = await Promise.all([
        publish(w, recipe({ title: "Soup", portions: 1 }), "s1"),
        publish(w, recipe({ title: "Soup", portions: 2 }), "s2"),
        publish(w, recipe({ title: "soup", portions: 3 }), "s3"),
        publish(w, recipe({ title: "Soup", portions: 1 }), "s1"),
      ]);
      const numbers = new Set(results.map(({ published }) => published.revisionNumber));
      expect(numbers).toEqual(new Set([1, 2, 3]));
      expect(new Set(results.map(({ published }) => published.id)).size).toBe(1);
      expect(results[0]).toEqual(results[3]);
    });

    test("search wants all words, in titles and tags, sorted by title, at most the limit", async () => {
      const w = await world(store());
      await publish(w, recipe({ title: "Jalapeño wrap", tags: ["Spicy", "cold"] }), "c1");
      await publish(w, recipe({ title: "Álava bean pot", tags: ["spicy"] }), "c2");
      await publish(w, recipe({ title: "Zesty wrap", tags: [] }), "c3");
      const { recipes } = store().stores;
      const titles = async (typed: string, limit = 10) =>
        (await recipes.search(w.member.groupId, typed, limit)).map(({ title }) => title);
      expect(await titles("SPICY")).toEqual(["Álava bean pot", "Jalapeño wrap"]);
      expect(await titles("wrap jalapeno")).toEqual(["Jalapeño wrap"]);
      expect(await titles("spicy zesty")).toEqual([]);
      expect(await titles("")).toHaveLength(4);
      expect(await titles("  ", 2)).toEqual(["Álava bean pot", "Barley pot"]);
      expect(await titles("ja")).toEqual(["Jalapeño wrap"]);
    });

    test("wildcards of the database only part words, and a text without words lists all", async () => {
      const w = await world(store());
      await publish(w, recipe({ title: "100% rye", tags: [] }), "c1");
      const { recipes } = store().stores;
      const hits = async (typed: string) =>
        (await recipes.search(w.member.groupId, typed, 10)).map(({ title }) => title);
      expect(await hits("100%")).toEqual(["100% rye"]);
      expect(await hits("%%rye_")).toEqual(["100% rye"]);
      expect(await hits("1__ r%e")).toEqual(["100% rye"]);
      expect(await hits("2%")).toEqual([]);
      expect(await hits("%_*")).toEqual(["100% rye", "Barley pot"]);
      expect(await hits("x".repeat(100_000))).toEqual([]);
    });

    test("two groups never see each other's recipes", async () => {
      const a = await world(store(), "a");
      const b = await world(store(), "b");
      const { recipes } = store().stores;
      await publish(a, recipe({ title: "Secret pot" }), "c1");
      expect(await recipes.find(b.member.groupId, "secret pot")).toBeNull();
      expect(await recipes.find(b.member.groupId, a.published.id)).toBeNull();
      expect((await recipes.find(b.member.groupId, "barley pot"))?.id).toBe(b.published.id);
      expect(await recipes.search(b.member.groupId, "secret", 10)).toEqual([]);
      const again = await publish(b, recipe({ title: "Secret pot" }), "c2");
      expect(again).toMatchObject({ isNew: true, published: { revisionNumber: 1 } });
    });

    test("a revision of a recipe takes its new title along, unless another has it, be it withdrawn", async () => {
      const w = await world(store());
      const { recipes } = store().stores;
      const { groupId } = w.member;
      const other = await publish(w, recipe({ title: "Bean stew" }), "c1");
      const input = (title: string, cause: string) => ({
        ...publication(w, recipe({ title }), cause),
      });
      expect(await recipes.publishOf(w.published.id, input("Bean STEW", "c2"))).toBe("title taken");
      await recipes.withdraw(groupId, other.published.id, NOW);
      expect(await recipes.publishOf(w.published.id, input("Bean stew", "c3"))).toBe("title taken");
      const done = await recipes.publishOf(w.published.id, input("Pearl pot", "c4"));
      expect(done).toMatchObject({
        isNew: false,
        published: { id: w.published.id, revisionNumber: 2, recipe: { title: "Pearl pot" } },
      });
      expect(await recipes.publishOf(w.published.id, input("Pearl pot", "c4"))).toEqual(done);
      expect(await recipes.find(groupId, "barley pot")).toBeNull();
      expect((await recipes.find(groupId, "pearl pot"))?.revisionNumber).toBe(2);
    });

    test("a recipe of another group is not revised by its id", async () => {
      const a = await world(store(), "a");
      const b = await world(store(), "b");
      const input = publication(b, recipe({ title: "Stolen pot" }), "c1");
      await expect(store().stores.recipes.publishOf(a.published.id, input)).rejects.toThrow();
      expect(await store().stores.recipes.find(a.member.groupId, "stolen pot")).toBeNull();
      const kept = await store().stores.recipes.find(a.member.groupId, a.published.id);
      expect(kept).toEqual(a.published);
    });

    test("a cause of one group does not reach into another", async () => {
      const a = await world(store(), "a");
      const b = await world(store(), "b");
      await publish(a, recipe({ title: "Secret pot" }), "c1");
      await expect(publish(b, recipe({ title: "Open pot" }), "c1")).rejects.toThrow();
      expect(await store().stores.recipes.find(b.member.groupId, "open pot")).toBeNull();
    });
  });
}
