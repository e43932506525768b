import { describe, expect, it } from "vitest";
import { Refusal } from "../../../commands/kit/command.ts";
import type { Stores } from "../../../commands/kit/ports.ts";
import { PRESS_ID_MAX, readPress } from "../../../commands/kit/press.ts";
import type { Reply } from "../../../commands/kit/reply.ts";
import { recipeCard } from "../../../commands/recipe/card.ts";
import { groupId } from "../../../shared/ids.ts";
import {
  GROUP,
  memoryRecipes,
  readAloud,
  recipeOf,
  storesWith,
  testContext,
} from "../../kit/recipes-and-context.ts";

const BAKE = recipeOf(`Thigh and bean bake
Makes 6 portions, 2100 g cooked
Tags: freezer
Ingredients
Base:
- 900 g chicken thighs, diced
- 400 g kidney beans
- 200 g onion, sliced
- 4 eggs
- 30 g olive oil
  or 25 g butter
- 6 g salt
Yoghurt sauce (optional):
- 240 g plain yoghurt
- 2 cloves garlic, crushed
Steps
1. Bake at 200 °C for 35 minutes.
2. Stir the sauce.
Keeps 3 days in the fridge
Base freezes 3 months
Reheat: 4 minutes in the microwave, until 74 °C.`);

const recipes = memoryRecipes([BAKE]);
/** Nobody has cooked anything. */
const stocks: Stores["stocks"] = {
  ...storesWith({}).stocks,
  load: async (memberId) => ({ memberId, version: 0, batches: [], lots: [] }),
};
const context = testContext({ stores: storesWith({ recipes, stocks }) });
const card = (raw: Record<string, string>) => recipeCard.run(context, { recipe: "bake", ...raw });

async function refusalOf(raw: Record<string, string>): Promise<string> {
  try {
    await card(raw);
  } catch (error) {
    if (error instanceof Refusal) return error.sentences.join(" ");
    throw error;
  }
  throw new Error("was not refused");
}

async function press(reply: Reply, label: string): Promise<Reply> {
  const id = reply.buttons.find((button) => button.label === label)?.id ?? "";
  const read = readPress(id);
  const action = recipeCard.actions[read?.action ?? ""];
  if (read === null || action === undefined) throw new Error(`no button ${label}`);
  return action(context, read.args);
}

describe("/recipe card", () => {
  it("answers with what it makes in the first line", async () => {
    expect((await card({ portions: "8" })).heading).toBe("Thigh and bean bake: 8 portions");
    expect((await card({})).heading).toBe("Thigh and bean bake: 6 portions");
  });

  it("scales every line and says what rounding to whole eggs moved", async () => {
    const said = readAloud(await card({ portions: "4" }));
    expect(said).toContain("chicken thighs: 600 g (diced)");
    expect(said).toContain("kidney beans: 267 g");
    expect(said).toContain("eggs: 3 (150 g; rounded from 2.67: 4 g, 6 kcal more a portion)");
    expect(said).toContain("olive oil: 20 g (or 17 g butter)");
  });

  it("says what an ingredient in hand makes, and of what size", async () => {
    const reply = await card({ have: "850 g thigh" });
    expect(reply.heading).toBe(
      "850 g of chicken thighs makes 6 portions of Thigh and bean bake, each 94 % of the written size",
    );
    expect(readAloud(reply)).toContain("chicken thighs: 850 g");
  });

  it("shows figures with units per portion, without the optional part, and per 100 g", async () => {
    const said = readAloud(await card({}));
    expect(said).toMatch(/energy: \d{4} kJ \/ \d{3} kcal \(about 350 g cooked\)/u);
    expect(said).toMatch(/without Yoghurt sauce: \d{3} kcal · protein \d+ g/u);
    expect(said).toMatch(/per 100 g: \d{2,3} kcal .*\(cooked, by the weight the recipe states\)/u);
    for (const part of (await card({})).parts) {
      if (part.kind === "text" || part.title?.startsWith("Per ") !== true) continue;
      for (const row of part.rows) expect(row.figure).toMatch(/ (?:kcal|g)$/u);
    }
  });

  it("tells figures with a part that was left out, and then per 100 g by an estimate", async () => {
    const said = readAloud(await card({ without: "sauce" }));
    expect(said).not.toContain("plain yoghurt:");
    expect(said).toMatch(/with Yoghurt sauce: \d{3} kcal/u);
    expect(said).toContain("cooked, estimated from published yields");
  });

  it("takes a swap and offers the way back", async () => {
    const said = readAloud(await card({ swap: "butter" }));
    expect(said).toContain("butter: 25 g (swap; or 30 g olive oil)");
  });

  it("turns masses into pounds and ounces with grams beside, and small ones into spoons", async () => {
    const said = readAloud(await card({ units: "us" }));
    expect(said).toContain("chicken thighs: 1 lb 15¾ oz (900 g; diced)");
    expect(said).toContain("salt: 1 tsp (6 g)");
  });

  it("names keeping, allergens and cautions, cautions last", async () => {
    const reply = await card({ portions: "30" });
    const said = readAloud(reply);
    expect(said).toContain("keeps: 3 days in the fridge");
    expect(said).toContain("allergens: milk, egg (the packs decide)");
    expect(reply.cautions.join(" ")).toContain("start with three quarters of the salt");
    expect((await card({})).cautions.join(" ")).not.toContain("three quarters");
  });

  it("has a button that logs this batch, with the revision and the size", async () => {
    const { buttons } = await card({ portions: "8" });
    expect(buttons.find(({ label }) => label === "Log it")?.id).toMatch(
      /^batch log\.form~[\w-]+~p8~-~-~a$/u,
    );
  });

  it("puts steps and reheating behind a button that remembers the request", async () => {
    const first = await card({
      have: "850 g thigh",
      without: "sauce",
      swap: "butter",
      units: "us",
    });
    expect(readAloud(first)).not.toContain("Bake at 200");
    const steps = await press(first, "Steps");
    expect(readAloud(steps)).toContain("1. Bake at 200 °C / 390 °F for 35 minutes.");
    expect(readAloud(steps)).toContain("until 74 °C / 165 °F.");
    const back = await press(steps, "Back to the card");
    expect(readAloud(back)).toBe(readAloud(first));
    for (const { id } of [...first.buttons, ...steps.buttons]) {
      expect(id.length).toBeLessThanOrEqual(PRESS_ID_MAX);
    }
  });

  it("brings the steps as a file when the request does not fit into the id of a button", async () => {
    const lines = Array.from(
      { length: 30 },
      (_, index) =>
        `- ${index + 1}0 g unknown herb ${"abcdefghijklmnopqrstuvwxyzabcd".slice(0, index + 1)}`,
    );
    const big = recipeOf(
      `Herb pile\nMakes 2 portions\nIngredients\n${lines.join("\n")}\n- 20 g salt\nSteps\n1. Mix.`,
    );
    const own = testContext({ stores: storesWith({ recipes: memoryRecipes([big]), stocks }) });
    const without = big.components[0]?.lines.slice(0, 25).map((line) => line.key) ?? [];
    const reply = await recipeCard.run(own, { recipe: "Herb pile", without: without.join(",") });
    expect(reply.buttons).toEqual([]);
    expect(reply.heading).toBe("Herb pile: 2 portions");
    expect(readAloud(reply)).toContain("Cooked it? Type /batch log recipe:Herb pile with the same");
    expect(reply.files).toEqual([{ name: "steps.txt", text: "Herb pile\n\n1. Mix.\n" }]);
  });

  it.each([
    [{ recipe: "pie" }, "There is no recipe “pie”"],
    [{ recipe: " " }, "Fill in recipe:"],
    [{ portions: "0" }, "is not a number of portions"],
    [{ portions: "-2" }, "is not a number of portions"],
    [{ portions: "9999999" }, "is not a number of portions"],
    [{ portions: "8", have: "1 kg thigh" }, "not both"],
    [{ have: "thigh" }, "type an amount and a food"],
    [{ have: "1 kg beef" }, "There is no “beef” in this recipe"],
    [{ have: "5 g thigh" }, "is less than one portion takes"],
    [{ have: "900 kg thigh" }, "more than"],
    [{ without: "cheese" }, "There is no “cheese” in this recipe: type one of Yoghurt sauce"],
    [{ swap: "lard" }, "is not one swap of this recipe: type one of butter"],
    [{ units: "stone" }, "Type units:metric or units:us."],
  ])("refuses %j with a sentence", async (raw, sentence) => {
    expect(await refusalOf(raw)).toContain(sentence);
  });

  it("refuses ids that are not its own", async () => {
    for (const args of [
      [],
      ["recipe1", "p8"],
      ["recipe1", "p8", "c99", "-", "a"],
      ["../x"],
      ["recipe1", "h1@9.9.9", "-", "-", "a"],
      ["recipe1", "w", "-", "0.0=7", "a"],
    ]) {
      await expect(recipeCard.actions["show"]?.(context, args), args.join()).rejects.toThrow(
        Refusal,
      );
    }
  });

  it("never shows another group's recipe", async () => {
    const other = testContext({
      group: { ...GROUP, id: groupId("group2") },
      stores: storesWith({ recipes, stocks }),
    });
    await expect(recipeCard.run(other, { recipe: "Thigh and bean bake" })).rejects.toThrow(Refusal);
    await expect(recipeCard.actions["show"]?.(other, ["recipe1"])).rejects.toThrow(Refusal);
  });

  it("completes recipes by title", async () => {
    const complete = recipeCard.options.find((option) => option.name === "recipe")?.complete;
    expect(await complete?.(context, "bean", {})).toEqual([
      { label: "Thigh and bean bake", value: "Thigh and bean bake" },
    ]);
  });

  it("completes parts and swaps of the recipe that is being asked for, and nothing without one", async () => {
    const offers = async (name: string, others: Record<string, string>) => {
      const complete = recipeCard.options.find((option) => option.name === name)?.complete;
      return (await complete?.(context, "", others))?.map(({ value }) => value);
    };
    const parts = await offers("without", { recipe: "Thigh and bean bake" });
    expect(parts?.length).toBeGreaterThan(1);
    expect(await offers("without", {})).toEqual([]);
    expect(await offers("swap", { recipe: "no such" })).toEqual([]);
  });
});
