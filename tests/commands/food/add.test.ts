import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { foodAdd } from "../../../commands/food/add.ts";
import { groupId } from "../../../shared/ids.ts";
import {
  buttonOf,
  COACH,
  fileOf,
  MEMBER,
  openTestBot,
  type Person,
  STRANGER,
  type TestBot,
} from "../../kit/bot.ts";
import { readAloud } from "../../kit/recipes-and-context.ts";

/** An invented crispbread, as its EU pack has it. */
const CRISPBREAD = {
  name: "Rye crispbread",
  per: "100 g",
  energy: "1448 kJ / 344 kcal",
  protein: "9,5 g",
  fat: "1.7 g",
  carbohydrate: "64 g",
  fibre: "16 g",
  sugars: "1.2 g",
  salt: "1.2 g",
  one: "1 slice = 12 g",
  allergens: "rye, wheat",
  like: "white bread",
};
const { allergens: _, ...UNREAD } = CRISPBREAD;

let bot: TestBot;
beforeEach(async () => {
  bot = await openTestBot("2026-11-25T10:00:00Z");
});
afterEach(() => bot.close());

const add = (raw: Record<string, string>, who: Person = COACH, requestId?: string) =>
  bot.ask(who, "food add", raw, requestId);
const said = async (raw: Record<string, string>) => readAloud(await add(raw));
const own = (group = "g1") => bot.stores.foods.list(groupId(group));

describe("/food add", () => {
  it("is the coach's: nobody else adds, nor is offered anything while typing", async () => {
    expect(foodAdd.who).toBe("coach");
    const refused = await add(CRISPBREAD, MEMBER);
    expect(refused.heading).toContain("is for the group's coach");
    expect(await own()).toEqual([]);
  });

  it("says what is stored per 100 g in the group's style, what it is like, and that it is usable", async () => {
    const reply = await add(CRISPBREAD);
    const words = readAloud(reply);
    expect(reply.heading).toBe("Saved: Rye crispbread, 344 kcal (about 1439 kJ) in 100 g.");
    expect(words).toContain("carbohydrate: 64 g without fibre (80 g with fibre)");
    expect(words).toContain("salt: 1.2 g (sodium 480 mg)");
    expect(words).toContain("fat: 1.7 g (saturated not known)");
    expect(words).toContain("allergens: wheat, gluten");
    expect(words).toContain("taken to be like: white bread (ready, in a batch it keeps as");
    expect(words).toContain("1 slice: 12 g");
    expect(words).toContain("Usable in recipes at once: “- 100 g Rye crispbread”.");
    expect(words).toContain("New in this group; no other group sees it.");
    expect(reply.audience).toBe("private");
  });

  it("is usable in a recipe at once, by its name, with its figures on the card", async () => {
    await add(CRISPBREAD);
    const text =
      "Rye lunch\nMakes 2 portions\n\n- 10 slices rye crispbread\n\nKeeps 2 days in the fridge\n";
    const read = await bot.ask(COACH, "recipe publish", fileOf(text));
    expect(readAloud(read)).toContain("taken as Rye crispbread");
    await bot.press(COACH, buttonOf(read, "Publish"));
    const card = readAloud(await bot.ask(MEMBER, "recipe card", { recipe: "Rye lunch" }));
    // Ten slices of 12 g for two, 60 g each: by the EU's factors 60 % of 9.5 g protein x 4, 1.7 g fat x 9,
    // 64 g carbohydrate x 4 and 16 g fibre x 2, that is 205 kcal (the pack says 344 for 100 g, 206 for 60).
    expect(card).toMatch(/205 kcal/u);
    expect(card).toMatch(/protein: 5\.7 g/u);
    expect(card).toContain("gluten");
  });

  it("is the group's own: another group's book, lists and recipes know nothing of it", async () => {
    await add(CRISPBREAD);
    const elsewhere = await bot.ask(STRANGER, "food look", { food: "rye crispbread" });
    expect(readAloud(elsewhere)).not.toContain("344 kcal");
    expect(await own("g2")).toEqual([]);
    const id = (await own())[0]?.id ?? "";
    const stolen = await bot.press(STRANGER, "food look.show", [id]);
    expect(stolen.heading).toContain("no longer here");
    const own2 = await add({ ...CRISPBREAD, energy: "1448 kJ" }, STRANGER);
    expect(readAloud(own2)).toContain("New in this group");
  });

  it("does the same request once", async () => {
    const first = await add(CRISPBREAD, COACH, "same");
    const again = await add(CRISPBREAD, COACH, "same");
    expect(again.heading).toBe(first.heading);
    expect(readAloud(again)).toContain("That is what was stored already");
    expect(await own()).toHaveLength(1);
  });

  it("puts a newer label in the place of the one of the same name, in recipes too", async () => {
    await add(CRISPBREAD);
    const text =
      "Rye lunch\nMakes 1 portion\n\n- 100 g rye crispbread\n\nKeeps 2 days in the fridge\n";
    await bot.publish(COACH, text);
    const newer = {
      ...CRISPBREAD,
      name: "rye  CRISPBREAD",
      energy: "1530 kJ / 362 kcal",
      fat: "3.7 g",
    };
    expect(await said(newer)).toContain("It replaces the earlier label of this name");
    expect(await own()).toHaveLength(1);
    const card = readAloud(await bot.ask(MEMBER, "recipe card", { recipe: "Rye lunch" }));
    // The pack says 362; by the EU's factors its 9.5, 3.7, 64 and 16 g make 359.
    expect(card).toMatch(/359 kcal/u);
  });

  it("says that allergens nobody typed are not known, and warns the member who avoids any", async () => {
    const words = await said(UNREAD);
    expect(words).toContain("allergens: not known (nobody can rely on it being free of anything");
    expect(words).toContain("! Allergens not known: nobody can rely on it being free of anything.");
    expect((await own())[0]?.allergens).toBeNull();
    await bot.ask(MEMBER, "me", { allergens: "sesame" });
    const look = await bot.ask(MEMBER, "food look", { food: "rye crispbread" });
    expect(look.alerts.join(" ")).toContain("may hold sesame, which you avoid");
  });

  it("tells that a table food of the same name is meant no longer", async () => {
    const butter = {
      name: "Peanut butter",
      per: "2 tbsp (32 g)",
      energy: "190 calories",
      protein: "7 g",
      fat: "16 g",
      carbohydrate: "8 g",
      fibre: "2 g",
      salt: "sodium 140 mg",
      style: "us",
      allergens: "peanuts",
    };
    const words = await said(butter);
    expect(words).toContain("no longer the table's peanut butter");
    expect(words).toContain("density: 1.07 g/ml");
    expect(words).toContain("taken from the name, type like: if that is wrong");
    expect(words).toContain("A US pack need not name gluten of barley");
  });

  it("follows the group's label style where none is typed", async () => {
    await bot.stores.groups.open(groupId("g1"), "g1");
    await bot.stores.groups.set(groupId("g1"), { labelStyle: "us" });
    const words = await said({ ...CRISPBREAD, carbohydrate: "80 g" });
    expect(words).toContain("carbohydrate: 80 g with fibre (64 g without fibre)");
    expect((await own())[0]?.source.number).toBe("US style, per 100 g");
  });

  it("warns of what a small serving rounds away", async () => {
    const small = {
      ...CRISPBREAD,
      style: "us",
      per: "serving 10 g",
      energy: "35 kcal",
      protein: "1 g",
      fat: "0 g",
      carbohydrate: "8 g",
      fibre: "2 g",
      sugars: "0 g",
      salt: "sodium 50 mg",
    };
    expect(await said(small)).toContain("a figure per 100 g may be 5 g off");
  });

  it("keeps what is only odd when the coach is sure, and never what cannot be", async () => {
    const odd = { ...CRISPBREAD, energy: "144 kcal" };
    const refusal = await said(odd);
    expect(refusal).toContain("Nothing was saved yet: this looks like a slip.");
    expect(refusal).toContain("send the same again with sure:yes");
    expect(await own()).toEqual([]);
    expect(await said({ ...odd, sure: "yes" })).toContain("Saved: Rye crispbread, 144 kcal");
    const impossible = { ...CRISPBREAD, name: "Other crispbread", protein: "95 g", sure: "yes" };
    expect(await said(impossible)).toContain("Nothing was saved: no pack can say this.");
    expect(await own()).toHaveLength(1);
  });

  it.each([
    [{ energy: "344" }, "energy:344 may be kJ or kcal"],
    [{ energy: "344 kJ" }, "344 kJ does not fit protein, fat and carbohydrate, and 344 kcal would"],
    [{ salt: "480 mg" }, "salt:480 mg may be salt or sodium"],
    [
      { salt: "salt 0.48 g / sodium 480 mg" },
      "That sodium makes 1.2 g of salt (sodium × 2.5), not 0.48 g",
    ],
    [{ per: "100 ml" }, "type density: too"],
    [{ per: "1 cup" }, "has no grams or millilitres"],
    [{ sugars: "94 g" }, "There are more sugars than carbohydrate"],
    [{ saturates: "5 g" }, "There are more saturates than fat"],
    [
      { style: "us", carbohydrate: "10 g", energy: "100 kcal" },
      "type style:eu if the pack lists fibre apart",
    ],
    [{ fat: "-1 g" }, "fat:-1 g is below zero"],
    [{ protein: "much" }, "protein:much is not understood"],
    [{ one: "12 g" }, "type what one weighs, such as 1 slice = 35 g"],
    [{ allergens: "shellfish" }, "may be crustaceans or molluscs"],
    [{ allergens: "none" }, "white bread, is made of wheat and the allergens typed do not say so"],
    [{ name: "Sesame crispbread" }, "The name says sesame and the allergens typed do not"],
    [{ like: "qwertzuiop" }, "like:qwertzuiop is not in the food table"],
    [{ name: "Bread, rye (thin)" }, "cannot stand in a recipe line"],
    [{ name: "хлеб" }, "cannot stand in a recipe line"],
    [{ name: "Bread or 2 rolls" }, "would not be read as this food"],
    [{ name: " " }, "Fill in name:"],
  ])("refuses %j with a sentence and stores nothing", async (change, sentence) => {
    expect(await said({ ...CRISPBREAD, ...change })).toContain(sentence);
    expect(await own()).toEqual([]);
  });

  it("asks what it is like when its name says nothing", async () => {
    const { like: _like, ...plain } = CRISPBREAD;
    expect(await said({ ...plain, name: "Qwertzuiop" })).toContain(
      "Nothing in the food table is like “Qwertzuiop”: type like:",
    );
  });

  it("refuses a name that would be taken for another food of the group", async () => {
    await add(CRISPBREAD);
    expect(await said({ ...CRISPBREAD, name: "Rye-crispbreads" })).toContain(
      "would be taken for this group's “Rye crispbread”",
    );
    expect(await own()).toHaveLength(1);
  });

  it("keeps within what the platform allows: 25 options, required ones first, 100 characters", () => {
    expect(foodAdd.options.length).toBeLessThanOrEqual(25);
    const firstFree = foodAdd.options.findIndex(({ required }) => !required);
    expect(foodAdd.options.slice(firstFree).every(({ required }) => !required)).toBe(true);
    for (const { name, description } of foodAdd.options) {
      expect(name).toMatch(/^[a-z-]{1,32}$/u);
      expect(description.length, name).toBeLessThanOrEqual(100);
    }
  });
});
