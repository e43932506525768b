import { describe, expect, it } from "vitest";
import {
  allergenRows,
  allergyAlerts,
  tableAlerts,
} from "../../../commands/recipe/allergen-parts.ts";
import { recipeFind } from "../../../commands/recipe/find.ts";
import { allergensIn, allergensInRecipe } from "../../../shared/allergen/find.ts";
import { foodBook } from "../../../shared/food/book.ts";
import type { Allergen, Food } from "../../../shared/food/types.ts";
import { foodId } from "../../../shared/ids.ts";
import {
  FOODS,
  MEMBER,
  memoryRecipes,
  readAloud,
  recipeOf,
  storesWith,
  testContext,
} from "../../kit/recipes-and-context.ts";

const CHEESY = recipeOf(
  "Cheese pan\nMakes 4 portions\nTags: quick\n- 200 g cheddar\n- 100 g dry pasta\n- 50 g zorble paste\nSteps\n1. Bake.",
);
const PLAIN = recipeOf("Bean pan\nMakes 4 portions\n- 400 g kidney beans\nSteps\n1. Simmer.");
const ODD = recipeOf("Zorble pan\nMakes 4 portions\n- 400 g zorble paste\nSteps\n1. Simmer.");
const SWAP = recipeOf(
  "Oil pan\nMakes 4 portions\n- 400 g kidney beans\n- 20 g olive oil\n  or 25 g butter\nSteps\n1. Fry.",
);

const avoiding = (...allergens: Allergen[]) => ({ ...MEMBER.profile, allergens });

function find(allergens: readonly Allergen[], recipes = memoryRecipes([CHEESY, PLAIN, ODD, SWAP])) {
  const member = { ...MEMBER, profile: avoiding(...allergens) };
  return recipeFind.run(testContext({ member, stores: storesWith({ recipes }) }), {});
}

describe("/recipe find for one who avoids something", () => {
  it("marks what contains it before anything else, and says what is not known", async () => {
    const reply = await find(["milk"]);
    const said = readAloud(reply);
    expect(said).toMatch(/Cheese pan: .* \(contains milk, which you avoid; freezes/u);
    expect(said).toMatch(/Zorble pan: .* \(not known for what you avoid: zorble paste; freezes/u);
    expect(said).toMatch(/Bean pan: \d+ kcal · [\d.]+ g protein \(freezes/u);
    const hints = reply.choices[0]?.options.map(({ label, hint }) => `${label}: ${hint}`);
    expect(hints?.[1]).toMatch(/^Cheese pan: contains milk, which you avoid · at least \d+ kcal/u);
    expect(hints?.[0]).toMatch(/^Bean pan: \d+ kcal/u);
  });

  it("names all that is contained", async () => {
    expect(readAloud(await find(["wheat", "milk"]))).toMatch(
      /Cheese pan: .* \(contains milk and wheat, which you avoid;/u,
    );
  });

  it("marks nothing for one who avoids nothing", async () => {
    expect(readAloud(await find([]))).not.toContain("avoid");
  });
});

const row = (text: string, foods = FOODS) => {
  const [first] = allergenRows(allergensInRecipe(recipeOf(text, foods), foods));
  return `${first?.figure} | ${first?.note}`;
};

describe("the row of allergens on a card", () => {
  it("lists the allergens, wheat with its gluten", () => {
    expect(row("P\nMakes 2 portions\n- 100 g dry couscous\n- 50 g cheddar\nSteps\n1. Boil.")).toBe(
      "milk, wheat (gluten) | the packs decide",
    );
  });

  it("says what a US pack need not name, gluten of barley above all", () => {
    const said = row(
      "P\nMakes 2 portions\n- 100 g pearl barley\n- 50 g celery\n- 50 g plain flour\n- 20 g raisins\nSteps\n1. Boil.",
    );
    expect(said).toContain("wheat, gluten, celery, sulphites | ");
    expect(said).toContain("a US pack need not name gluten and celery");
  });

  it("never reads as free of anything with an unknown food in it", () => {
    const only = row("P\nMakes 2 portions\n- 100 g zorble paste\nSteps\n1. Boil.");
    expect(only).toBe("not known | not known: zorble paste; the packs decide");
    const with1 = row("P\nMakes 2 portions\n- 100 g zorble paste\n- 50 g cheddar\nSteps\n1. Boil.");
    expect(with1).toBe("at least milk | not known: zorble paste; the packs decide");
    expect(row("P\nMakes 2 portions\n- 100 g carrots\nSteps\n1. Boil.")).toMatch(
      /^none known \| /u,
    );
  });
});

const sauce: Food = {
  ...(FOODS.foods[0] as Food),
  id: foodId("brown-gloop"),
  name: "brown gloop",
  otherNames: [],
  allergens: ["soy"],
  mayHide: ["wheat", "celery"],
};
const made = allergensIn(
  [{ choice: { foodText: "brown gloop", foodId: sauce.id }, others: [] }],
  foodBook([sauce]),
);

describe("what is said loudly", () => {
  it("names what is contained with its foods, and what nobody knows", () => {
    const found = allergensInRecipe(CHEESY, FOODS);
    expect(allergyAlerts(avoiding("milk", "gluten"), found)).toEqual([
      "Contains milk, which you avoid: cheddar.",
      "Contains gluten, which you avoid: dry pasta.",
      "Not known whether milk or gluten, which you avoid, is in: zorble paste. Read the pack.",
    ]);
    expect(allergyAlerts(avoiding(), found)).toEqual([]);
  });

  it("says one sentence for allergens of the same foods", () => {
    expect(allergyAlerts(avoiding("wheat", "gluten"), allergensInRecipe(CHEESY, FOODS))[0]).toBe(
      "Contains wheat and gluten, which you avoid: dry pasta.",
    );
  });

  it("says what a made food may hide, on the card for all and loudly to who avoids it", () => {
    expect(allergenRows(made)[0]?.note).toBe(
      "may hide: wheat, gluten and celery (brown gloop); the packs decide",
    );
    expect(allergyAlerts(avoiding("celery"), made)).toEqual([
      "May hide celery, which you avoid: brown gloop. Read the pack.",
    ]);
  });

  it("says what a swap would bring in", () => {
    expect(allergyAlerts(avoiding("milk"), allergensInRecipe(SWAP, FOODS))).toEqual([
      "Not in it as shown, but a swap contains milk, which you avoid: butter.",
    ]);
  });

  it("stays short with many long names", () => {
    const lines = Array.from({ length: 60 }, (_, at) => ({
      choice: { foodText: `${at} ${"very ".repeat(40)}cheese`, foodId: null },
      others: [],
    }));
    const alerts = allergyAlerts(avoiding("milk"), allergensIn(lines, FOODS));
    expect(alerts).toHaveLength(2);
    for (const alert of alerts) expect(alert.length).toBeLessThan(400);
    expect(alerts[0]).toContain("and 54 more");
  });

  it("names who at the table it is about and what to do instead", () => {
    const recipe = recipeOf(
      "Pudding\nMakes 2 portions\n- 3 egg yolks\n- 20 g honey\nSteps\n1. Whisk.",
    );
    const lines = recipe.components.flatMap((part) =>
      part.lines.map(({ main }) => ({ choice: main, others: [] })),
    );
    const shown = { recipe, lines, foods: FOODS };
    expect(tableAlerts({ vulnerable: ["pregnant", "under five"] }, shown)).toEqual([
      "Raw egg (egg yolks): not in pregnancy or under five, and they eat with you. Use pasteurised egg, or cook it until white and yolk are firm.",
      "Honey: not under five, and they eat with you. Never before the first birthday, cooked or not.",
    ]);
    expect(tableAlerts({ vulnerable: [] }, shown)).toEqual([]);
  });
});
