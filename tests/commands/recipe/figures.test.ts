import { describe, expect, it } from "vitest";
import { reply } from "../../../commands/kit/reply.ts";
import { type FigureOptions, figureParts } from "../../../commands/recipe/figure-parts.ts";
import { type LabelCard, labelReply } from "../../../commands/recipe/label.ts";
import { cardPicture, type PictureCard } from "../../../commands/recipe/picture.ts";
import { addSums, sumsBy, timesSums, UNMEASURED } from "../../../shared/nutrition/sum.ts";
import { readAloud } from "../../kit/recipes-and-context.ts";

const AMOUNTS = {
  energyKcal: 517,
  proteinG: 38.6,
  fatG: 12.7,
  saturatedFatG: 3.2,
  carbohydrateG: 60,
  fibreG: 9,
  sugarsG: 8.24,
  sodiumMg: 489,
};
const perPortion = sumsBy((key) => ({ amount: AMOUNTS[key], atLeast: false }));
const per100g = timesSums(perPortion, 100 / 350);
const options: FigureOptions = {
  style: "eu",
  portionWord: "bowl",
  portionNote: "about 350 g cooked",
  hundredNote: "cooked, by its weight",
};
const shown = (rest: Partial<FigureOptions> = {}, sums = perPortion): string =>
  readAloud(
    reply("", { parts: figureParts({ perPortion: sums, per100g }, { ...options, ...rest }) }),
  );

describe("the figures of a card", () => {
  it("go by the EU's rules in an EU group: kJ and kcal, carbohydrate without fibre, salt", () => {
    expect(shown().split("\n").slice(1)).toEqual([
      "[Per bowl, estimated]",
      "energy: 2065 kJ / 491 kcal (about 350 g cooked)",
      "protein: 39 g",
      "fat: 13 g (saturates 3.2 g)",
      "carbohydrate: 51 g (sugars 8.2 g; fibre not in it)",
      "fibre: 9 g",
      "salt: 1.2 g",
      "per 100 g: 140 kcal · protein 11 g · fat 3.6 g · carbohydrate 15 g (cooked, by its weight)",
    ]);
  });

  it("go by the US rules in a US group: rounded steps, carbohydrate with fiber, sodium", () => {
    expect(shown({ style: "us" }).split("\n").slice(1)).toEqual([
      "[Per bowl, estimated]",
      "energy: 520 kcal (about 350 g cooked)",
      "protein: 39 g",
      "fat: 13 g (saturated 3 g)",
      "carbohydrate: 60 g (with fiber 9 g, sugars 8 g)",
      "sodium: 490 mg (21 % of the daily value)",
      "per 100 g: 150 kcal · protein 11 g · fat 3.5 g · carbohydrate 17 g (cooked, by its weight)",
    ]);
  });

  it("have no note where nothing is known about the portion", () => {
    expect(shown({ portionNote: "", hundredNote: "" })).not.toContain("()");
    expect(shown({ portionNote: "" })).toContain("energy: 2065 kJ / 491 kcal\n");
  });

  it("say at least for every figure when a part could not be counted", () => {
    const partly = addSums([perPortion, UNMEASURED]);
    const lines = shown({ style: "us" }, partly).split("\n").slice(2, 7);
    for (const line of lines) expect(line).toMatch(/^\w+: at least \d/u);
  });
});

describe("the whole label", () => {
  const card: LabelCard = {
    title: "Taco bowl",
    portionWord: "bowl",
    portionG: 350,
    hundredNote: "cooked, by its weight",
    style: "eu",
    perPortion,
    per100g,
    buttons: [],
  };

  it("puts 100 g before the portion in the EU, by the law's names and order", () => {
    const said = readAloud(labelReply(card)).split("\n");
    expect(said[0]).toBe("Taco bowl: EU nutrition label, estimated");
    expect(said.slice(1, 10)).toEqual([
      "[Per 100 g, cooked, by its weight]",
      "Energy: 590 kJ / 140 kcal",
      "Fat: 3.6 g",
      "  of which saturates: 0.9 g",
      "Carbohydrate: 15 g",
      "  of which sugars: 2.4 g",
      "Fibre: 2.6 g",
      "Protein: 11 g",
      "Salt: 0.35 g",
    ]);
    expect(said[10]).toBe("[Per bowl, about 350 g]");
    expect(said[11]).toBe("Energy: 2065 kJ / 491 kcal");
  });

  it("puts the portion before 100 g in the US, with daily values", () => {
    const said = readAloud(labelReply({ ...card, style: "us" })).split("\n");
    expect(said.slice(0, 10)).toEqual([
      "Taco bowl: US nutrition label, estimated",
      "[Per bowl, about 350 g]",
      "Calories: 520 kcal",
      "Total Fat: 13 g (17 % Daily Value)",
      "  Saturated Fat: 3 g (15 % Daily Value)",
      "Sodium: 490 mg (21 % Daily Value)",
      "Total Carbohydrate: 60 g (22 % Daily Value)",
      "  Dietary Fiber: 9 g (32 % Daily Value)",
      "  Total Sugars: 8 g",
      "Protein: 39 g",
    ]);
    expect(said[10]).toBe("[Per 100 g, cooked, by its weight]");
  });

  it("says that it is an estimate and no declaration, and by which law it is rounded", () => {
    for (const [style, law] of [
      ["us", "21 CFR 101.9(c)"],
      ["eu", "Regulation (EU) No 1169/2011"],
    ] as const) {
      const said = readAloud(labelReply({ ...card, style }));
      expect(said).toContain("not a declaration");
      expect(said).toContain(law);
    }
  });

  it("names no mass of a portion where none is known", () => {
    expect(readAloud(labelReply({ ...card, portionG: null }))).toContain("\n[Per bowl]\n");
  });
});

describe("a picture on the card", () => {
  const without = [{ name: "cheese", perPortion: timesSums(perPortion, 0.8) }];
  const card: PictureCard = {
    title: "Taco bowl",
    portionWord: "bowl",
    style: "eu",
    figures: { perPortion, without },
    target: null,
  };

  it("is there where something is optional, or the member has a target", () => {
    expect(cardPicture(card)?.alt).toMatch(
      /^Taco bowl\. one bowl, as on the card: .*without cheese/u,
    );
    const target = { proteinG: 150 };
    const alone = cardPicture({ ...card, figures: { perPortion, without: [] }, target });
    expect(alone?.alt).toContain("protein 39 g (26 %)");
  });

  it("shows what was left out as what it would be with it", () => {
    const withAgain = [{ name: "beans", perPortion: timesSums(perPortion, 1.2) }];
    const picture = cardPicture({ ...card, figures: { perPortion, without: [] }, withAgain });
    expect(picture?.alt).toContain("with beans: 620 kcal");
  });

  it("is not there where it would say no more than the rows", () => {
    expect(cardPicture({ ...card, figures: { perPortion, without: [] } })).toBeNull();
    const fibreOnly = { fibreG: 30 };
    const plain = { ...card, figures: { perPortion, without: [] }, target: fibreOnly };
    expect(cardPicture(plain)).toBeNull();
    expect(cardPicture({ ...card, figures: { perPortion: UNMEASURED, without } })).toBeNull();
  });
});
