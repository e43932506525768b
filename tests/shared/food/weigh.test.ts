import { describe, expect, it } from "vitest";
import { findFood } from "../../../shared/food/find.ts";
import type { Food } from "../../../shared/food/types.ts";
import { asBoughtG, edibleG, weigh } from "../../../shared/food/weigh.ts";
import type { Amount, Unit } from "../../../shared/quantity/types.ts";
import { loadFoodBook } from "../../../src/foods/load.ts";

const book = loadFoodBook();
const amount = (value: number, unit: Unit, to: number | null = null): Amount => ({
  value,
  to,
  unit,
});

function food(text: string): Food {
  const found = findFood(book, text)[0]?.food;
  if (found === undefined) throw new Error(`no food for ${text}`);
  return found;
}

describe("weighing an amount", () => {
  it("weighs a mass without knowing the food", () => {
    expect(weigh(amount(2, "kg"), null, "us")).toBe(2000);
    expect(weigh(amount(1, "lb"), null, "metric")).toBeCloseTo(453.59237, 8);
  });

  it("weighs a volume by the food's density and the spoon set", () => {
    expect(weigh(amount(1, "cup"), food("plain flour"), "us")).toBeCloseTo(125, 0);
    expect(weigh(amount(1, "tbsp"), food("olive oil"), "metric")).toBeCloseTo(13.7, 1);
    expect(weigh(amount(250, "ml"), food("water"), "us")).toBe(250);
  });

  it("weighs a count by the weight of one", () => {
    expect(weigh(amount(3, "piece"), food("egg"), "us")).toBe(150);
    expect(weigh(amount(2, "piece"), food("garlic"), "us")).toBe(6);
  });

  it("takes the middle of a range", () => {
    expect(weigh(amount(3, "piece", 4), food("garlic"), "us")).toBe(10.5);
  });

  it("gives null where the food, its density or the weight of one is not known", () => {
    expect(weigh(amount(1, "cup"), null, "us")).toBeNull();
    expect(weigh(amount(1, "cup"), food("chicken thigh"), "us")).toBeNull();
    expect(weigh(amount(1, "piece"), food("olive oil"), "us")).toBeNull();
  });

  it("weighs a pinch of seasonings only", () => {
    expect(weigh(amount(1, "pinch"), food("salt"), "metric")).toBeCloseTo(0.375, 3);
    expect(weigh(amount(1, "pinch"), food("chicken thigh"), "metric")).toBeNull();
    expect(weigh(amount(1, "pinch"), food("broccoli"), "metric")).toBeNull();
    expect(weigh(amount(1, "pinch"), null, "metric")).toBeNull();
  });

  it("gives null for a count that is none", () => {
    expect(weigh(amount(Number.NaN, "g"), null, "us")).toBeNull();
    expect(weigh(amount(-1, "g"), null, "us")).toBeNull();
  });
});

describe("sizes", () => {
  const egg = food("egg");
  const onion = food("onion");

  it("weighs a large, medium or small one by the published measure", () => {
    expect(weigh(amount(2, "piece"), onion, "us", "large")).toBe(300);
    expect(weigh(amount(1, "piece"), onion, "us", "medium")).toBe(110);
    expect(weigh(amount(1, "piece"), onion, "us", "small")).toBe(70);
    expect(weigh(amount(1, "piece"), egg, "us", "extra large")).toBe(56);
    expect(weigh(amount(1, "piece"), egg, "us", "large")).toBe(50);
  });

  it("never takes a large slice for a large onion", () => {
    const slices = { ...onion, measures: [{ name: 'slice, large (1/4" thick)', grams: 38 }] };
    expect(weigh(amount(1, "piece"), slices, "us", "large")).toBe(110);
  });

  it("falls back to the one that the table has", () => {
    expect(weigh(amount(1, "piece"), { ...onion, measures: [] }, "us", "large")).toBe(110);
    expect(weigh(amount(1, "piece"), onion, "us")).toBe(110);
  });
});

describe("refuse", () => {
  const broccoli = food("broccoli");

  it("turns what is bought into what is eaten and back", () => {
    // USDA SR28 11090: 39 % is stalks and leaves.
    expect(edibleG(broccoli, 1000)).toBeCloseTo(610, 9);
    expect(asBoughtG(broccoli, 610)).toBeCloseTo(1000, 9);
    expect(asBoughtG({ ...broccoli, refusePct: 0 }, 610)).toBe(610);
  });
});
