import { beforeEach, describe, expect, it } from "vitest";
import type { Reply } from "../../../commands/kit/reply.ts";
import { groupId } from "../../../shared/ids.ts";
import { buttonOf, COACH, MEMBER, OTHER, STRANGER, wordsOf } from "../../kit/bot.ts";
import { botForEach, formIn, published } from "../recipe/draft-kit.ts";

const TITLE = "Tray of thighs";
const TEXT = `${TITLE}
Makes 6 portions, 2100 g cooked

Base:
- 900 g chicken thighs
  or 900 g salmon fillet
- 400 g kidney beans
- 2 onions
- 30 g olive oil

Sauce (optional):
- 120 g plain yogurt

Steps
1. Roast everything on a tray at 200 °C for 35 minutes.

Keeps 3 days in the fridge
`;

const bot = botForEach();
beforeEach(async () => {
  await bot().publish(COACH, TEXT);
});

const log = (raw: Record<string, string>): Promise<Reply> =>
  bot().ask(MEMBER, "batch log", { recipe: TITLE, ...raw });
const card = (raw: Record<string, string>): Promise<Reply> =>
  bot().ask(MEMBER, "recipe card", { recipe: TITLE, ...raw });

/** What was written of the member's batches, oldest first. */
async function batches() {
  const member = await bot().stores.members.open(groupId(MEMBER.group), MEMBER.userId, "Ines");
  const { batches: all } = await bot().stores.stocks.ledger(member.id);
  return all.map(({ portionsCooked, portionWord, portionG, perPortion, revisionId }) => ({
    portionsCooked,
    portionWord,
    portionG: Math.round(portionG),
    kcal: Math.round(perPortion.energyKcal.amount),
    revisionId,
  }));
}

/** Opens the card's form, fills it in and sends it. */
async function logCard(shown: Reply, filled: Record<string, string> = {}): Promise<Reply> {
  const form = formIn(await bot().form(MEMBER, { pressId: buttonOf(shown, "Log it") }));
  const blank = Object.fromEntries(form.fields.map(({ name, value }) => [name, value]));
  return bot().submit(MEMBER, form.id, { ...blank, ...filled });
}

describe("/batch log by what went in", () => {
  it("logs as many portions, of the very size, as the card makes of several foods in hand", async () => {
    const reply = await log({ have: "850 g thigh, 300 g beans; 2 onions" });
    expect(reply.heading).toBe(`Logged: 5 portions of ${TITLE}.`);
    const said = wordsOf(reply);
    expect(said).toContain("kidney beans 300 g all of it, runs out first");
    expect(said).toContain("chicken thighs 850 g 175 g left");
    expect(said).not.toContain("to use up");
    // 300 g of 400 g beans is three quarters of 2100 g cooked, in five portions.
    expect(await batches()).toMatchObject([{ portionsCooked: 5, portionG: 315 }]);
  });

  it("logs boxes at the weight that each was filled with", async () => {
    const reply = await log({ fill: "6 boxes of 400 g" });
    expect(reply.heading).toBe(`Logged: 6 boxes of ${TITLE}.`);
    expect(await batches()).toMatchObject([
      { portionsCooked: 6, portionWord: "box", portionG: 400 },
    ]);
  });

  it("takes the weight from the scale before what the recipe states", async () => {
    await log({ have: "900 g thigh", weight: "1.8 kg" });
    expect(await batches()).toMatchObject([{ portionsCooked: 6, portionG: 300 }]);
  });

  it("counts a swap that was taken in the figures and in what the member avoids", async () => {
    await bot().ask(MEMBER, "me", { allergens: "fish" });
    const plain = await log({ portions: "6" });
    const swapped = await log({ portions: "6", swap: "salmon" });
    expect(plain.alerts.join(" ")).toMatch(/^Not in it as shown, but a swap contains fish/u);
    expect(swapped.alerts.join(" ")).toMatch(/^Contains fish, which you avoid: salmon/u);
    const [a, b] = await batches();
    expect(a?.kcal).not.toBe(b?.kcal);
  });

  it.each([
    [{ portions: "6", have: "850 g thigh" }, "each decides the size"],
    [{ have: "850 g turkey" }, "There is no “turkey”"],
    [{ have: "10 g thigh" }, "nothing can be made of it"],
    [{ fill: "6 jars" }, "does not say what to fill"],
    [{ swap: "tofu" }, "is not one swap of this recipe"],
    [{ without: "rice" }, "rice"],
  ])("refuses %j with a sentence and writes nothing", async (raw, sentence) => {
    expect(wordsOf(await log(raw))).toContain(sentence);
    expect(await batches()).toEqual([]);
  });
});

describe("the card's Log it", () => {
  it.each<Record<string, string>>([
    {},
    { portions: "8" },
    { have: "850 g thigh, 300 g beans" },
    { fill: "6 x 400 g", without: "sauce" },
    { have: "700 g salmon", swap: "salmon", without: "sauce, olive oil" },
  ])("logs what /batch log logs with the same options: %j", async (raw) => {
    const shown = await card(raw);
    expect(shown.buttons.map(({ label }) => label)).toEqual(["Steps", "Log it", "Label"]);
    const pressed = await logCard(shown);
    const typed = await log({ ...raw, cooked: "now" });
    expect(pressed.heading).toBe(typed.heading);
    const [a, b] = await batches();
    expect(a).toEqual(b);
  });

  it("asks when it was cooked, what it weighs and what is frozen at once", async () => {
    const reply = await logCard(await card({ portions: "6" }), {
      cooked: "09:30",
      weight: "1.8 kg",
      freeze: "2",
    });
    const said = wordsOf(reply);
    expect(said).toContain("In the freezer 2 portions");
    expect(said).toMatch(/Cooked .*09:30 300 g a portion/u);
  });

  it("logs the revision that the card showed, whatever has been published since", async () => {
    const shown = await card({});
    const [before] = await published(bot());
    await bot().publish(COACH, TEXT.replace("400 g kidney", "300 g kidney"));
    await logCard(shown);
    expect((await batches())[0]?.revisionId).toBe(before?.revisionId);
  });

  it("is once for each form sent, and says what to mend in a field", async () => {
    const shown = await card({});
    expect(wordsOf(await logCard(shown, { weight: "heavy" }))).toContain("is not a weight");
    expect(wordsOf(await logCard(shown, { cooked: "teatime" }))).toContain("is not a time");
    expect(wordsOf(await logCard(shown, { freeze: "99" }))).toContain("cannot freeze 99");
    expect(await batches()).toEqual([]);
  });

  it("leads nowhere for another group, and no forged press does", async () => {
    const press = buttonOf(await card({}), "Log it");
    const opened = await bot().form(STRANGER, { pressId: press });
    expect("heading" in opened && opened.heading).toMatch(/no longer here/u);
    for (const args of ["", "~x", "~x~p999999~-~-~a", "~x~w~-~9.9=9~a", "~x~w~c99~-~a"]) {
      const sent = await bot().submit(OTHER, `batch log.done${args}`, { cooked: "now" });
      expect(sent.heading).not.toMatch(/^Logged/u);
    }
  });
});
