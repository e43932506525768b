import { describe, expect, it } from "vitest";
import { type RawInput, Refusal } from "../../../commands/kit/command.ts";
import { readPress } from "../../../commands/kit/press.ts";
import type { Reply } from "../../../commands/kit/reply.ts";
import { recipeFind } from "../../../commands/recipe/find.ts";
import type { Allergen } from "../../../shared/food/types.ts";
import {
  MEMBER,
  memoryRecipes,
  readAloud,
  recipeOf,
  storesWith,
  testContext,
} from "../../kit/recipes-and-context.ts";

const RECIPES = [
  "Lentil pot\nMakes 4 portions\nTags: vegan, freezer\n- 250 g dried red lentils\n- 100 g onion\nSteps\n1. Simmer for 25 minutes.\nFreezes 3 months",
  "Thigh bake\nMakes 4 portions\n- 800 g skinless chicken thighs\n- 200 g plain low-fat yoghurt\n- 300 g carrots\nSteps\n1. Bake.",
  "Rice and thigh pan\nMakes 4 portions\n- 600 g skinless chicken thighs\n- 300 g white rice\n- 20 g olive oil\nSteps\n1. Fry.",
  "Cucumber bowl\nMakes 4 portions\n- 400 g cucumber\n- 200 g romaine lettuce\n- 150 g plain yoghurt\nSteps\n1. Mix.\nDoes not freeze: the leaves turn limp",
  "Zorble pan\nMakes 4 portions\n- 400 g zorble paste\n- 200 g onion\nSteps\n1. Simmer.",
].map((text) => recipeOf(text));

const many = Array.from({ length: 12 }, (_, index) =>
  recipeOf(`Pot ${index + 10}\nMakes 4 portions\nTags: soup\nIngredients\n- 100 g onion`),
);

function contextFor(allergens: readonly Allergen[] = [], recipes = RECIPES) {
  return testContext({
    member: { ...MEMBER, profile: { ...MEMBER.profile, allergens } },
    stores: storesWith({ recipes: memoryRecipes(recipes) }),
  });
}

const find = (raw: RawInput, allergens: readonly Allergen[] = []): Promise<Reply> =>
  recipeFind.run(contextFor(allergens), raw);

/** Titles of the rows, in order, with the title of the rows before those of each. */
function titles(reply: Reply): readonly string[] {
  return reply.parts.flatMap((part) =>
    part.kind === "rows"
      ? [
          ...(part.title === null ? [] : [`[${part.title}]`]),
          ...part.rows.map(({ label }) => label),
        ]
      : [],
  );
}

async function refusal(raw: RawInput, allergens: readonly Allergen[] = []): Promise<string> {
  const error: unknown = await find(raw, allergens).catch((thrown: unknown) => thrown);
  if (!(error instanceof Refusal)) throw new Error("it was not refused");
  return error.sentences.join("\n");
}

describe("/recipe find", () => {
  it("lists all by title with energy and protein, and leads to the card", async () => {
    const reply = await find({});
    expect(reply.heading).toBe("5 recipes");
    expect(titles(reply)).toEqual([
      "Cucumber bowl",
      "Lentil pot",
      "Rice and thigh pan",
      "Thigh bake",
      "Zorble pan",
    ]);
    expect(readAloud(reply)).toMatch(/Thigh bake: \d+ kcal · \d+ g protein \(freezes 3 months\)/u);
    const [choice] = reply.choices;
    expect(readPress(choice?.id ?? "")).toEqual({
      command: "recipe card",
      action: "show",
      args: [],
    });
    expect(choice?.options.map(({ label }) => label)).toEqual(titles(reply));
  });

  it("never gives a figure for what it cannot count", async () => {
    expect(readAloud(await find({ words: "zorble" }))).toContain(
      // 200 g of onion over four portions, by the EU's factors 39.3 kcal per 100 g: rounded down, for it is a bound.
      "Zorble pan: at least 19 kcal · at least 0.5 g protein",
    );
  });

  it("finds by tag and by food, and says so", async () => {
    expect(readAloud(await find({ words: "vegan" }))).toContain("(tagged vegan; freezes 3 months)");
    expect(readAloud(await find({ words: "lettuce" }))).toContain("has romaine lettuce");
  });

  it("shows ten and how many more there are", async () => {
    const reply = await recipeFind.run(contextFor([], many), { words: "soup" });
    expect(reply.heading).toBe("The first 10 of 12 recipes for “soup”");
    expect(reply.choices[0]?.options).toHaveLength(10);
    expect(readAloud(reply)).toContain("2 more: add a word");
  });

  it("says what a slip was taken for", async () => {
    const said = readAloud(await find({ words: "lentlis" }));
    expect(said).toContain("Lentil pot");
    expect(said).toMatch(/No recipe has “lentlis”; “lentils?” was taken instead\./u);
  });

  it("says so when there is none", async () => {
    expect((await find({ words: "pie" })).heading).toBe("No recipe fits “pie”.");
    expect((await recipeFind.run(testContext(), {})).heading).toBe("There are no recipes yet.");
  });

  it("finds by figures, several at once", async () => {
    const reply = await find({ protein: "at least 30", energy: "under 450" });
    expect(reply.heading).toBe("1 recipe: at most 450 kcal, at least 30 g protein");
    expect(titles(reply)).toEqual(["Thigh bake", "[Not known whether it fits]", "Zorble pan"]);
  });

  it("finds what freezes, and what does not", async () => {
    expect(titles(await find({ freezes: "no" }))).toEqual(["Cucumber bowl"]);
    expect(titles(await find({ freezes: "yes" }))).not.toContain("Cucumber bowl");
  });

  it("ranks by what is in hand, and says what is used and how much else is needed", async () => {
    const reply = await find({ uses: "500 g chicken thigh, rice and dragonfruit" });
    expect(titles(reply)).toEqual(["Rice and thigh pan", "Thigh bake"]);
    const said = readAloud(reply);
    expect(said).toContain("uses skinless chicken thighs and white rice; needs 1 other");
    expect(said).toContain("uses skinless chicken thighs; needs 2 others");
    expect(said).toContain("No recipe uses dragonfruit.");
  });

  it("refuses what it does not understand, all of it at once, with what to type", async () => {
    const said = await refusal({ energy: "500", protein: "lots", "free-of": "wood" });
    expect(said).toContain("type under 500, at least 500, or a range such as 450-550.");
    expect(said).toContain("“lots” is no range of protein I understand: type such as at least 30");
    expect(said).toContain("free of “wood”: type from milk, egg,");
    expect(await refusal({ energy: "600-400" })).toContain("from 600 to 400 runs backwards");
    expect(await refusal({ uses: ", 12 ,;" })).toContain("names no foods");
  });
});

describe("/recipe find free-of", () => {
  it("leaves out what contains it, and lists apart what nobody knows", async () => {
    const reply = await find({ "free-of": "milk" });
    expect(titles(reply)).toEqual([
      "Lentil pot",
      "Rice and thigh pan",
      "[Not known whether it fits]",
      "Zorble pan",
    ]);
    expect(readAloud(reply)).toContain("not known what is in: zorble paste");
    expect(reply.cautions[0]).toContain("the packs decide");
  });

  it("never says free of when only unknown ones are left", async () => {
    const reply = await recipeFind.run(contextFor([], RECIPES.slice(4)), { "free-of": "milk" });
    expect(reply.heading).toBe("No recipe is known to fit free of milk.");
    expect(titles(reply)).toEqual(["[Not known whether it fits]", "Zorble pan"]);
  });

  it("takes mine for what the member told, and refuses it when they told nothing", async () => {
    expect(titles(await find({ "free-of": "mine" }, ["milk"]))).toContain("Lentil pot");
    expect(titles(await find({ "free-of": "mine" }, ["milk"]))).not.toContain("Thigh bake");
    const both = await find({ "free-of": "mine and nuts" }, ["milk"]);
    expect(both.heading).toContain("free of milk, tree nuts and peanut");
    expect(readAloud(both)).toContain("“nuts” was taken for tree nuts and peanut.");
    expect(await refusal({ "free-of": "mine" })).toContain("type /me allergens: first");
  });

  it("marks what the member avoids first, whatever else is asked", async () => {
    const said = readAloud(await find({ uses: "yoghurt" }, ["milk"]));
    expect(said).toContain("(contains milk, which you avoid; uses plain yoghurt;");
  });

  it("says that a swap has it", async () => {
    const oil = recipeOf(
      "Oil pan\nMakes 4 portions\n- 400 g kidney beans\n- 20 g olive oil\n  or 25 g butter\nSteps\n1. Fry.",
    );
    const reply = await recipeFind.run(contextFor([], [oil]), { "free-of": "milk" });
    expect(readAloud(reply)).toContain("but a swap contains milk: butter");
  });
});

describe("completion of /recipe find", () => {
  const complete = async (option: string, typed: string, allergens: readonly Allergen[] = []) => {
    const { complete } = recipeFind.options.find(({ name }) => name === option) ?? {};
    if (complete === undefined) throw new Error(`${option} is not completed`);
    return (await complete(contextFor(allergens), typed, {})).map(({ value }) => value);
  };

  it("offers titles for words, and foods of the recipes for uses, after those typed before", async () => {
    expect(await complete("words", "thi")).toEqual(["Thigh bake", "Rice and thigh pan"]);
    expect(await complete("uses", "rice, skinl")).toEqual(["rice, skinless chicken thighs"]);
  });

  it("offers mine only to who told something", async () => {
    expect(await complete("free-of", "m")).toEqual(["milk", "molluscs", "mustard"]);
    expect(await complete("free-of", "egg, m", ["milk"])).toEqual([
      "egg, mine",
      "egg, milk",
      "egg, molluscs",
      "egg, mustard",
    ]);
  });
});
