import { afterEach, describe, expect, it } from "vitest";
import type { Group, PublishedRecipe, Recipes } from "../../../commands/kit/ports.ts";
import type { BookIndex } from "../../../shared/book/book-index.ts";
import { foodBook } from "../../../shared/food/book.ts";
import { groupId, revisionId } from "../../../shared/ids.ts";
import { recipeIndexes } from "../../../src/bot/recipe-indexes.ts";
import { manyRecipes } from "../../bench/many-recipes.ts";
import { FOODS, GROUP, memoryRecipes, recipeOf } from "../../kit/recipes-and-context.ts";

const titled = (title: string) => recipeOf(`${title}\nMakes 4 portions\n- 400 g onion`);
const titles = (index: BookIndex | null) => index?.entries.map(({ title }) => title);

/** A store that counts how often a group's recipes are read, and can be held. */
function counted(all: Recipes["all"]) {
  const store = {
    reads: 0,
    held: Promise.resolve(),
    all: async (group: Parameters<Recipes["all"]>[0]) => {
      store.reads += 1;
      const read = await all(group);
      await store.held;
      return read;
    },
  };
  return store;
}

const at = (recipesVersion: number, rest: Partial<Group> = {}): Group => ({
  ...GROUP,
  recipesVersion,
  ...rest,
});

describe("recipes kept in memory", () => {
  it("are read once for as long as the version stands, and anew when it goes up", async () => {
    const both = await memoryRecipes([titled("Old pot"), titled("New pot")]).all(GROUP.id);
    let now: readonly PublishedRecipe[] = both.slice(1);
    const store = counted(async () => now);
    const of = recipeIndexes(store);
    expect(titles(await of(at(1), FOODS).whole())).toEqual(["Old pot"]);
    now = both;
    expect(titles(await of(at(1), FOODS).whole())).toEqual(["Old pot"]);
    expect(store.reads).toBe(1);
    expect(titles(await of(at(2), FOODS).whole())).toEqual(["New pot", "Old pot"]);
    expect(store.reads).toBe(2);
  });

  it("show a new revision in the place of the old", async () => {
    const [first] = await memoryRecipes([titled("Pot")]).all(GROUP.id);
    if (first === undefined) throw new Error("no recipe");
    const second = {
      ...first,
      revisionId: revisionId("second"),
      recipe: recipeOf("Pot\nMakes 2 portions\n- 400 g leeks"),
    };
    let now = [first];
    const of = recipeIndexes({ all: async () => now });
    await of(at(1), FOODS).whole();
    now = [second];
    const { entries } = await of(at(2), FOODS).whole();
    expect(entries.map(({ portions, foods }) => [portions, foods[0]?.name])).toEqual([
      [2, "leeks"],
    ]);
  });

  it("are never handed to a request that has seen a newer version, though one is under way", async () => {
    let now = memoryRecipes([titled("Old pot")]);
    const store = counted((group) => now.all(group));
    const of = recipeIndexes(store);
    let release = (): void => undefined;
    store.held = new Promise((resolve) => {
      release = resolve;
    });
    const before = of(at(1), FOODS).whole();
    await Promise.resolve();
    now = memoryRecipes([]);
    const after = of(at(2), FOODS).whole();
    release();
    expect(titles(await before)).toEqual(["Old pot"]);
    expect(titles(await after)).toEqual([]);
    // Who comes late with the version of before gets what is newer.
    expect(titles(await of(at(1), FOODS).whole())).toEqual([]);
  });

  it("are read once for requests that come together", async () => {
    const store = counted(memoryRecipes([titled("Pot")]).all);
    const of = recipeIndexes(store);
    await Promise.all(Array.from({ length: 10 }, () => of(at(1), FOODS).whole()));
    expect(store.reads).toBe(1);
  });

  it("are read anew with other foods", async () => {
    const store = counted(memoryRecipes([titled("Pot")]).all);
    const of = recipeIndexes(store);
    const known = await of(at(1), FOODS).whole();
    const unknown = await of(at(1), foodBook([])).whole();
    expect(known.entries[0]?.energyKcal.us).toMatchObject({ atLeast: false });
    expect(unknown.entries[0]?.energyKcal.us).toEqual({ amount: 0, atLeast: true });
  });

  it("are one group's own", async () => {
    const a = memoryRecipes([titled("Ours")], groupId("a"));
    const b = memoryRecipes([titled("Theirs")], groupId("b"));
    const of = recipeIndexes({
      all: async (group) => [...(await a.all(group)), ...(await b.all(group))],
    });
    expect(titles(await of(at(1, { id: groupId("a") }), FOODS).whole())).toEqual(["Ours"]);
    expect(titles(await of(at(1, { id: groupId("b") }), FOODS).whole())).toEqual(["Theirs"]);
  });

  it("are tried again after a fault of the store", async () => {
    let isBroken = true;
    const recipes = memoryRecipes([titled("Pot")]);
    const of = recipeIndexes({
      all: (group) => (isBroken ? Promise.reject(new Error("no disk")) : recipes.all(group)),
    });
    await expect(of(at(1), FOODS).whole()).rejects.toThrow("no disk");
    isBroken = false;
    expect(titles(await of(at(1), FOODS).whole())).toEqual(["Pot"]);
  });

  it("are not waited for longer than a completion can, and are there for the next", async () => {
    const store = counted(memoryRecipes([titled("Pot")]).all);
    let release = (): void => undefined;
    store.held = new Promise((resolve) => {
      release = resolve;
    });
    const of = recipeIndexes(store, 5);
    expect(await of(at(1), FOODS).soon()).toBeNull();
    release();
    await of(at(1), FOODS).whole();
    expect(titles(await of(at(1), FOODS).soon())).toEqual(["Pot"]);
    expect(store.reads).toBe(1);
  });

  it("let others have their turn while many are being read", async () => {
    const published: readonly PublishedRecipe[] = manyRecipes(FOODS, 300).map((one) => ({
      ...one,
      groupId: GROUP.id,
      revisionNumber: 1,
      longerWord: null,
    }));
    const of = recipeIndexes({ all: async () => published });
    let turns = 0;
    const count = () => {
      turns += 1;
      timer = setImmediate(count);
    };
    timer = setImmediate(count);
    const { entries } = await of(at(1), FOODS).whole();
    expect(entries).toHaveLength(300);
    expect(turns).toBeGreaterThan(2);
  });

  let timer: NodeJS.Immediate | undefined;
  afterEach(() => clearImmediate(timer));
});
