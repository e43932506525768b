import { describe, expect, it } from "vitest";
import { foodLook } from "../../../commands/food/look.ts";
import { Refusal } from "../../../commands/kit/command.ts";
import type { Context } from "../../../commands/kit/context.ts";
import { PRESS_ID_MAX, readPress } from "../../../commands/kit/press.ts";
import type { Reply } from "../../../commands/kit/reply.ts";
import { foodBook, withOwnFoods } from "../../../shared/food/book.ts";
import { type Food, PACK_LABEL } from "../../../shared/food/types.ts";
import { foodId } from "../../../shared/ids.ts";
import { FOODS, GROUP, MEMBER, readAloud, testContext } from "../../kit/recipes-and-context.ts";

function food(id: string, name: string, rest: Partial<Food> = {}): Food {
  return {
    id: foodId(id),
    name,
    otherNames: [],
    source: { table: "USDA SR28", number: "99999" },
    state: "raw",
    per100g: {
      energyKcal: 200,
      proteinG: 10,
      fatG: 8,
      saturatedFatG: null,
      carbohydrateG: 20,
      fibreG: 5,
      sugarsG: null,
      sodiumMg: 400,
    },
    waterG: 50,
    alcoholG: 0,
    densityGPerMl: null,
    one: null,
    measures: [],
    refusePct: 0,
    allergens: [],
    mayHide: [],
    keepingClass: "vegetable",
    ...rest,
  };
}

const ROOT = food("marsh-root", "marsh root, raw", {
  otherNames: ["marshroot"],
  densityGPerMl: 0.5,
  one: { word: "root", grams: 80 },
  measures: [
    { name: "cup, chopped", grams: 130 },
    { name: "slice", grams: 9 },
  ],
  refusePct: 10,
  allergens: ["celery"],
  mayHide: ["mustard"],
});
const COOKED = food("marsh-root-cooked", "marsh root, boiled, cooked", { state: "cooked" });
const POD = food("marsh-pod", "marsh pod, raw", { per100g: { ...ROOT.per100g, energyKcal: null } });
const PACK = food("own-abc", "Marsh crisps", {
  source: { table: PACK_LABEL, number: "EU style, per 100 g" },
  allergens: null,
  per100g: { ...ROOT.per100g, fibreG: null },
});
const book = withOwnFoods(foodBook([ROOT, COOKED, POD]), [PACK]);
const context = testContext({ foods: book });

const look = (raw: Record<string, string>, on: Context = context) => foodLook.run(on, raw);
const aloud = async (raw: Record<string, string>, on?: Context) => readAloud(await look(raw, on));

async function pick(reply: Reply, value: string, on: Context = context): Promise<Reply> {
  const press = readPress(reply.choices[0]?.id ?? "");
  const action = foodLook.actions[press?.action ?? ""];
  if (press === null || action === undefined) throw new Error("no list to pick from");
  return action(on, [...press.args, value]);
}

describe("/food look", () => {
  it("answers in the first line, then figures with units and what is missing named", async () => {
    const reply = await look({ food: "marshroot" });
    const words = readAloud(reply);
    expect(reply.heading).toBe("marsh root, raw: 200 kcal (about 837 kJ) in 100 g");
    expect(words).toContain("protein: 10 g");
    expect(words).toContain("fat: 8 g (saturated not known)");
    expect(words).toContain("sugars: not known");
    expect(words).toContain("salt: 1 g (sodium 400 mg)");
    expect(foodLook.who).toBe("everyone");
  });

  it("makes clear whether fibre is in the carbohydrate, in the group's style first", async () => {
    expect(await aloud({ food: "marshroot" })).toContain(
      "carbohydrate: 15 g without fibre (20 g with fibre)",
    );
    const us = testContext({ foods: book, group: { ...GROUP, labelStyle: "us" } });
    const words = await aloud({ food: "marshroot" }, us);
    expect(words).toContain("carbohydrate: 20 g with fibre (15 g without fibre)");
    expect(words).toContain("marsh root, raw: 200 kcal in 100 g");
    expect(await aloud({ food: "Marsh crisps" })).toContain(
      "carbohydrate: 20 g without fibre (with fibre: not known)",
    );
  });

  it("gives spoons by the density, the weight of one, published measures and what is edible", async () => {
    const words = await aloud({ food: "marshroot" });
    // Half a gram a millilitre: 2.46, 7.39 and 118.3 g in the US customary spoons and cup.
    expect(words).toContain("1 teaspoon (4.93 ml): 2.5 g");
    expect(words).toContain("1 tablespoon (14.8 ml): 7.5 g");
    expect(words).toContain("1 cup (237 ml): 118 g");
    expect(words).toContain("1 root: 80 g");
    expect(words).toContain("1 cup, chopped: 130 g");
    expect(words).toContain("of 1 kg as bought: about 900 g are edible");
  });

  it("names allergens with what it may hide, how it keeps, and the source with its number", async () => {
    const words = await aloud({ food: "marshroot" });
    expect(words).toContain("allergens: celery (may hide mustard; the pack decides)");
    expect(words).toContain("keeping class: vegetable");
    expect(words).toContain("source: USDA SR28 99999 (US Department of Agriculture, National");
  });

  it("tells a pack of this group from the table, and never calls unknown allergens free of any", async () => {
    const words = await aloud({ food: "marsh crisps" });
    expect(words).toContain("source: typed from a pack in this group (EU style, per 100 g)");
    expect(words).toContain("allergens: not known (nobody can rely on it being free of anything");
  });

  it.each([
    ["250 g", "500 kcal", "250 g"],
    ["2 tbsp", "30 kcal", "2 tbsp (15 g)"],
    ["3", "480 kcal", "3 roots (240 g)"],
    ["2 roots", "320 kcal", "2 roots (160 g)"],
    ["2 cups, chopped", "520 kcal", "2 cups, chopped (260 g)"],
    ["4 slices", "72 kcal", "4 slices (36 g)"],
    ["1/2 root", "80 kcal", "½ root (40 g)"],
    ["1 lb", "907 kcal", "1 lb (454 g)"],
  ])("shows the figures of %s", async (amount, energy, written) => {
    const reply = await look({ food: "marshroot", amount });
    expect(reply.heading).toContain(`${energy} `);
    expect(reply.heading).toContain(`in ${written}`);
    expect(readAloud(reply)).toContain("per 100 g: 200 kcal");
  });

  it.each([
    ["2 handfuls", "cannot be weighed"],
    ["some", "is not an amount I understand"],
    ["0 g", "The amount is zero"],
    ["2-3", "That is a range"],
    ["3 boots", "cannot be weighed"],
  ])("refuses the amount “%s” with a sentence", async (amount, sentence) => {
    await expect(look({ food: "marshroot", amount })).rejects.toThrow(sentence);
  });

  it("offers a list when several foods fit, and keeps the amount for the one picked", async () => {
    const reply = await look({ food: "marsh", amount: "50 g" });
    expect(reply.heading).toMatch(/^“marsh” fits \d foods: pick one\.$/u);
    expect(reply.choices[0]?.options.length).toBeGreaterThan(1);
    expect(reply.choices[0]?.options.length).toBeLessThanOrEqual(5);
    const picked = await pick(reply, "marsh-root");
    expect(picked.heading).toBe("marsh root, raw: 100 kcal (about 418 kJ) in 50 g");
  });

  it("shows the food of a whole name at once and offers the others that fit", async () => {
    const reply = await look({ food: "marsh root" });
    expect(reply.heading).toContain("marsh root, raw");
    expect(reply.choices[0]?.options.map(({ value }) => value)).toContain("marsh-root-cooked");
  });

  it("says what to type when nothing fits", async () => {
    await expect(look({ food: "qwertzuiop" })).rejects.toThrow(/No food fits “qwertzuiop”: type/u);
    await expect(look({ food: " " })).rejects.toThrow("Fill in food:");
  });

  it("warns first of what this member avoids", async () => {
    const member = { ...MEMBER, profile: { ...MEMBER.profile, allergens: ["celery" as const] } };
    const own = testContext({ foods: book, member });
    expect((await look({ food: "marshroot" }, own)).alerts).toEqual([
      "Contains celery, which you avoid.",
    ]);
    expect((await look({ food: "marsh crisps" }, own)).alerts.join()).toContain("may hold celery");
    expect((await look({ food: "marshroot" })).alerts).toEqual([]);
  });

  it("refuses picks that are no food of this group, and odd presses", async () => {
    const bare = testContext({ foods: foodBook([ROOT]) });
    for (const args of [[], ["own-abc"], ["50 g", "own-abc"], ["1", "2", "3"], ["x".repeat(200)]]) {
      await expect(foodLook.actions["show"]?.(bare, args), args.join()).rejects.toThrow(Refusal);
    }
  });

  it("makes ids that the platform takes, whatever was typed as amount", async () => {
    for (const amount of ["50 g ~ x", "5".repeat(59), "50 g"]) {
      const reply = await look({ food: "marsh", amount });
      expect(reply.choices[0]?.id.length).toBeLessThanOrEqual(PRESS_ID_MAX);
    }
  });
});

describe("the completion of food:", () => {
  const complete = foodLook.options.find(({ name }) => name === "food")?.complete;
  const offered = async (typed: string, on = context) =>
    ((await complete?.(on, typed, {})) ?? []).map(({ value }) => value);

  it("offers names that start so, then names that hold it, and marks the group's own", async () => {
    expect(await offered("marsh p")).toEqual(["marsh pod, raw"]);
    expect(await offered("boiled")).toEqual(["marsh root, boiled, cooked"]);
    expect(await complete?.(context, "crisps", {})).toEqual([
      { label: "Marsh crisps (this group's)", value: "Marsh crisps" },
    ]);
  });

  it("offers at most 25, also for nothing and for anything typed", async () => {
    const table = testContext({ foods: FOODS });
    for (const typed of ["", "a", "chicken", "x".repeat(100), "%$#", "\n"]) {
      expect((await offered(typed, table)).length).toBeLessThanOrEqual(25);
    }
    expect((await offered("chicken thi", table))[0]).toContain("chicken thigh");
  });

  it("takes a keystroke's time", async () => {
    const table = testContext({ foods: FOODS });
    await offered("warm up", table);
    const start = performance.now();
    for (let n = 0; n < 50; n += 1) await offered("chiken thi".slice(0, (n % 10) + 1), table);
    expect((performance.now() - start) / 50).toBeLessThan(10);
  });
});
