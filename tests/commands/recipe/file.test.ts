import { describe, expect, it } from "vitest";
import { fromJsonLd } from "../../../shared/json-ld/from-json-ld.ts";
import { COACH, fileTextOf, MEMBER, STRANGER } from "../../kit/bot.ts";
import { readAloud } from "../../kit/recipes-and-context.ts";
import { attach, botForEach, NETTLES, optionIn } from "./draft-kit.ts";

const bot = botForEach();

/** Everything that a text has to carry: parts, keeping of each, swaps, options, brackets, notes. */
const LONG = `Smoky bean pot

Makes 5 wraps, 1900 g cooked
Tags: freezer, vegetarian

Base:
- 600 g canned kidney beans, drained
- 250 g onion, diced
- 1 large egg (50 g)
- 20 g olive oil
  or 15 g butter
- salt, to taste
- 30 g tomato paste (optional)

Herb yoghurt (optional):
- 200 g plain low-fat yoghurt
- 10 g fresh parsley, chopped
Keeps 4 days in the fridge
Does not freeze: it turns grainy

Steps
1. Soften the onion in the oil for 8-10 minutes.
2. Bake at 200 °C / 390 °F for 25 minutes & <rest>.

Keeps 3 days in the fridge
Freezes 3 months
Reheat: until 74 °C throughout.
Note: Good on "baked" potatoes & rice.
`;

const RECIPE = { recipe: "Smoky bean pot" };

async function cardOf(who: typeof COACH): Promise<string> {
  return readAloud(await bot().ask(who, "recipe card", { ...RECIPE, portions: "10" }));
}

describe.each(["text", "json-ld"])("/recipe file as:%s", (as) => {
  it("gives any member a file which another group publishes as the same recipe", async () => {
    await bot().publish(COACH, LONG);
    const out = fileTextOf(await bot().ask(MEMBER, "recipe file", { ...RECIPE, as }));
    expect((await bot().publish(STRANGER, out)).heading).toBe(
      "Published: Smoky bean pot, 5 wraps.",
    );
    const [ours, theirs] = await Promise.all([cardOf(COACH), cardOf(STRANGER)]);
    expect(theirs).toBe(ours);
    const again = fileTextOf(await bot().ask(STRANGER, "recipe file", { ...RECIPE, as }));
    expect(again).toBe(out);
  });

  it("is of the asker's own group alone", async () => {
    await bot().publish(COACH, LONG);
    const asked = await bot().ask(STRANGER, "recipe file", { ...RECIPE, as });
    expect(asked.heading).toMatch(/There is no recipe “Smoky bean pot”/u);
    expect(asked.files).toEqual([]);
  });
});

describe("/recipe file", () => {
  it("names the file after the recipe and gives text unless told otherwise", async () => {
    await bot().publish(COACH, LONG.replace("Smoky bean pot", "Crème & brûlée: No 5"));
    const plain = await bot().ask(MEMBER, "recipe file", { recipe: "creme brulee no 5" });
    expect(plain.files).toMatchObject([{ name: "creme-brulee-no-5.txt", mediaType: "text/plain" }]);
    const json = await bot().ask(MEMBER, "recipe file", { recipe: "creme", as: "json-ld" });
    expect(json.files).toMatchObject([
      { name: "creme-brulee-no-5.json", mediaType: "application/ld+json" },
    ]);
    expect(fromJsonLd(fileTextOf(json)).ok).toBe(true);
  });

  it("has the energy that the group's cards show", async () => {
    await bot().publish(COACH, LONG);
    await bot().ask(COACH, "group setup", { labels: "eu" });
    const card = readAloud(await bot().ask(MEMBER, "recipe card", RECIPE));
    const json = fileTextOf(await bot().ask(MEMBER, "recipe file", { ...RECIPE, as: "json-ld" }));
    const [, kcal = "none"] = /"calories": "(\d+) calories"/u.exec(json) ?? [];
    expect(card).toContain(`/ ${kcal} kcal`);
  });

  it("has a name also where the title has no Latin letter", async () => {
    await bot().publish(COACH, LONG.replace("Smoky bean pot", "豆の鍋"));
    const plain = await bot().ask(MEMBER, "recipe file", { recipe: "豆の鍋" });
    expect(plain.files).toMatchObject([{ name: "recipe.txt" }]);
  });

  it("says which foods were picked by hand, since a file cannot hold that", async () => {
    const read = await attach(bot(), NETTLES);
    const picked = optionIn(read, "spinach, raw");
    const choice = read.choices[0]?.id ?? "";
    const done = await bot().press(COACH, choice, [picked]);
    const publish = done.buttons.find(({ label }) => label === "Publish")?.id ?? "";
    await bot().press(COACH, publish);
    const out = await bot().ask(MEMBER, "recipe file", { recipe: "Green pot" });
    expect(readAloud(out)).toContain("to be picked again where it is read: nettle spinach mix");
  });

  it("refuses a form that there is not, and says which there are", async () => {
    await bot().publish(COACH, LONG);
    const asked = await bot().ask(MEMBER, "recipe file", { ...RECIPE, as: "docx" });
    expect(asked.heading).toContain("as must be one of: text, json-ld.");
  });
});
