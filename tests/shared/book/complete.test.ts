import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { completeFoods, completeRecipes } from "../../../shared/book/complete.ts";
import { anyText } from "../../kit/any-text.ts";
import { bookOf, pot } from "./kit.ts";

const BOOK = bookOf([
  pot("Purée of peas", "400 g peas", "100 g potatoes"),
  pot("Green pea soup", "400 g peas"),
  pot("Chickpea curry", "400 g chickpeas, drained"),
  pot("Peach crumble", "400 g peaches"),
  `${pot("Baked oats", "200 g rolled oats")}\nTags: peaceful`,
  pot("Spearmint cooler", "300 g cucumber"),
  pot("Сырники", "200 g quark"),
]);

const complete = (typed: string, limit = 25) =>
  completeRecipes(BOOK, typed, limit).map(({ title }) => title);

describe("completing a recipe", () => {
  it("offers beginnings of titles, then of words, then tags and foods, then middles", () => {
    expect(complete("pea")).toEqual([
      "Peach crumble",
      "Green pea soup",
      "Purée of peas",
      // "Chick peas" is a name of its food.
      "Chickpea curry",
      "Baked oats",
      "Spearmint cooler",
    ]);
  });

  it("folds case and accents, and takes words in any order", () => {
    expect(complete("PUREE")).toEqual(["Purée of peas"]);
    expect(complete("soup gre")).toEqual(["Green pea soup"]);
    expect(complete("сыр")).toEqual(["Сырники"]);
  });

  it("offers the nearest for a slip, also in a word that is not finished", () => {
    expect(complete("crumbel")).toEqual(["Peach crumble"]);
    expect(complete("chikpe")).toEqual(["Chickpea curry"]);
  });

  it("offers all by title for nothing typed, at most as many as asked", () => {
    expect(complete("", 2)).toEqual(["Baked oats", "Chickpea curry"]);
    expect(complete("")).toHaveLength(7);
  });

  it("never throws, never offers more than asked or one twice, whatever is typed", () => {
    fc.assert(
      fc.property(anyText, fc.integer({ min: 0, max: 5 }), (typed, limit) => {
        const offered = complete(typed, limit);
        expect(offered.length).toBeLessThanOrEqual(limit);
        expect(new Set(offered).size).toBe(offered.length);
      }),
    );
  });

  it("offers every recipe for the beginning of every word of its title", () => {
    for (const { title } of BOOK.entries) {
      for (const word of title.split(" ")) expect(complete(word.slice(0, 3))).toContain(title);
    }
  });
});

describe("completing a food", () => {
  it("offers foods of the recipes, those of most recipes first", () => {
    expect(completeFoods(BOOK, "p", 25)).toEqual(["peas", "peaches", "potatoes"]);
  });
});
