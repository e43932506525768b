import { describe, expect, test } from "vitest";
import { readRecipe } from "../../../shared/recipe/read.ts";
import type { Line } from "../../../shared/recipe/types.ts";
import { loadFoodBook } from "../../../src/foods/load.ts";

const FOODS = loadFoodBook();

function linesOf(text: string): readonly Line[] {
  const outcome = readRecipe(`Test\nMakes 1 portion\n\nIngredients\n${text}`, FOODS);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
  return outcome.value.recipe.components[0]?.lines ?? [];
}

/** "600 g, chicken thigh, skinless, raw": grams to one place, and the entry of the table. */
function reading(text: string): readonly string[] {
  return linesOf(text).map(({ main: { grams, foodId } }) => {
    const food = foodId === null ? "no food" : FOODS.byId(foodId)?.name;
    return `${grams === null ? "?" : Math.round(grams * 10) / 10} g ${food}`;
  });
}

// Grams from the published spoon, cup and piece weights of the food table, worked out by hand.
describe("lines as people write them give grams and a food", () => {
  test.each([
    ["600g boneless skinless thighs, diced", ["600 g chicken thigh, skinless, raw"]],
    ["2 x 400 g tins chopped tomatoes, drained", ["800 g tomatoes, canned, no salt"]],
    ["1 1/2 cups (360 ml) stock", ["378.9 g chicken stock, ready to use"]],
    ["½ tsp salt", ["3 g salt, table"]],
    ["a pinch of salt", ["0.4 g salt, table"]],
    ["3–4 garlic cloves", ["10.5 g garlic, raw"]],
    ["1 large egg (50 g)", ["50 g egg, whole, raw"]],
    ["salt & pepper to taste", ["? g salt, table", "? g black pepper"]],
    ["1 lb 8 oz carrots", ["680.4 g carrot, raw"]],
    ["1 cup rice, uncooked", ["185 g white rice, long-grain, dry"]],
    ["200 g cooked rice", ["200 g white rice, long-grain, cooked"]],
    ["butter or oil, 10 g", ["10 g butter, salted"]],
    ["1¼ kg potatoes", ["1250 g potato, raw"]],
    ["0,5 kg courgettes", ["500 g courgette, raw"]],
    ["350 g (12 oz) chestnut mushrooms", ["350 g chestnut mushrooms, raw"]],
    ["12 oz (350 g) chestnut mushrooms", ["340.2 g chestnut mushrooms, raw"]],
  ])("%s", (text, expected) => {
    expect(reading(text)).toEqual(expected);
  });
});

describe("what stands beside the food does not lead to another one", () => {
  test.each([
    ["150 g reduced-fat mature cheddar", "150 g cheddar cheese, reduced-fat"],
    ["100 g extra mature vintage cheddar", "100 g cheddar cheese"],
    ["1 can (400 g) low-sodium black beans", "400 g black beans, boiled, cooked"],
    ["500 ml no-added-salt chicken stock", "507.2 g chicken stock, reduced-salt, ready to use"],
    ["1 tin (200 g) tuna in olive oil, drained", "200 g tuna, canned in oil, drained"],
    ["2 x 400 g cans chickpeas in water, drained", "800 g chickpeas, canned, drained"],
    ["200 g pineapple chunks in juice", "200 g pineapple, canned in juice"],
    ["200 g hot-smoked salmon", "200 g smoked salmon"],
    ["250 g cold-water prawns", "250 g prawns, peeled, raw"],
    ["zest and juice of 2 limes", "88 g lime juice"],
    ["600 ml vegetable stock made from 1 cube", "560.5 g vegetable stock, ready to use"],
    ["1 cube vegetable stock", "? g no food"],
    ["2 nests medium egg noodles (120 g)", "120 g egg noodles, dry"],
    ["250 g microwave brown rice", "250 g brown rice, long-grain, cooked"],
    ["1 kg chicken thighs, skin on and bone in", "1000 g chicken thigh with skin, raw"],
    ["200 g Greek yoghurt (0,5 % fat)", "200 g Greek yoghurt, plain, fat-free, 0 % fat"],
    ["200 g Greek yoghurt, 2,5 % fat", "200 g Greek yoghurt, plain, low-fat, 2 % fat"],
    ["2 ears corn", "? g corn on the cob, raw"],
    ["500 g King Edward potatoes", "500 g floury potato, raw"],
  ])("%s", (text, expected) => {
    expect(reading(text)[0]).toBe(expected);
  });

  test("a state behind the comma decides, and without one in that state there is none", () => {
    expect(reading("2 g rosemary, dried")).toEqual(["2 g rosemary, dried"]);
    expect(reading("2 g rosemary, fresh")).toEqual(["2 g rosemary, fresh"]);
    expect(reading("50 g mango, dried")).toEqual(["50 g no food"]);
    expect(reading("100 g peaches, tinned")).toEqual(["100 g no food"]);
  });
});

describe("amounts in other places", () => {
  test.each([
    ["1 15-oz can pinto beans", "425.2 g pinto beans, canned, drained"],
    ["a 400-g tin of chopped tomatoes", "400 g tomatoes, canned, no salt"],
    ["1 overripe banana (120 g peeled)", "120 g banana, raw"],
    ["1 head of cauliflower (600 g florets)", "600 g cauliflower, raw"],
    ["2 scoops whey protein powder, 60 g", "60 g whey protein powder"],
    ["1 onion, about 150 g", "150 g onion, raw"],
    ["1 pot (150 g) low-fat yoghurt", "150 g yoghurt, plain, low-fat"],
    ["1 dsp cornflour", "5.3 g cornflour"],
    ["2 heaped dessertspoons honey", "28.3 g honey"],
  ])("%s", (text, expected) => {
    expect(reading(text)).toEqual([expected]);
  });

  test("a cooked weight in brackets is not what goes in", () => {
    expect(reading("1 cup quinoa (185 g cooked)")).toEqual(["170 g quinoa, dry"]);
  });

  test("what is done to some of it is no weight", () => {
    expect(reading("3 garlic cloves, 1 crushed")).toEqual(["9 g garlic, raw"]);
    expect(linesOf("3 garlic cloves, 1 crushed")[0]?.main.preparation).toBe("1 crushed");
  });
});

describe("one line, two foods", () => {
  test("peppers of two colours are two lines", () => {
    expect(linesOf("1 red and 2 yellow peppers, sliced")).toMatchObject([
      { main: { amount: { value: 1 }, foodText: "red peppers", preparation: "sliced" } },
      { main: { amount: { value: 2 }, foodText: "yellow peppers", preparation: "sliced" } },
    ]);
  });

  test("fresh or dried, each in its amount: the swap names the food of both", () => {
    expect(linesOf("1 tbsp fresh or 1 tsp dried thyme")).toMatchObject([
      {
        main: { amount: { value: 1, unit: "tbsp" }, foodText: "fresh thyme" },
        swaps: [{ amount: { value: 1, unit: "tsp" }, foodText: "dried thyme" }],
      },
    ]);
  });

  test.each(["Optional: 20 g pine nuts", "20 g pine nuts (optional)", "20 g pine nuts, optional"])(
    "%s may be left out",
    (text) => {
      expect(linesOf(text)).toMatchObject([
        { optional: true, main: { grams: 20, foodText: "pine nuts" } },
      ]);
    },
  );

  test("what is optional in a swap makes the line optional, on one line or two", () => {
    for (const text of [
      "20 g oil or 15 g butter (optional)",
      "20 g oil\n  or 15 g butter (optional)",
    ]) {
      expect(linesOf(text)).toMatchObject([
        { optional: true, swaps: [{ foodText: "butter", preparation: "", grams: 15 }] },
      ]);
    }
  });
});
