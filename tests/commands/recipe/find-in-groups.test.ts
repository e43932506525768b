import { Temporal } from "temporal-polyfill";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Suggestion } from "../../../commands/kit/command.ts";
import { completeRecipe, recipeOrRefuse } from "../../../commands/kit/recipe-options.ts";
import { groupId, causeId as makeCause } from "../../../shared/ids.ts";
import { recipeIndexes } from "../../../src/bot/recipe-indexes.ts";
import { manyRecipes } from "../../bench/many-recipes.ts";
import {
  COACH,
  MEMBER,
  openTestBot,
  POT_TEXT,
  SALAD_TEXT,
  STRANGER,
  type TestBot,
  wordsOf,
} from "../../kit/bot.ts";
import {
  FOODS,
  memoryRecipes,
  recipeOf,
  storesWith,
  testContext,
} from "../../kit/recipes-and-context.ts";
import { counter } from "../../kit/stock.ts";

const titles = (offers: readonly Suggestion[]) => offers.map(({ label }) => label);

describe("/recipe find in two groups", () => {
  let test: TestBot;
  beforeEach(async () => {
    test = await openTestBot("2026-10-11T18:00:00Z");
    await test.publish(COACH, POT_TEXT);
    await test.publish(STRANGER, SALAD_TEXT);
  });
  afterEach(() => test.close());

  const found = async (who: typeof MEMBER, raw = {}) =>
    wordsOf(await test.ask(who, "recipe find", raw));

  it("never shows one group what another has, by no option", async () => {
    for (const raw of [{}, { words: "cucumber" }, { uses: "cucumber" }, { freezes: "no" }]) {
      expect(await found(MEMBER, raw)).not.toContain("Cucumber bowl");
    }
    expect(await found(STRANGER)).toContain("Cucumber bowl");
    expect(await found(STRANGER, { words: "barley" })).not.toContain("Barley and lamb pot");
  });

  it("shows at once what was published, and what a new revision changed", async () => {
    expect(await found(MEMBER)).toContain("1 recipe");
    await test.publish(COACH, SALAD_TEXT);
    expect(await found(MEMBER)).toContain("Cucumber bowl");
    expect(await found(MEMBER, { words: "celeriac" })).toContain("No recipe fits");
    await test.publish(COACH, POT_TEXT.replace("carrots", "celeriac"));
    expect(await found(MEMBER, { words: "celeriac" })).toContain("Barley and lamb pot");
    expect(await found(MEMBER, { words: "carrots" })).toContain("No recipe fits");
  });

  it("leads to the card, with the same figures by the rules of either label", async () => {
    for (const labels of ["us", "eu"]) {
      await test.ask(COACH, "group setup", { labels });
      const list = await test.ask(MEMBER, "recipe find", { words: "barley" });
      const row = /(\d+ kcal) · (\d+ g) protein/u.exec(wordsOf(list));
      const [choice] = list.choices;
      const card = await test.press(MEMBER, choice?.id ?? "", [choice?.options[0]?.value ?? ""]);
      expect(card.heading).toContain("Barley and lamb pot: 6 portions");
      expect(wordsOf(card)).toMatch(new RegExp(`^energy .*${row?.[1] ?? "no energy"}`, "mu"));
      expect(wordsOf(card)).toContain(`protein ${row?.[2] ?? "no protein"}`);
    }
  });

  it("shows no longer what was withdrawn", async () => {
    expect(await found(MEMBER)).toContain("Barley and lamb pot");
    const { recipes } = test.stores;
    const group = groupId(MEMBER.group);
    const pot = await recipes.find(group, "Barley and lamb pot");
    if (pot === null) throw new Error("it was not published");
    await recipes.withdraw(group, pot.id, Temporal.Instant.from("2026-10-11T18:05:00Z"));
    expect(await found(MEMBER)).toContain("There are no recipes yet.");
    expect(await found(MEMBER, { words: "barley" })).not.toContain("Barley and lamb pot");
  });

  it("shows all of more recipes than the store reads at once", async () => {
    const { recipes, members } = test.stores;
    const group = groupId(MEMBER.group);
    const coach = await members.open(group, COACH.userId, COACH.name);
    const newId = counter("many");
    for (const { recipe, revisionId } of manyRecipes(FOODS, 520)) {
      const now = Temporal.Instant.from("2026-10-11T18:05:00Z");
      const causeId = makeCause(revisionId);
      const written = { sourceText: "", takenFor: {}, newId, now, causeId };
      await recipes.publish({ groupId: group, by: coach.id, recipe, ...written });
    }
    const all = await recipes.all(group);
    expect(new Set(all.map(({ id }) => id)).size).toBe(521);
    expect(await found(MEMBER)).toContain("The first 10 of 521 recipes");
  });
});

describe("completion of a recipe", () => {
  const recipes = memoryRecipes(
    ["Barley pot", "Green pea soup"].map((title) =>
      recipeOf(`${title}\nMakes 4 portions\n- 400 g carrots`),
    ),
  );
  const stores = storesWith({ recipes });

  it("offers by words, foods and slips", async () => {
    const context = testContext({ stores });
    expect(titles(await completeRecipe(context, "pea", {}))).toEqual(["Green pea soup"]);
    expect(titles(await completeRecipe(context, "brley", {}))).toEqual(["Barley pot"]);
    expect(titles(await completeRecipe(context, "carrot", {}))).toHaveLength(2);
  });

  it("offers by titles alone while the book is not read yet", async () => {
    const slow = recipeIndexes({ all: () => new Promise(() => undefined) }, 1);
    const context = testContext({ stores });
    const waiting = { ...context, recipeBook: slow(context.group, FOODS) };
    expect(titles(await completeRecipe(waiting, "pea", {}))).toEqual(["Green pea soup"]);
    expect(titles(await completeRecipe(waiting, "carrot", {}))).toEqual([]);
  });

  it("is never guessed when a command is sent: a slip is refused with the nearest", async () => {
    const context = testContext({ stores });
    await expect(recipeOrRefuse(context, "brley pot")).rejects.toThrow(
      "There is no recipe “brley pot”: did you mean Barley pot?",
    );
    await expect(recipeOrRefuse(context, "zzz")).rejects.toThrow("type /recipe find to see");
    expect((await recipeOrRefuse(context, "barley")).recipe.title).toBe("Barley pot");
  });

  it("offers a long title cut, with the recipe's id as its value", async () => {
    const long = memoryRecipes([
      recipeOf(`${"Long ".repeat(30)}pot\nMakes 4 portions\n- 400 g carrots`),
    ]);
    const [offer] = await completeRecipe(
      testContext({ stores: storesWith({ recipes: long }) }),
      "lo",
      {},
    );
    expect(offer?.label).toHaveLength(100);
    expect(offer?.value).toBe(long.published[0]?.id);
  });
});
