import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readRecipe } from "../../../shared/recipe/read.ts";
import type { LineChoice, Recipe } from "../../../shared/recipe/types.ts";
import { loadFoodBook } from "../../../src/foods/load.ts";

const FOODS = loadFoodBook();

function read(text: string): Recipe {
  const outcome = readRecipe(text, FOODS);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
  return outcome.value.recipe;
}

function lineOf(text: string): LineChoice | undefined {
  return read(`Test\nMakes 1\n- ${text}`).components[0]?.lines[0]?.main;
}

const EXAMPLE = `Smoky bean pot

Makes 5 portions, 1900 g cooked
Tags: freezer, vegetarian

Ingredients

Base:
- 600 g canned kidney beans, drained
- 250 g onion, diced
- 3 cloves garlic, crushed
- 20 g olive oil
  or 15 g butter
- salt, to taste
- 30 g tomato paste (optional)

Herb yoghurt (optional):
- 200 g plain low-fat yoghurt
Keeps 4 days in the fridge
Does not freeze: it turns grainy

Steps
1. Soften the onion over a medium heat for 8-10 minutes.
2. Simmer for 25 minutes, until 74 °C / 165 °F
all through.

Keeps 3 days in the fridge
Base freezes 3 months
Reheat: until 74 °C / 165 °F throughout.
Note: Good on potatoes.
Serve in bowls.
`;

describe("a recipe's text", () => {
  const recipe = read(EXAMPLE);

  test("gives title, yield, tags and notes", () => {
    expect(recipe).toMatchObject({
      title: "Smoky bean pot",
      portions: 5,
      portionWord: "portion",
      yieldG: 1900,
      tags: ["freezer", "vegetarian"],
      reheating: ["Until 74 °C / 165 °F throughout."],
      notes: ["Good on potatoes.", "Serve in bowls."],
    });
  });

  test("gives its parts with lines, amounts, preparation and swaps", () => {
    const [base, yoghurt] = recipe.components;
    expect(base?.optional).toBe(false);
    expect(yoghurt).toMatchObject({ name: "Herb yoghurt", optional: true });
    expect(base?.lines.map(({ key }) => key)).toEqual(["0.0", "0.1", "0.2", "0.3", "0.4", "0.5"]);
    expect(base?.lines[0]?.main).toMatchObject({
      amount: { value: 600, unit: "g" },
      foodText: "canned kidney beans",
      preparation: "drained",
      grams: 600,
    });
    expect(base?.lines[3]?.swaps).toMatchObject([{ foodText: "butter", grams: 15 }]);
    expect(base?.lines[4]?.main.amount).toBeNull();
    expect(base?.lines[5]?.optional).toBe(true);
  });

  test("gives each part the keeping that stands below it or names it, and the rest to the whole", () => {
    const [base, yoghurt] = recipe.components;
    expect(recipe.keeping).toMatchObject({ fridgeDays: 3, freezes: null });
    expect(base?.keeping).toMatchObject({ fridgeDays: null, freezerMonths: 3, freezes: "well" });
    expect(yoghurt?.keeping).toEqual({
      fridgeDays: 4,
      freezerMonths: null,
      freezes: "no",
      reason: "it turns grainy",
    });
  });

  test("gives steps with a wrapped line joined, and times and temperatures picked out", () => {
    expect(recipe.steps).toHaveLength(2);
    expect(recipe.steps[0]).toMatchObject({ minutes: [10] });
    expect(recipe.steps[1]).toMatchObject({
      text: "Simmer for 25 minutes, until 74 °C / 165 °F all through.",
      minutes: [25],
      temperaturesC: [74],
    });
  });

  test("may have no headings, bullets or numbers at all but 'Ingredients' and 'Method'", () => {
    const plain = read(
      "Rice\nServes 4\nIngredients\n300 g dry white rice\n5 g salt\nMethod\nBoil it.\nDrain it.\nKeeps 1 day",
    );
    expect(plain.components).toMatchObject([{ name: "Base", lines: [{}, {}] }]);
    expect(plain.steps.map(({ text }) => text)).toEqual(["Boil it.", "Drain it."]);
    expect(plain.keeping.fridgeDays).toBe(1);
  });

  test("may say the wraps, the bake or everything for the whole", () => {
    for (const name of ["The wraps keep", "The bake keeps", "Everything keeps", "It keeps"]) {
      const recipe = read(
        `Bean bake\nMakes 5 wraps\n- 1 g salt\nSteps\n1. Mix.\n\n${name} 2 days chilled`,
      );
      expect(recipe.keeping.fridgeDays).toBe(2);
    }
  });

  test.each([
    ["Serves 4 | Prep 10 min | Cook 20 min", 4, "portion"],
    ["5 wraps · 20 minutes", 5, "wrap"],
    ["Prep: 10 min • Makes 6 portions, 2400 g cooked", 6, "portion"],
  ])(
    "may say on one line what it makes and how long it takes: %s",
    (line, portions, portionWord) => {
      const recipe = read(`Bean pot\n${line}\n\nIngredients\n200 g rice\n\nMethod\n1. Boil.`);
      expect(recipe).toMatchObject({ portions, portionWord, components: [{ lines: [{}] }] });
      expect(recipe.notes.length).toBeGreaterThan(0);
    },
  );

  test("of two statements about keeping the shorter counts", () => {
    const two = read(
      "Rice\nMakes 1\n- 1 g salt\nSteps\n1. Mix.\n\nKeeps 4 days in the fridge\nKeeps 2 days",
    );
    expect(two.keeping.fridgeDays).toBe(2);
  });
});

describe("ingredient lines", () => {
  test.each([
    [
      "500 g boneless, skinless chicken thighs, diced",
      "boneless, skinless chicken thighs",
      "diced",
      500,
    ],
    ["chicken thighs, 500 g", "chicken thighs", "", 500],
    ["2 cans (400 g each) kidney beans, drained", "canned kidney beans", "drained", 800],
    ["2 x 400 g tins chopped tomatoes", "canned chopped tomatoes", "", 800],
    ["2 salmon fillets (150 g each)", "salmon fillets", "", 300],
    ["3 garlic cloves", "garlic cloves", "", 9],
    ["1 lb onions (peeled), sliced", "onions", "peeled, sliced", 453.59237],
  ])("%s", (text, foodText, preparation, grams) => {
    expect(lineOf(text)).toMatchObject({ foodText, preparation, grams });
  });

  test("a count of something else than the table weighs is unmeasured, not guessed", () => {
    expect(lineOf("1 head garlic")?.grams).toBeNull();
    expect(lineOf("1 handful spinach")?.grams).toBeNull();
    expect(lineOf("2 slices onion")?.grams).toBeNull();
    expect(lineOf("1 bunch scallions")?.grams).toBeNull();
    expect(lineOf("3 scallions")?.grams).toBeGreaterThan(0);
  });

  test("'1 or 2' is a range, and 'or 180 g' a swap", () => {
    expect(lineOf("1 or 2 carrots")?.amount).toEqual({ value: 1, to: 2, unit: "piece" });
    const line = read("T\nMakes 1\n- 200 g rice or 180 g quinoa, rinsed").components[0]?.lines[0];
    expect(line?.main.foodText).toBe("rice");
    expect(line?.swaps).toMatchObject([{ foodText: "quinoa", preparation: "rinsed", grams: 180 }]);
  });

  test("a swap without an amount takes the weight of the line", () => {
    const line = read("T\nMakes 1\n- 320 g firm tofu\n  swap: tempeh").components[0]?.lines[0];
    expect(line?.swaps[0]?.amount).toEqual({ value: 320, to: null, unit: "g" });
  });

  test("a food that is not in the table is a remark, and the line is kept", () => {
    const outcome = readRecipe("T\nMakes 1\n- 100 g unobtainium\n- 2 g salt", FOODS);
    expect(outcome.ok && outcome.value.recipe.components[0]?.lines).toHaveLength(2);
    expect(outcome.ok && outcome.value.remarks[0]).toEqual({
      code: "food not found",
      line: 3,
      foodText: "unobtainium",
    });
  });
});

describe("the recipes that come with the project", () => {
  const folder = "prisma/seed/recipes";
  test.each(readdirSync(folder))("%s is read without a remark, every line weighed", (file) => {
    const outcome = readRecipe(readFileSync(`${folder}/${file}`, "utf8"), FOODS);
    expect(outcome.ok && outcome.value.remarks).toEqual([]);
    const lines = outcome.ok ? outcome.value.recipe.components.flatMap((part) => part.lines) : [];
    expect(lines.length).toBeGreaterThan(5);
    expect(lines.every((line) => line.main.grams !== null)).toBe(true);
  });

  test("the example of the description is read without a remark", () => {
    const lines = readFileSync("shared/recipe/README.md", "utf8").split("\n");
    const from = lines.findIndex((line) => line.startsWith("    "));
    const until = lines.findIndex((line) => line.startsWith("| line"));
    const example = lines.slice(from, until).map((line) => line.slice(4));
    const outcome = readRecipe(example.join("\n"), FOODS);
    expect(outcome.ok && outcome.value.remarks).toEqual([]);
    expect(outcome.ok && outcome.value.recipe.components.map(({ name }) => name)).toEqual([
      "Base",
      "Herb yoghurt",
    ]);
  });
});
