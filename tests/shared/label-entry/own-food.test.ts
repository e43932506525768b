import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Food } from "../../../shared/food/types.ts";
import { foodId } from "../../../shared/ids.ts";
import { isEuLabel, ownFood, roundingPer100g } from "../../../shared/label-entry/own-food.ts";
import type { TypedLabel } from "../../../shared/label-entry/read-label.ts";
import { LIKE, labelOf } from "./typed.ts";

const like: Food = {
  id: foodId("crispbread-rye"),
  name: "crispbread, rye",
  otherNames: [],
  source: { table: "USDA SR28", number: "18217" },
  state: "ready",
  per100g: LIKE,
  waterG: 6,
  alcoholG: 0,
  densityGPerMl: 0.5,
  one: null,
  measures: [],
  refusePct: 3,
  allergens: ["gluten"],
  mayHide: ["sesame"],
  keepingClass: "bread",
};
const foodOf = (change: Partial<TypedLabel> = {}, style: "us" | "eu" = "eu") =>
  ownFood(foodId("own-1"), "Test bread", labelOf(change, style), like);

describe("the food of a label", () => {
  it("holds EU carbohydrate with the fibre in it, as the food table does", () => {
    expect(foodOf().per100g).toEqual({
      energyKcal: 344,
      proteinG: 9.5,
      fatG: 1.7,
      saturatedFatG: 0.3,
      carbohydrateG: 80,
      fibreG: 16,
      sugarsG: 1.2,
      sodiumMg: 480,
    });
    expect(foodOf({ carbohydrate: "80 g" }, "us").per100g.carbohydrateG).toBe(80);
  });

  it("keeps EU carbohydrate as it is and fibre missing where the label gives none", () => {
    const food = foodOf({ fibre: undefined });
    expect(food.per100g.carbohydrateG).toBe(64);
    expect(food.per100g.fibreG).toBeNull();
    expect(isEuLabel(food)).toBe(true);
    expect(isEuLabel(foodOf({}, "us"))).toBe(false);
  });

  it("turns kJ alone into kcal", () => {
    expect(foodOf({ energy: "1448 kJ" }).per100g.energyKcal).toBeCloseTo(346.08, 2);
  });

  it("takes state and keeping from its like, and nothing else that the pack does not say", () => {
    const food = foodOf();
    expect(food).toMatchObject({ state: "ready", keepingClass: "bread", waterG: null });
    expect(food).toMatchObject({ densityGPerMl: null, one: null, refusePct: 0, measures: [] });
  });

  it("does not know allergens that nobody read, and warns of what its like has", () => {
    expect(foodOf()).toMatchObject({ allergens: null, mayHide: ["gluten", "sesame"] });
  });

  it("takes allergens as typed, and what it may hide from its like only where nothing is typed", () => {
    expect(foodOf({ allergens: "none" })).toMatchObject({ allergens: [], mayHide: ["sesame"] });
    expect(foodOf({ allergens: "sesame" }).mayHide).toEqual([]);
    expect(foodOf({ allergens: "rye", mayHide: "milk" }).mayHide).toEqual(["milk"]);
    expect(foodOf({ allergens: "rye", mayHide: "none" }).mayHide).toEqual([]);
  });

  it("counts “less than” as half", () => {
    expect(foodOf({ sugars: "<0.5 g" }).per100g.sugarsG).toBe(0.25);
  });

  it("never has more than 100 g of anything in 100 g", () => {
    const oil = foodOf({
      per: "1 tbsp (14 g)",
      energy: "130 kcal",
      fat: "14.4 g",
      protein: "0",
      carbohydrate: "0",
      fibre: "0",
      sugars: "0",
    });
    expect(oil.per100g.fatG).toBe(100);
  });

  it("is the same per serving of any size as per 100 g, but for the two decimals that are kept", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 400 }),
        fc.constantFrom("us", "eu"),
        (servingG, style) => {
          const part = (per100g: number) => ((per100g * servingG) / 100).toFixed(4);
          const served = foodOf(
            {
              per: `serving ${servingG} g`,
              energy: `${part(344)} kcal`,
              protein: part(9.5),
              fat: part(1.7),
              saturates: part(0.3),
              carbohydrate: part(64),
              fibre: part(16),
              sugars: part(1.2),
              salt: part(1.2),
            },
            style === "us" ? "us" : "eu",
          ).per100g;
          const whole = foodOf({}, style === "us" ? "us" : "eu").per100g;
          expect(served.carbohydrateG).toBeCloseTo(whole.carbohydrateG ?? -1, 1);
          expect(served.energyKcal).toBeCloseTo(whole.energyKcal ?? -1, 1);
          expect(served.sodiumMg).toBeCloseTo(whole.sodiumMg ?? -1, 0);
        },
      ),
    );
  });

  it("turns a label by volume by its density", () => {
    const drink = foodOf({
      per: "100 ml",
      density: "0.5 g/ml",
      protein: "1",
      fat: "1",
      carbohydrate: "2",
      fibre: "0",
      energy: "21 kcal",
    });
    expect(drink.per100g.proteinG).toBe(2);
    expect(drink.densityGPerMl).toBe(0.5);
  });

  it("says how far a small serving may be off", () => {
    expect(roundingPer100g(labelOf())).toBe(0);
    const small = labelOf(
      { per: "serving 10 g", protein: "1", fat: "0", carbohydrate: "7", fibre: "1", sugars: "0" },
      "us",
    );
    expect(roundingPer100g(small)).toBeCloseTo(5, 9);
  });
});
