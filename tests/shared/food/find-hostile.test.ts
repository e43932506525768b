import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findFood } from "../../../shared/food/find.ts";
import { loadFoodBook } from "../../../src/foods/load.ts";

const book = loadFoodBook();
const found = (text: string) => findFood(book, text).map(({ food, score }) => [food.id, score]);

/** Longer than any name of a food, as the finder says of itself. */
const READ_CHARS = 120;
const HUGE = 100_000;

const piece = fc.oneof(
  fc.string({ minLength: 1, maxLength: 30 }),
  fc.string({ unit: "binary", minLength: 1, maxLength: 30 }),
  fc.constantFrom(
    ..."chicken thigh|brocolli|, or |((((|ground |% fat|9999999|a-a-a-a|\u0000|\ufdfa|e\u0301\u0301\u0301|🥦|ss es ies|'s's's|free free|of of of|in with ".split(
      "|",
    ),
  ),
);

describe("finding a food in a hostile text", () => {
  it("answers any text without a throw, with at most as many foods as asked for", () => {
    fc.assert(
      fc.property(
        fc.array(piece, { maxLength: 12 }),
        fc.integer({ min: 0, max: 7 }),
        (parts, most) => {
          expect(findFood(book, parts.join(""), most).length).toBeLessThanOrEqual(most);
        },
      ),
      { numRuns: 400 },
    );
  });

  it("reads the beginning of a text of 100 kB only, so its length costs nothing", () => {
    fc.assert(
      fc.property(fc.array(piece, { minLength: 1, maxLength: 8 }), (parts) => {
        const unit = parts.join("");
        const text = unit.repeat(Math.ceil(HUGE / unit.length));
        expect(found(text)).toEqual(found(text.slice(0, READ_CHARS)));
      }),
      { numRuns: 100 },
    );
  });

  it("is the same for the same text, whatever was asked before", () => {
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 6 }), (parts) => {
        const before = found("chicken thighs");
        const first = found(parts.join(""));
        expect(found(parts.join(""))).toEqual(first);
        expect(found("chicken thighs")).toEqual(before);
      }),
    );
  });

  it("takes the worst words in a tenth of a second at most", () => {
    // Fourteen unknown words of the greatest length that is compared, on the commonest first letter.
    const word = (i: number) => `s${"tr".repeat(3)}${"i".repeat(i % 2)}x`;
    const text = Array.from({ length: 14 }, (_, i) => word(i)).join(" ");
    findFood(book, text);
    const start = performance.now();
    for (let i = 0; i < 10; i += 1) findFood(book, text);
    expect((performance.now() - start) / 10).toBeLessThan(100);
  });
});
