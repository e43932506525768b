import { describe, expect, it } from "vitest";
import type { Food } from "../../shared/food/types.ts";
import { loadFoodBook } from "../../src/foods/load.ts";
import { secondCopy } from "./food-second-copy.ts";

/** NIST Handbook 44 (2023), Appendix C: US liquid measures, millilitres. */
const ML: Readonly<Record<string, number>> = {
  cup: 236.5882365,
  tbsp: 14.78676478125,
  tablespoon: 14.78676478125,
  tsp: 4.92892159375,
  "fl oz": 29.5735295625,
};

const { foods } = loadFoodBook();

function densityOf(text: string, grams: number): number | null {
  const match = /^([\d.]+) (cup|tbsp|tablespoon|tsp|fl oz)s?\b/u.exec(text);
  const ml = ML[match?.[2] ?? ""];
  return match === null || ml === undefined ? null : grams / (Number(match[1]) * ml);
}

function apart(a: number, b: number): number {
  return Math.abs(a / b - 1);
}

/** Foods whose own density is of another of the source's weights than the two that the copy has. */
const OF_ANOTHER_WEIGHT: Readonly<Record<string, string>> = {
  "ground-almonds": "a cup of ground almonds, 95 g; the copy has whole and sliced",
  "cheddar-cheese": "a cup of grated cheese, 113 g; the copy has diced and melted",
  "swiss-cheese": "a cup of grated cheese, 108 g; the copy has diced and melted",
  "cottage-cheese-4-fat": "a cup of small curd, 225 g; the copy has large curd",
  "sweet-pickle-relish": "a cup, 245 g; the copy has the spoon, 2 % less",
  "soy-sauce-reduced-salt":
    "a cup, 255 g; the copy's spoons weigh 11 % less, and more soy sauce than that",
  "barbecue-sauce": "a cup, 279 g; the copy's half cup and spoon lie on either side",
};

/** Heavier than 1.25 g/ml only where sugar or salt makes it so. */
const HEAVY = /syrup|honey|molasses|jam|condensed milk|sriracha/u;

/** Cup and spoon of one food that differ by more than a tenth, as the source has them. */
const UNLIKE_SPOONS: Readonly<Record<string, string>> = {
  "bulgur-wheat-cooked": "cup 182 g, spoon 8.4 g (134 g a cup): packed and loose",
  "dried-onion-flakes": "quarter cup 14 g, spoon 5 g (80 g a cup): heaped spoon",
  "grated-parmesan-cheese": "cup 100 g, spoon 5 g (80 g a cup): packed and loose",
  ketchup: "cup 240 g, spoon 17 g (272 g a cup): two studies; the spoon is used, as recipes do",
  "rosemary-fresh": "teaspoon 0.7 g, spoon 1.7 g: small weights, rounded",
  salsa: "cup 259 g, two spoons 36 g (288 g a cup): heaped spoon",
  "soured-cream": "cup 230 g, spoon 12 g (192 g a cup): an old spoon weight, level",
  "soured-cream-fat-free": "as soured cream",
  "soured-cream-light": "as soured cream",
  "soy-sauce-reduced-salt": "cup 255 g, spoon 14.2 g (227 g a cup): two studies",
  "sweet-whey-powder": "cup 145 g, spoon 7.5 g (120 g a cup): packed and loose",
};

function plainVolumes(food: Food): readonly number[] {
  return food.measures.flatMap(({ name, grams }) => {
    const ml = ML[name];
    return ml === undefined ? [] : [grams / ml];
  });
}

describe("spoon and cup weights of the food table", () => {
  const withDensity = foods.flatMap((food) => {
    return food.densityGPerMl === null ? [] : [{ food, density: food.densityGPerMl }];
  });

  // USDA SR28 (2015), file WEIGHT, by the copy's two household weights.
  it("is a weight of the source's over the volume, but for the foods listed", () => {
    const unlike = withDensity.filter(({ food, density }) => {
      const theirs = secondCopy(food.source.number).weights.flatMap(
        ({ text, grams }) => densityOf(text, grams) ?? [],
      );
      return theirs.length > 0 && theirs.every((one) => apart(one, density) > 0.02);
    });
    expect(unlike.map(({ food }) => food.id).sort()).toEqual(Object.keys(OF_ANOTHER_WEIGHT).sort());
  });

  it("could be checked so for at least 400 foods", () => {
    const checked = withDensity.filter(({ food }) =>
      secondCopy(food.source.number).weights.some(
        ({ text, grams }) => densityOf(text, grams) !== null,
      ),
    );
    expect(checked.length).toBeGreaterThanOrEqual(400);
  });

  it("is heavier than syrupy for nothing but syrup", () => {
    const heavy = withDensity.filter(({ density }) => density > 1.25);
    expect(heavy.map(({ food }) => food.name).filter((name) => !HEAVY.test(name))).toEqual([]);
  });

  it("agrees between the cup and the spoons of a food, but for the foods listed", () => {
    const unlike = foods.filter((food) => {
      const volumes = plainVolumes(food);
      return volumes.length > 1 && Math.max(...volumes) > 1.1 * Math.min(...volumes);
    });
    expect(unlike.map((food) => food.id).sort()).toEqual(Object.keys(UNLIKE_SPOONS).sort());
  });

  it("gives oils the density that standards give them: 0.91 to 0.93 g/ml", () => {
    // Codex Alimentarius, Standard for Named Vegetable Oils (CXS 210-1999), table 2: relative density at
    // 20 °C of rapeseed 0.914 to 0.920, sunflower 0.918 to 0.923, sesame 0.915 to 0.924 (from memory).
    for (const number of ["04582", "04584", "04058", "04053"]) {
      const oil = foods.find((food) => food.source.number === number);
      expect(oil?.densityGPerMl).toBeGreaterThanOrEqual(0.905);
      expect(oil?.densityGPerMl).toBeLessThanOrEqual(0.93);
    }
  });
});
