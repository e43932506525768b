import { Temporal } from "temporal-polyfill";
import { beforeEach, describe, expect, it } from "vitest";
import { changesSince } from "../../../commands/recipe/changes-since.ts";
import { groupId } from "../../../shared/ids.ts";
import { buttonOf, COACH, fileOf, MEMBER, OTHER, POT_TEXT, STRANGER } from "../../kit/bot.ts";
import { FOODS, readAloud, testContext } from "../../kit/recipes-and-context.ts";
import { attach, botForEach, choiceOf, formIn, NETTLES, optionIn, published } from "./draft-kit.ts";

const bot = botForEach();
const TITLE = "Barley and lamb pot";

beforeEach(async () => {
  await bot().ask(COACH, "group setup", { zone: "Europe/Lisbon" });
  await bot().publish(COACH, POT_TEXT);
});

const open = async (recipe = TITLE, who = COACH) =>
  bot().form(who, { path: ["recipe", "revise"], given: ["recipe"], texts: { recipe } });
const revise = async (from: string, to: string) => {
  const form = formIn(await open());
  const text = form.fields[0]?.value.replace(from, to) ?? "";
  return bot().submit(COACH, form.id, { text });
};
const publish = async (from: string, to: string) =>
  bot().press(COACH, buttonOf(await revise(from, to), "Publish"));
const cook = (recipe = TITLE) =>
  bot().ask(MEMBER, "batch log", { recipe, cooked: "now", portions: "6" });
const memberOf = (who = MEMBER) =>
  bot().stores.members.open(groupId(who.group), who.userId, who.name);
const newest = async () => {
  const found = await bot().stores.recipes.find(groupId(COACH.group), TITLE);
  if (found === null) throw new Error("no recipe");
  return found;
};
const since = async (who = MEMBER) => {
  const member = await memberOf(who);
  const group = await bot().stores.groups.open(groupId(who.group), who.group);
  const context = testContext({ stores: bot().stores, group, member, foods: FOODS });
  return changesSince(context, await newest());
};

describe("/recipe revise", () => {
  it("opens the form with the text as it was written, whatever part of the title is typed", async () => {
    expect(formIn(await open()).fields[0]?.value).toBe(POT_TEXT);
    expect(formIn(await open("lamb")).title).toBe(TITLE);
  });

  it("says before and after publishing what changed, in words", async () => {
    const read = await revise("300 g pearl barley", "250 g pearl barley");
    expect(readAloud(read)).toContain(`Against revision 1 of ${TITLE}:\npearl barley 300 → 250 g`);
    const done = await bot().press(COACH, buttonOf(read, "Publish"));
    expect(done.heading).toBe(`Published as revision 2: ${TITLE}, 6 portions.`);
    expect(readAloud(done)).toContain("What changed:\npearl barley 300 → 250 g");
    expect(readAloud(done)).toContain("No member has portions of it");
    expect(await published(bot())).toMatchObject([{ revisionNumber: 2 }]);
  });

  it.each([
    ["Makes 6 portions", "Makes 8 portions", "portions 6 → 8"],
    ["- 200 g carrots, sliced", "- 15 g lemon juice", "new: lemon juice 15 g\ngone: carrots 200 g"],
    ["carrots, sliced", "carrots, diced", "carrots: diced"],
    ["Keeps 3 days in the fridge", "Keeps 4 days in the fridge", "keeps 3 → 4 days"],
    ["Freezes 3 months", "Does not freeze: it weeps", "freezes 3 months → does not freeze"],
    ["for 60 minutes", "for 45 minutes", "step 1: 60 → 45 min"],
    ["Simmer for", "Bake for", "step 1 reworded"],
    ["600 g lamb, diced", "600 g lamb, diced or 500 g tofu", "lamb: or tofu 500 g"],
  ])("says of “%s” and “%s” that it is %s", async (from, to, says) => {
    expect(readAloud(await publish(from, to))).toContain(`What changed:\n${says}\n`);
  });

  it("takes the whole new text as a file", async () => {
    const raw = { recipe: TITLE, ...fileOf(POT_TEXT.replace("200 g carrots", "100 g carrots")) };
    const read = await bot().ask(COACH, "recipe revise", raw);
    expect(readAloud(read)).toContain("carrots 200 → 100 g");
  });

  it("renames the recipe where the title was changed, with its history, and says so first", async () => {
    await bot().ask(MEMBER, "batch log", { recipe: TITLE });
    const first = await newest();
    const read = await revise(`${TITLE}\nMakes 6`, "Lamb and barley pot\nMakes 8");
    expect(readAloud(read)).toContain(
      `Publish renames “${TITLE}” to “Lamb and barley pot”, history and all.`,
    );
    const done = await bot().press(COACH, buttonOf(read, "Publish"));
    expect(done.heading).toBe("Published as revision 2: Lamb and barley pot, 8 portions.");
    expect(readAloud(done)).toContain(`title “${TITLE}” → “Lamb and barley pot”`);
    expect(await published(bot())).toMatchObject([{ id: first.id, revisionNumber: 2 }]);
    // Who cooked it under its old title is told, and the next revision starts from the new one.
    const card = await bot().ask(MEMBER, "recipe card", { recipe: "Lamb and barley pot" });
    expect(readAloud(card)).toContain(`Changed since you cooked it: title “${TITLE}”`);
    expect(formIn(await open("Lamb and")).fields[0]?.value).toMatch(/^Lamb and barley pot\n/u);
  });

  it("keeps its title where another recipe has the new one", async () => {
    await bot().publish(COACH, POT_TEXT.replace(TITLE, "Second pot"));
    const read = await revise(`${TITLE}\nMakes 6`, "Second pot\nMakes 8");
    expect(readAloud(read)).toContain(`There is a recipe “Second pot” already`);
    const done = await bot().press(COACH, buttonOf(read, "Publish"));
    expect(done.heading).toBe(`Published as revision 2: ${TITLE}, 8 portions.`);
    expect((await published(bot())).map((one) => one.recipe.title)).toEqual([TITLE, "Second pot"]);
    // What is published is what the next revision starts from.
    expect(formIn(await open()).fields[0]?.value).toMatch(/^Title: Barley and lamb pot\n/u);
  });

  it("cannot take the title of a withdrawn recipe, whose history that is", async () => {
    await bot().publish(COACH, POT_TEXT.replace(TITLE, "Second pot"));
    const asked = await bot().ask(COACH, "recipe withdraw", { recipe: "Second pot" });
    await bot().press(COACH, buttonOf(asked, "Withdraw"));
    const read = await revise(TITLE, "Second pot");
    const done = await bot().press(COACH, buttonOf(read, "Publish"));
    expect(readAloud(done)).toContain("It cannot be called “Second pot”");
    expect((await published(bot())).map((one) => one.recipe.title)).toEqual([TITLE]);
    expect((await bot().ask(COACH, "recipe drafts")).heading).toMatch(/^You have 1 draft,/u);
  });

  it("publishes under the new title beside it only where the coach says so", async () => {
    const read = await revise(TITLE, "Lamb and barley pot");
    const done = await bot().press(COACH, buttonOf(read, "As a new recipe"));
    expect(done.heading).toBe("Published: Lamb and barley pot, 6 portions.");
    expect((await published(bot())).map((one) => one.revisionNumber)).toEqual([1, 1]);
  });

  it("remembers which recipe it revises through the list of drafts", async () => {
    const read = await revise("Makes 6", "Makes 8");
    const list = await bot().ask(COACH, "recipe drafts");
    expect(readAloud(list)).toContain(`(a revision of ${TITLE})`);
    const shown = await bot().press(COACH, choiceOf(list).id, [optionIn(list, TITLE)]);
    expect(readAloud(shown)).toBe(readAloud(read));
  });

  it("keeps the foods that the coach chose for the revision before", async () => {
    const first = await attach(bot(), NETTLES);
    const chosen = await bot().press(COACH, choiceOf(first).id, [optionIn(first, "spinach, raw")]);
    await bot().press(COACH, buttonOf(chosen, "Publish"));
    const form = formIn(await open("Green pot"));
    const read = await bot().submit(COACH, form.id, { text: form.fields[0]?.value ?? "" });
    expect(readAloud(read)).toContain("taken as spinach, raw; your choice");
    expect(readAloud(read)).toContain("It says the same as revision 1");
  });

  it("opens nothing of another group, nor of what there is not", async () => {
    for (const made of [await open(TITLE, STRANGER), await open("No such pie"), await open("")]) {
      expect("heading" in made && made.heading).toMatch(/There is no recipe|Fill in recipe/u);
    }
    const member = await open(TITLE, MEMBER);
    expect("heading" in member && member.heading).toMatch(/for the group's coach/u);
  });

  it("whose recipe was withdrawn meanwhile brings it back as its next revision", async () => {
    const read = await revise("Makes 6", "Makes 8");
    await bot().stores.recipes.withdraw(
      groupId(COACH.group),
      (await newest()).id,
      bot().clock.now(),
    );
    const done = await bot().press(COACH, buttonOf(read, "Publish"));
    expect(done.heading).toBe(`Published as revision 2: ${TITLE}, 8 portions.`);
  });
});

describe("members who have a recipe that is revised", () => {
  it("are counted, with those who cooked it in the last 14 days, and keep what they cooked", async () => {
    await cook();
    const before = (await bot().stores.stocks.load((await memberOf()).id)).batches;
    const done = readAloud(await publish("600 g lamb", "900 g lamb"));
    expect(done).toContain("1 member has portions of it or cooked it in the last 14 days.");
    const { batches } = await bot().stores.stocks.load((await memberOf()).id);
    expect(batches).toEqual(before);
    const cooked = batches[0];
    if (cooked === undefined) throw new Error("no batch");
    const kept = await bot().stores.recipes.revision(groupId(COACH.group), cooked.revisionId);
    expect(kept?.revisionNumber).toBe(1);
    expect(kept?.recipe.components[0]?.lines[0]?.main.grams).toBe(600);
  });

  it("are told what changed since their newest batch of it, and nobody else", async () => {
    expect(await since()).toEqual([]);
    await cook();
    expect(await since()).toEqual([]);
    await publish("600 g lamb", "900 g lamb");
    await publish("Makes 6", "Makes 9");
    expect(await since()).toEqual(["portions 6 → 9", "lamb 600 → 900 g"]);
    expect(await since(OTHER)).toEqual([]);
    bot().clock.advanceTo(Temporal.Instant.from("2026-10-11T12:00:00Z"));
    await cook();
    expect(await since()).toEqual([]);
  });
});
