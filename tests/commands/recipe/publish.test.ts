import { describe, expect, it } from "vitest";
import { Refusal } from "../../../commands/kit/command.ts";
import { recipePublish } from "../../../commands/recipe/publish.ts";
import { causeId } from "../../../shared/ids.ts";
import {
  attached,
  memoryRecipes,
  readAloud,
  storesWith,
  testContext,
} from "../../kit/recipes-and-context.ts";

const POT = `Lentil pot
Makes 4 portions
Tags: vegan, freezer
Ingredients
- 250 g dried red lentils
- 1 large onion, diced
- 2 tbsp olive oil
- 300 g nettles
Steps
1. Simmer for 25 minutes.
Keeps 3 days in the fridge`;

function coach() {
  const recipes = memoryRecipes();
  return { recipes, context: testContext({ isCoach: true, stores: storesWith({ recipes }) }) };
}

describe("/recipe publish", () => {
  it("is for the coach", () => {
    expect(recipePublish.who).toBe("coach");
  });

  it("publishes and says how each line was read and what was not found", async () => {
    const { recipes, context } = coach();
    const reply = await recipePublish.run(context, { file: attached(POT) });
    const said = readAloud(reply);
    expect(reply.heading).toBe("Published: Lentil pot, 4 portions.");
    expect(said).toContain("Line 8: “nettles” is not in the food table");
    expect(said).toContain("dried red lentils: 250 g (taken as red lentils, dried)");
    expect(said).toContain("large onion: 1 (150 g; taken as onion, raw)");
    expect(said).toMatch(/olive oil: 2 tbsp \(27 g; taken as olive oil\)/u);
    expect(said).toContain("nettles: 300 g (not in the food table)");
    expect(said).toMatch(/figures: at least \d+ kcal/u);
    expect(said).toContain("keeps: 3 days in the fridge");
    expect(recipes.published).toHaveLength(1);
    expect(recipes.published[0]?.recipe.title).toBe("Lentil pot");
  });

  it("gives the same answer for the same request and writes once", async () => {
    const { recipes, context } = coach();
    const first = await recipePublish.run(context, { file: attached(POT) });
    expect(await recipePublish.run(context, { file: attached(POT) })).toEqual(first);
    expect(recipes.published).toHaveLength(1);
  });

  it("makes a new revision of the recipe of the same title", async () => {
    const { context } = coach();
    await recipePublish.run(context, { file: attached(POT) });
    const again = await recipePublish.run(
      { ...context, causeId: causeId("cause2") },
      { file: attached(POT.replace("250 g", "300 g")) },
    );
    expect(again.heading).toBe("Published as revision 2: Lentil pot, 4 portions.");
  });

  it("refuses with all faults at once and their lines, and publishes nothing", async () => {
    const { recipes, context } = coach();
    const bad = "Soup\nIngredients\n- 0 g leek\n-\n";
    const refusal = await recipePublish
      .run(context, { file: attached(bad) })
      .catch((error) => error);
    expect(refusal).toBeInstanceOf(Refusal);
    const said: string = refusal.sentences.join("\n");
    expect(said).toContain("Nothing was published");
    expect(said).toContain("Nothing says how many portions it makes");
    expect(said).toMatch(/^Line 3: .*zero/mu);
    expect(said).toMatch(/^Line 4: /mu);
    expect(recipes.published).toEqual([]);
  });

  it.each([
    ["an empty file", attached("")],
    ["a file that is no text", { name: "a.png", bytes: new Uint8Array([0x89, 0x50, 0xff, 0xfe]) }],
    ["a huge file", attached("x".repeat(100_000))],
  ])("refuses %s with a sentence", async (_, file) => {
    const { recipes, context } = coach();
    await expect(recipePublish.run(context, { file })).rejects.toThrow(Refusal);
    expect(recipes.published).toEqual([]);
  });
});
