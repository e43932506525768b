import { describe, expect, it } from "vitest";
import { buttonOf, COACH, fileTextOf } from "../../kit/bot.ts";
import { readAloud } from "../../kit/recipes-and-context.ts";
import {
  attach,
  blankForm,
  botForEach,
  choiceOf,
  edit,
  formIn,
  NETTLES,
  optionIn,
  published,
} from "./draft-kit.ts";

const bot = botForEach();

describe("writing a recipe in a form", () => {
  it("opens for a command without a file, and what comes back is read and kept", async () => {
    const form = await blankForm(bot());
    expect(form.fields.map(({ label }) => label)).toEqual([
      "Recipe",
      "Recipe, continued",
      "Recipe, continued",
    ]);
    const [first = "", rest = ""] = NETTLES.split(/\n(?=Steps)/u);
    const read = await bot().submit(COACH, form.id, { text: first, more1: rest, more2: "" });
    expect(read.heading).toBe("Read: Green pot, 4 portions");
    expect((await bot().ask(COACH, "recipe drafts")).heading).toMatch(/^You have 1 draft,/u);
  });

  it("takes a form that comes twice for one draft, and an edit for the same draft", async () => {
    const form = await blankForm(bot());
    await bot().submit(COACH, form.id, { text: NETTLES });
    const read = await bot().submit(COACH, form.id, { text: NETTLES });
    const again = formIn(await edit(bot(), read));
    expect(again.fields[0]?.value).toBe(NETTLES);
    const mended = NETTLES.replace("nettle spinach mix", "spinach");
    expect(readAloud(await bot().submit(COACH, again.id, { text: mended }))).toContain(
      "spinach, raw",
    );
    expect((await bot().ask(COACH, "recipe drafts")).heading).toMatch(/^You have 1 draft,/u);
  });

  it("reads a pasted schema.org recipe, and keeps one that is broken as it came", async () => {
    const document = {
      "@type": "Recipe",
      name: "Pot",
      recipeYield: 2,
      recipeIngredient: "5 g salt",
    };
    const pasted = { text: JSON.stringify(document) };
    expect((await bot().submit(COACH, (await blankForm(bot())).id, pasted)).heading).toMatch(
      /^Read: Pot, 2/u,
    );
    const broken = await bot().submit(COACH, (await blankForm(bot())).id, {
      text: '{"@type": "Recipe"',
    });
    expect(readAloud(broken)).toContain("not whole JSON");
    const form = formIn(await edit(bot(), broken));
    expect(form.fields[0]?.value).toBe('{"@type": "Recipe"');
  });

  it("gives back as a file what is too long to keep, and refuses nothing at all", async () => {
    const page = "- 5 g salt\n".repeat(360);
    const long = Object.fromEntries(
      ["text", "more1", "more2", "more3", "more4"].map((name) => [name, `${page}x`]),
    );
    const over = { ...long, more4: `${page}${"x".repeat(250)}` };
    const back = await bot().submit(COACH, (await blankForm(bot())).id, over);
    expect(back.heading).toMatch(/characters: a recipe may have 20000/u);
    expect(fileTextOf(back)).toContain("- 5 g salt");
    const empty = await bot().submit(COACH, (await blankForm(bot())).id, { text: " " });
    expect(empty.heading).toMatch(/There is no text/u);
    expect((await bot().ask(COACH, "recipe drafts")).heading).toBe("You have no drafts.");
  });
});

describe("a food that was not found", () => {
  it("is offered foods of like names, one line after the other, and keeps the one picked", async () => {
    const read = await attach(bot(), NETTLES);
    expect(choiceOf(read).placeholder).toBe("What is “nettle spinach mix”?");
    const next = await bot().press(COACH, choiceOf(read).id, [optionIn(read, "spinach, raw")]);
    expect(readAloud(next)).toContain(
      "nettle spinach mix: 300 g (taken as spinach, raw; your choice)",
    );
    expect(choiceOf(next).placeholder).toBe("What is “jumbled chard leaves”?");
    const done = await bot().press(COACH, choiceOf(next).id, [optionIn(next, "chard, raw")]);
    expect(done.choices).toEqual([]);
    expect(readAloud(done)).toContain("Every line was found and weighed.");
    await bot().press(COACH, buttonOf(done, "Publish"));
    const [recipe] = await published(bot());
    const lines = recipe?.recipe.components[0]?.lines ?? [];
    expect(lines.map(({ main }) => main.foodId === null)).toEqual([false, false, false]);
  });

  it("may be left uncounted, and the next one is offered", async () => {
    const read = await attach(bot(), NETTLES);
    const next = await bot().press(COACH, choiceOf(read).id, [optionIn(read, "None of these")]);
    expect(choiceOf(next).placeholder).toBe("What is “jumbled chard leaves”?");
    const last = await bot().press(COACH, choiceOf(next).id, [optionIn(next, "None of these")]);
    expect(last.choices).toEqual([]);
    expect(readAloud(last)).toContain("2 lines need a look:");
  });

  it("that may be another is confirmed by picking it, and one without any like food is passed over", async () => {
    const text = "Pot\nMakes 2 portions\n- 90 g qwertz\n- 80 g chedder chese\n";
    const read = await attach(bot(), text);
    expect(readAloud(read)).toContain("Line 4: “chedder chese” is taken as cheddar cheese: is it");
    const sure = await bot().press(COACH, choiceOf(read).id, [optionIn(read, "cheddar cheese")]);
    expect(readAloud(sure)).toContain("1 line needs a look:\nLine 3: “qwertz”");
    expect(sure.choices).toEqual([]);
  });

  it("is never taken for a food that was not offered", async () => {
    const read = await attach(bot(), NETTLES);
    for (const picked of ["butter-salted", "", "constructor", "x".repeat(90)]) {
      const refused = await bot().press(COACH, choiceOf(read).id, [picked]);
      expect(readAloud(refused), picked).toContain("Pick one of the foods");
      expect(readAloud(refused)).toContain("nettle spinach mix: 300 g (not in the food table)");
    }
  });
});

describe("a draft", () => {
  it("is there after a restart of the day, listed with what it is, and goes on from there", async () => {
    await attach(bot(), NETTLES);
    await attach(bot(), "Soup\n- 5 g salt");
    const list = await bot().ask(COACH, "recipe drafts");
    expect(list.heading).toBe("You have 2 drafts, of 10 at most.");
    expect(readAloud(list)).toContain("Green pot: changed Sun 11 Oct, 10:00 (a new recipe)");
    const shown = await bot().press(COACH, choiceOf(list).id, [optionIn(list, "Green pot")]);
    expect(shown.heading).toBe("Read: Green pot, 4 portions");
  });

  it("is dropped by a press that gives the text back", async () => {
    const read = await attach(bot(), NETTLES);
    const dropped = await bot().press(COACH, buttonOf(read, "Drop"));
    expect(dropped.heading).toBe("Dropped: Green pot");
    expect(fileTextOf(dropped)).toBe(NETTLES);
    expect((await bot().press(COACH, buttonOf(read, "Publish"))).heading).toMatch(/not there any/u);
    expect(await published(bot())).toEqual([]);
  });

  it("is one of ten at most: an eleventh is refused before it is typed, or comes back", async () => {
    const form = await blankForm(bot());
    for (let n = 1; n <= 10; n += 1) await attach(bot(), `Pot ${n}\nMakes 2 portions\n- 5 g salt`);
    const more = { path: ["recipe", "publish"], given: [] };
    expect(await bot().form(COACH, more)).toMatchObject({
      heading: expect.stringMatching(/^You have 10 drafts/u),
    });
    expect((await attach(bot(), NETTLES)).heading).toMatch(/^You have 10 drafts/u);
    const back = await bot().submit(COACH, form.id, { text: NETTLES });
    expect(back.heading).toMatch(/^You have 10 drafts/u);
    expect(fileTextOf(back)).toBe(NETTLES);
  });
});
