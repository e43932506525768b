import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { findFood } from "../../../shared/food/find.ts";
import { lettersIn, mayBeNear, slipsBetween } from "../../../shared/food/near-word.ts";
import { loadFoodBook } from "../../../src/foods/load.ts";

const foods = loadFoodBook();
const names = foods.foods.flatMap(({ name, otherNames }) => [name, ...otherNames]);
const anyWord = fc.constantFrom(...names.flatMap((name) => name.split(/[ ,]+/u)));
const cooksWord = fc.constantFrom(
  "fresh",
  "cooked",
  "dried",
  "tinned",
  "low-fat",
  "diced",
  "frozen",
);

describe("the one food asked for", () => {
  test("is the first of the list, although the others are not looked at", () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(anyWord, cooksWord), { minLength: 1, maxLength: 5 }),
        (words) => {
          const text = words.join(" ");
          expect(findFood(foods, text, 1)).toEqual(findFood(foods, text, 6).slice(0, 1));
        },
      ),
      { numRuns: 2000 },
    );
  });

  test("a quick look at the letters never passes over a word that is near enough", () => {
    const anyPair = fc.tuple(
      anyWord,
      fc.array(fc.tuple(fc.nat(30), fc.constantFrom("", "e", "st"))),
    );
    fc.assert(
      fc.property(anyPair, ([said, changes]) => {
        const word = said.toLowerCase().replace(/[^a-z]/gu, "");
        const other = changes.slice(0, 3).reduce((left, [at, put]) => {
          return `${left.slice(0, at)}${put}${left.slice(at + 1)}`;
        }, word);
        for (const most of [1, 2]) {
          const isNear = slipsBetween(word, other, most) !== null;
          const seemsNear = mayBeNear(lettersIn(word), lettersIn(other), most);
          expect(seemsNear || !isNear).toBe(true);
        }
      }),
      { numRuns: 2000 },
    );
    expect(mayBeNear(lettersIn("custard"), lettersIn("biscuit"), 2)).toBe(false);
  });
});
