import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { PRESS_ID_MAX } from "../../../commands/kit/press.ts";
import type { Reply } from "../../../commands/kit/reply.ts";
import { recipeCard } from "../../../commands/recipe/card.ts";
import type { Recipe } from "../../../shared/recipe/types.ts";
import {
  buttonOf,
  COACH,
  fileOf,
  MEMBER,
  OTHER,
  openTestBot,
  type TestBot,
} from "../../kit/bot.ts";
import {
  memoryRecipes,
  readAloud,
  recipeOf,
  storesWith,
  testContext,
} from "../../kit/recipes-and-context.ts";

const TITLE = "Tray of thighs";
const TEXT = `${TITLE}
Makes 6 portions, 2100 g cooked

- 900 g chicken thighs
- 400 g kidney beans
- 2 onions
- 30 g olive oil

Steps
1. Marinate the chicken for 30 minutes to 24 hours.
2. Roast everything on a tray at 200 °C for 35 minutes.

Keeps 3 days in the fridge
`;

let bot: TestBot;
const publish = async (text: string) => {
  const read = await bot.ask(COACH, "recipe publish", fileOf(text));
  await bot.press(COACH, buttonOf(read, "Publish"));
};
beforeEach(async () => {
  bot = await openTestBot("2026-10-24T17:00:00Z");
  await bot.ask(COACH, "group setup", { zone: "Europe/Lisbon" });
  await publish(TEXT);
});
afterEach(() => bot.close());

const card = (raw: Record<string, string> = {}, who = MEMBER): Promise<Reply> =>
  bot.ask(who, "recipe card", { recipe: TITLE, ...raw });

describe("a card by what is in hand", () => {
  it("says which food runs out, what is left of the others and what would use them up", async () => {
    const reply = await card({ have: "850 g thigh, 300 g beans; 2 onions" });
    expect(reply.heading).toBe(
      `5 portions of ${TITLE}, each 90 % of the written size: the kidney beans run out first`,
    );
    const said = readAloud(reply);
    expect(said).toContain("kidney beans: 300 g (all of it, runs out first)");
    expect(said).toContain("chicken thighs: 850 g (175 g left)");
    expect(said).toContain("onions: 2 (220 g) (all of it)");
    expect(said).toContain("to use up the chicken thighs: 78 g more kidney beans");
  });
});

describe("a card by boxes", () => {
  it("says what a box holds in portions, by which weight, and figures per box", async () => {
    const reply = await card({ fill: "6 boxes of 400 g" });
    expect(reply.heading).toBe(`${TITLE} for 6 boxes of 400 g: each holds 1.14 portions`);
    const said = readAloud(reply);
    expect(said).toContain("2.4 kg in all, cooked, by the weight the recipe states");
    expect(said).toContain("[Per box, estimated]");
    expect(said).toContain("about 400 g cooked");
  });

  it("is remembered by the buttons", async () => {
    const first = await card({ fill: "6 x 400 g", tray: "40x30 cm", start: "18:00" });
    const steps = await bot.press(MEMBER, buttonOf(first, "Steps"));
    const back = await bot.press(MEMBER, buttonOf(steps, "Back"));
    expect(readAloud(back)).toBe(readAloud(first));
    for (const { id } of first.buttons) expect(id.length).toBeLessThanOrEqual(PRESS_ID_MAX);
  });
});

describe("clock times of a marinade", () => {
  it("are told when its start is, across the night on which the clocks go back", async () => {
    const said = readAloud(await card({ start: "18:00" }));
    // Lisbon leaves summer time at 02:00 on 25 October 2026: 24 hours after 18:00 it is 17:00.
    expect(said).toContain("marinade: ready 18:30");
    expect(said).toContain("at the latest Sun 25 Oct, 17:00");
  });

  it("are no guess without it, and a start without a marinade is refused", async () => {
    expect(readAloud(await card())).toContain("30 min to 24 hours in the fridge (type start:");
    await publish(TEXT.replace(/1\. Marinate.*\n/u, "").replace(TITLE, "Plain tray"));
    const reply = await card({ recipe: "Plain tray", start: "18:00" });
    expect(readAloud(reply)).toContain("marinates nothing");
    expect(readAloud(await card({ start: "teatime" }))).toContain("is not a time I understand");
  });
});

describe("what changed", () => {
  it("is told to who cooked the earlier revision, and to nobody else", async () => {
    await bot.ask(MEMBER, "batch log", { recipe: TITLE });
    expect(readAloud(await card())).not.toContain("Changed since");
    await publish(TEXT.replace("400 g kidney beans", "300 g kidney beans"));
    expect(readAloud(await card())).toMatch(/Changed since you cooked it: .*400 → 300 g/u);
    expect(readAloud(await card({}, OTHER))).not.toContain("Changed since");
  });
});

describe("the trade's cautions", () => {
  it("name trays and loads, and the temperature in the middle that goes before any time", async () => {
    const said = (await card({ portions: "24" })).cautions.join("\n");
    expect(said).toMatch(/about \d+ trays of 40 × 36 cm .*Crowded food steams/u);
    expect(said).toContain("chicken thighs 74 °C / 165 °F");
    expect((await card()).cautions.join("\n")).not.toContain("Crowded");
  });

  it.each([
    [{ fill: "6 jars" }, "does not say what to fill"],
    [{ tray: "big" }, "is not the size of a tray"],
    [{ fill: "6 x 400 g", portions: "6" }, "each decides the size"],
    [{ have: "850 g thigh, 2 salmon" }, "There is no “salmon”"],
  ])("refuses %j with a sentence", async (raw, sentence) => {
    expect(readAloud(await card(raw))).toContain(sentence);
  });
});

describe("a sauce that makes more than is used", () => {
  it("says how much is left and for how long it keeps, once, and counts only what is eaten", async () => {
    const whole = recipeOf(
      `Bowl\nMakes 2 portions\nBase:\n- 300 g cucumber\nSauce:\n- 200 g plain yogurt\n- 100 g cream cheese\nSteps\n1. Mix.`,
    );
    const components = whole.components.map((part) =>
      part.name === "Sauce" ? { ...part, makes: { madeG: 300, usedG: 180 } } : part,
    );
    const said = async (recipe: Recipe) => {
      const stocks = {
        ...storesWith({}).stocks,
        load: async (memberId: Parameters<TestBot["stores"]["stocks"]["load"]>[0]) => {
          return { memberId, version: 0, batches: [], lots: [] };
        },
      };
      const stores = storesWith({ recipes: memoryRecipes([recipe]), stocks });
      return readAloud(
        await recipeCard.run(testContext({ stores }), { recipe: "Bowl", portions: "4" }),
      );
    };
    const some = await said({ ...whole, components });
    expect(some).toMatch(/Sauce, left over: 240 g \(of 600 g, not in the figures; keeps \d+ days/u);
    expect(some).not.toContain("is counted as eaten");
    const kcal = (text: string) => Number(/energy: \d+ kJ \/ (\d+) kcal/u.exec(text)?.[1]);
    expect(kcal(some)).toBeLessThan(kcal(await said(whole)));
  });
});
