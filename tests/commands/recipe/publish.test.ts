import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { RawInput } from "../../../commands/kit/command.ts";
import type { Reply } from "../../../commands/kit/reply.ts";
import { recipePublish } from "../../../commands/recipe/publish.ts";
import { groupId } from "../../../shared/ids.ts";
import { buttonOf, COACH, fileOf, openTestBot, type TestBot } from "../../kit/bot.ts";
import { readAloud } from "../../kit/recipes-and-context.ts";

const POT = `Lentil pot
Makes 4 portions
Tags: vegan, freezer
Ingredients
- 250 g dried red lentils
- 1 large onion, diced
- 2 tbsp olive oil
- 300 g wild nettle leaves
- 2 sprigs bay
- carrots
- salt, to taste
Steps
1. Simmer for 25 minutes.
Keeps 3 days in the fridge`;

let bot: TestBot;
beforeEach(async () => {
  bot = await openTestBot("2026-10-11T10:00:00Z");
});
afterEach(() => bot.close());

const attach = (raw: RawInput): Promise<Reply> => bot.ask(COACH, "recipe publish", raw);
const published = () => bot.stores.recipes.all(groupId(COACH.group));
const drafts = async () => {
  const coach = await bot.stores.members.open(groupId(COACH.group), COACH.userId, COACH.name);
  return bot.stores.drafts.list(coach.id);
};

describe("/recipe publish", () => {
  it("is for the coach", () => {
    expect(recipePublish.who).toBe("coach");
  });

  it("shows how each line was read, doubts first, and publishes nothing yet", async () => {
    const read = await attach(fileOf(POT));
    const said = readAloud(read);
    expect(read.heading).toBe("Read: Lentil pot, 4 portions");
    expect(said).toMatch(/^[^\n]*\n3 lines need a look:\nLine 8: “wild nettle leaves” is not in/u);
    expect(said).toContain("dried red lentils: 250 g (taken as red lentils, dried)");
    expect(said).toContain("large onion: 1 (150 g; taken as onion, raw; diced)");
    expect(said).toMatch(/olive oil: 2 tbsp \(27 g; taken as olive oil\)/u);
    expect(said).toContain("wild nettle leaves: 300 g (not in the food table)");
    expect(said).toMatch(/figures: at least \d+ kcal/u);
    expect(said).toContain("keeps: 3 days in the fridge");
    expect(said).toMatch(/allergens: not known \(not known: wild nettle leaves/u);
    expect(said).toMatch(/! Not counted: .*lower bounds/u);
    expect(read.buttons.map(({ label }) => label)).toEqual(["Publish", "Edit", "Drop"]);
    expect(await published()).toEqual([]);
    expect(await drafts()).toMatchObject([{ title: "Lentil pot", text: POT }]);
  });

  it("publishes on the press, says what is not counted, and the draft is gone", async () => {
    const read = await attach(fileOf(POT));
    const done = await bot.press(COACH, buttonOf(read, "Publish"));
    expect(done.heading).toBe("Published: Lentil pot, 4 portions.");
    expect(readAloud(done)).toContain("Its figures are lower bounds: not counted are wild nettle");
    expect(await published()).toMatchObject([{ revisionNumber: 1, recipe: { portions: 4 } }]);
    expect(await drafts()).toEqual([]);
  });

  it("keeps the draft of a text that cannot be read, and says each fault with its line", async () => {
    const read = await attach(fileOf("Soup\nIngredients\n- 0 g leek\n-\n"));
    const said = readAloud(read);
    expect(read.heading).toBe("3 things keep “Soup” from being read.");
    expect(said).toContain("Nothing says how many portions it makes");
    expect(said).toMatch(/^Line 3: .*zero/mu);
    expect(said).toMatch(/^Line 4: /mu);
    expect(read.buttons.map(({ label }) => label)).toEqual(["Edit", "Drop"]);
    expect(await drafts()).toHaveLength(1);
  });

  it("keeps one draft of the same file attached twice, or of a delivery repeated", async () => {
    await attach(fileOf(POT));
    await attach(fileOf(POT));
    expect(await drafts()).toHaveLength(1);
  });

  it("reads a schema.org recipe as text, and says what did not come over", async () => {
    const document = {
      "@context": "https://schema.org",
      "@type": "Recipe",
      name: "Bean pot",
      recipeYield: "4 servings",
      recipeIngredient: ["400 g canned kidney beans", "200 g carrots, sliced"],
      recipeInstructions: "Simmer for 20 minutes.",
      nutrition: { "@type": "NutritionInformation", calories: "1 kcal" },
      image: "https://example.org/pot.jpg",
    };
    const read = await attach(fileOf(JSON.stringify(document), "pot.json"));
    const said = readAloud(read);
    expect(read.heading).toBe("Read: Bean pot, 4 portions");
    expect(said).toContain("Its nutrition figures were not taken over");
    expect(said).toContain("Left out, for want of a place: image.");
    expect(said).toContain("carrots: 200 g (taken as carrot, raw; sliced)");
    expect((await drafts())[0]?.text).toMatch(/^Bean pot\n/u);
  });
});

/** Everything that people attach by mistake or in bad faith. */
const HOSTILE: readonly (readonly [what: string, raw: RawInput, says: RegExp])[] = [
  ["an empty file", fileOf(""), /There is no text/u],
  ["nothing but space", fileOf(" \n\u00a0\n"), /There is no text/u],
  [
    "a file that is no text",
    { file: { name: "a.png", bytes: new Uint8Array([0x89, 0x50, 0xff, 0xfe]) } },
    /not plain text/u,
  ],
  ["100 kB", fileOf("x".repeat(100_000)), /larger than 80 kB/u],
  ["a text over the limit", fileOf(`${"- 5 g salt\n".repeat(2_000)}`), /22000 characters/u],
  ["ten thousand lines", fileOf("a\n".repeat(9_999)), /lines: a recipe may have 400/u],
  ["broken JSON", fileOf('{"@type": "Recipe", ', "a.json"), /not whole JSON/u],
  ["another document", fileOf('{"@type": "Person", "name": "x"}'), /no schema\.org Recipe/u],
  ["a thousand nested lists", fileOf("[".repeat(1_000) + "]".repeat(1_000)), /nested more than/u],
];

/** What is kept, for the coach wrote it, and refused as a recipe. */
const UNREADABLE: readonly (readonly [what: string, text: string, says: RegExp])[] = [
  ["one endless line", `Pot ${"very ".repeat(3_000)}`, /longer than/u],
  ["no yield", "Pot\n\n- 5 g salt", /how many portions it makes/u],
  ["no ingredients", "Pot\nMakes 2 portions\n\nSteps\n1. Wait.", /no ingredients/u],
  ["divided by zero", "Pot\nMakes 2 portions\n\n- 1/0 cup rice", /divides by zero/u],
  ["too much of it", "Pot\nMakes 2 portions\n\n- 1000000000000 g rice", /too big|more than/u],
  ["no letters", "🥘🥘\n\n\u202E\u202D", /title/u],
];

describe("what is no recipe", () => {
  it.each(HOSTILE)("is refused with a sentence, and nothing is kept: %s", async (_, raw, says) => {
    const refused = await attach(raw);
    expect(readAloud(refused)).toMatch(says);
    expect(refused.buttons).toEqual([]);
    expect(await drafts()).toEqual([]);
  });

  it.each(UNREADABLE)("is kept as a draft and cannot be published: %s", async (_, text, says) => {
    const started = performance.now();
    const read = await attach(fileOf(text));
    expect(performance.now() - started).toBeLessThan(2_000);
    expect(readAloud(read)).toMatch(says);
    expect(read.buttons.map(({ label }) => label)).not.toContain("Publish");
    expect(await drafts()).toHaveLength(1);
  });

  it("shows markup, right-to-left and emoji as they are, and hides nothing behind them", async () => {
    const text =
      "<b>Pot</b> \u202Eمرق 🥕\nMakes 2 portions\n\n- 100 g <script>carrots</script>\n- 50 g جزر\n";
    const read = await attach(fileOf(text));
    expect(read.heading).not.toContain("\u202E");
    expect(readAloud(read)).toContain("جزر: 50 g (not in the food table)");
    await bot.press(COACH, buttonOf(read, "Publish"));
    expect(await published()).toHaveLength(1);
  });
});
