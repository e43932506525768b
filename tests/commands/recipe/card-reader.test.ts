import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Reply } from "../../../commands/kit/reply.ts";
import {
  buttonOf,
  COACH,
  MEMBER,
  OTHER,
  openTestBot,
  SALAD_TEXT,
  type TestBot,
  wordsOf,
} from "../../kit/bot.ts";

const WRAP_TEXT = `Egg and cheese wraps
Makes 4 wraps

Wraps:
- 4 flour tortillas
- 6 eggs
- 120 g cheddar, grated
- 20 g zorble paste
- salt to taste

Herb sauce (optional):
- 200 g plain yogurt
- 10 g fresh parsley

Steps
1. Scramble the eggs for 4 minutes until firm, fill and roll.

Keeps 2 days in the fridge
`;

let bot: TestBot;
beforeEach(async () => {
  bot = await openTestBot("2026-10-11T10:00:00Z");
  await bot.ask(COACH, "group setup", { zone: "Europe/Lisbon" });
  await bot.publish(COACH, WRAP_TEXT);
});
afterEach(() => bot.close());

const card = (who = MEMBER, raw: Record<string, string> = {}): Promise<Reply> =>
  bot.ask(who, "recipe card", { recipe: "Egg and cheese wraps", ...raw });

describe("a card for its reader", () => {
  it("says what the reader avoids before anything else, and to nobody else", async () => {
    await bot.ask(MEMBER, "me", { allergens: "milk, egg" });
    const { alerts, audience } = await card();
    expect(alerts.slice(0, 2)).toEqual([
      "Contains milk, which you avoid: cheddar and plain yogurt.",
      "Contains egg, which you avoid: eggs.",
    ]);
    expect(alerts.join(" ")).toContain("zorble paste");
    expect(audience).toBe("private");
    expect((await card(OTHER)).alerts).toEqual([]);
  });

  it("keeps the alert on the steps, and drops what was left out or swapped away", async () => {
    await bot.ask(MEMBER, "me", { allergens: "milk" });
    const steps = await bot.press(MEMBER, buttonOf(await card(), "Steps"));
    expect(steps.alerts[0]).toContain("Contains milk");
    const without = await card(MEMBER, { without: "cheddar, Herb sauce" });
    expect(without.alerts.filter((alert) => alert.startsWith("Contains milk"))).toEqual([]);
  });

  it("says it again when the batch is logged", async () => {
    await bot.ask(MEMBER, "me", { allergens: "egg" });
    const logged = await bot.ask(MEMBER, "batch log", { recipe: "Egg and cheese wraps" });
    expect(logged.alerts[0]).toContain("Contains egg");
  });

  it("never takes a food that nobody knows for free of anything", async () => {
    const said = wordsOf(await card(OTHER));
    expect(said).toMatch(/allergens at least .*not known: zorble paste/su);
  });

  it("tells what a wrap is of the day's target and what is left, with today's figures", async () => {
    await bot.ask(MEMBER, "targets set", { energy: "2000", protein: "100" });
    const said = wordsOf(await card());
    expect(said).toContain("One wrap of your day's target, nothing else counted");
    expect(said).toMatch(/energy at least \d+ % of 2,000 kcal at most [\d,]+ kcal left/u);
    expect(wordsOf(await card(OTHER))).not.toContain("target");
  });

  it("brings a picture with a text equivalent where it helps, and none where it says nothing more", async () => {
    const [picture, ...more] = (await card()).pictures;
    expect(more).toEqual([]);
    expect(picture?.alt).toContain("without Herb sauce");
    await bot.publish(COACH, SALAD_TEXT);
    expect((await card(MEMBER, { recipe: "Cucumber bowl" })).pictures).toEqual([]);
    await bot.ask(MEMBER, "targets set", { energy: "2000" });
    const drawn = (await card(MEMBER, { recipe: "Cucumber bowl" })).pictures;
    expect(drawn[0]?.alt).toContain("2000 kcal");
  });

  it("names the lines left to taste, salt above all", async () => {
    expect(wordsOf(await card())).toContain("To taste, left out of the figures: salt.");
  });

  it("follows the label style the coach chose", async () => {
    expect(wordsOf(await card())).toMatch(/energy at least \d+ kJ \/ \d+ kcal/u);
    await bot.ask(COACH, "group setup", { labels: "us" });
    const us = wordsOf(await card());
    expect(us).toMatch(/sodium at least \d+ mg/u);
    expect(us).not.toContain("kJ");
  });

  it("opens the whole label and leads back", async () => {
    const label = await bot.press(MEMBER, buttonOf(await card(), "Label"));
    expect(label.heading).toBe("Egg and cheese wraps: EU nutrition label, estimated");
    expect(wordsOf(label)).toMatch(/Per 100 g.*saturates.*Per wrap/su);
    const back = await bot.press(MEMBER, buttonOf(label, "Back"));
    expect(back.heading).toBe("Egg and cheese wraps: 4 wraps");
  });

  it("warns whoever has somebody pregnant at the table of soft eggs", async () => {
    const text = WRAP_TEXT.replace("Egg and cheese wraps", "Runny wraps")
      .replace("- 6 eggs", "- 6 egg yolks")
      .replace(
        "1. Scramble the eggs for 4 minutes until firm, fill and roll.",
        "1. Fill and roll.",
      );
    await bot.publish(COACH, text);
    await bot.ask(MEMBER, "me", { table: "pregnant" });
    const runny = await card(MEMBER, { recipe: "Runny wraps" });
    expect(runny.alerts.join(" ")).toContain("pregnan");
    expect((await card(OTHER, { recipe: "Runny wraps" })).alerts).toEqual([]);
  });
});
