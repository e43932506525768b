import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findFood } from "../../../shared/food/find.ts";
import { loadFoodBook } from "../../../src/foods/load.ts";

const book = loadFoodBook();
const best = (text: string): string | null => findFood(book, text)[0]?.food.name ?? null;

describe("finding a food by a cook's words", () => {
  it.each([
    ["chicken thighs", "chicken thigh, skinless, raw"],
    ["diced boneless skinless chicken thighs", "chicken thigh, skinless, raw"],
    ["skin-on chicken thighs", "chicken thigh with skin, raw"],
    ["large eggs", "egg, whole, raw"],
    ["red onions, finely sliced", "onion, raw"],
    ["cloves garlic", "garlic, raw"],
    ["cherry tomatoes, halved", "cherry tomatoes, raw"],
    ["extra virgin olive oil", "olive oil"],
    ["freshly ground black pepper", "black pepper"],
  ])("passes over cut, size and handling: %s", (text, name) => {
    expect(best(text)).toBe(name);
  });

  it.each([
    ["courgettes", "zucchini"],
    ["aubergine", "eggplant"],
    ["spring onions", "scallions"],
    ["fresh coriander", "cilantro"],
    ["prawns", "shrimp"],
    ["minced beef", "ground beef"],
    ["natural yoghurt", "plain yogurt"],
    ["red pepper", "red capsicum"],
    ["plain flour", "all-purpose flour"],
    ["cornflour", "cornstarch"],
    ["wholemeal flour", "whole wheat flour"],
    ["soured cream", "sour cream"],
    ["bicarbonate of soda", "baking soda"],
    ["rocket", "arugula"],
    ["beetroot", "beets"],
    ["tinned tuna", "canned tuna"],
  ])("takes %s and %s for the same food", (british, other) => {
    expect(best(british)).not.toBeNull();
    expect(best(other)).toBe(best(british));
  });

  it("takes raw unless the text says cooked", () => {
    expect(best("chicken breast")).toBe("chicken breast, skinless, raw");
    expect(best("cooked chicken breast")).toBe("chicken breast, skinless, grilled, cooked");
    expect(best("quinoa")).toBe("quinoa, dry");
    expect(best("quinoa, cooked")).toBe("quinoa, cooked");
  });

  it("never lets a dried, canned or cooked food stand in for another state that was named", () => {
    expect(best("dried chickpeas")).toBe("chickpeas, dried");
    expect(best("tinned chickpeas, drained")).toBe("chickpeas, canned, drained");
    expect(best("fresh thyme")).toBe("thyme, fresh");
    expect(best("dried mango")).toBeNull();
    expect(best("cooked cornmeal")).toBeNull();
  });

  it("tells a pepper from peppers", () => {
    expect(best("pepper")).toBe("black pepper");
    expect(best("diced peppers")).toBe("red pepper, raw");
  });

  it("takes the nearest fat content that the table has", () => {
    expect(best("5% fat beef mince")).toBe("beef mince, 5 % fat, raw");
    expect(best("90% lean ground beef")).toBe("beef mince, 10 % fat, raw");
    expect(best("85/15 ground beef")).toBe("beef mince, 15 % fat, raw");
    expect(best("beef mince 12% fat")).toBe("beef mince, 10 % fat, raw");
  });

  it.each([
    ["brocolli", "broccoli, raw"],
    ["parmasan", "parmesan cheese"],
    ["spinnach", "spinach, raw"],
    ["tomatos", "tomato, raw"],
    ["courgete", "courgette, raw"],
  ])("reads over a slip: %s", (text, name) => {
    expect(best(text)).toBe(name);
  });

  it.each([
    "chicken nuggets",
    "coconut sugar",
    "custard",
    "sauce",
    "cheese",
    "beans",
    "self-raising flour",
    "smoked mackerel",
    "xylophone",
    "",
    " ,,, ",
    "の",
  ])("finds nothing rather than guess: “%s”", (text) => {
    expect(findFood(book, text)).toEqual([]);
  });

  it("finds every food first by each of its own names", () => {
    for (const food of book.foods) {
      for (const name of [food.name, ...food.otherNames]) {
        expect(findFood(book, name)[0]?.food.id, name).toBe(food.id);
      }
    }
  });

  it("orders by score, from 0.65 to 1, each food once, at most as many as asked for", () => {
    fc.assert(
      fc.property(
        fc.constantFrom("chicken", "milk", "rice", "tomato", "beef mince"),
        fc.integer({ min: 1, max: 4 }),
        (text, limit) => {
          const found = findFood(book, text, limit);
          expect(found.length).toBeGreaterThan(0);
          expect(found.length).toBeLessThanOrEqual(limit);
          expect(new Set(found.map(({ food }) => food.id)).size).toBe(found.length);
          const scores = found.map(({ score }) => score);
          expect(scores).toEqual([...scores].sort((a, b) => b - a));
          expect(Math.min(...scores)).toBeGreaterThanOrEqual(0.65);
          expect(Math.max(...scores)).toBeLessThanOrEqual(1);
        },
      ),
    );
  });

  it("answers any text without a throw", () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ maxLength: 300 }), fc.string({ unit: "binary", maxLength: 300 })),
        (text) => {
          expect(findFood(book, text).length).toBeLessThanOrEqual(5);
        },
      ),
    );
  });

  it("looks at the beginning of a huge text only", () => {
    const found = findFood(book, `chicken thigh ${"abcdefghij ".repeat(200_000)}`);
    expect(found).toEqual([]);
    expect(best(`olive oil,${" ".repeat(1_000_000)}`)).toBe("olive oil");
  });
});
