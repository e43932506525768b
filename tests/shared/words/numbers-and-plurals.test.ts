import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fold, foldWords } from "../../../shared/words/fold.ts";
import { count, plural, singular } from "../../../shared/words/plural.ts";
import { NUMBER_MAX, numberAtStart, readNumber } from "../../../shared/words/read-number.ts";

describe("numbers as people type them", () => {
  test.each([
    ["2", 2, null],
    ["2.5", 2.5, null],
    ["1,5", 1.5, null],
    [".5", 0.5, null],
    ["1/2", 0.5, null],
    ["1 1/2", 1.5, null],
    ["1-1/2", 1.5, null],
    ["½", 0.5, null],
    ["1½", 1.5, null],
    ["2 ¾", 2.75, null],
    ["1,500", 1500, null],
    ["0,125", 0.125, null],
    ["3-4", 3, 4],
    ["3–4", 3, 4],
    ["3 to 4", 3, 4],
    ["1/2-3/4", 0.5, 0.75],
  ])("%s is read", (text, value, to) => {
    expect(readNumber(text)).toEqual({ ok: true, value: { value, to } });
  });

  test.each([
    ["", "no number"],
    ["ten", "not a number"],
    ["2 kg", "not a number"],
    ["10^12", "not a number"],
    ["1e9", "not a number"],
    ["1/0", "divided by zero"],
    ["-3", "number negative"],
    ["−3", "number negative"],
    ["1000000000000", "number too big"],
    ["9".repeat(90), "number too big"],
    ["4-3", "range backwards"],
  ])("%s is refused", (text, code) => {
    const read = readNumber(text);
    expect(read.ok ? null : read.problem.code).toBe(code);
  });

  test("what follows the number is handed back", () => {
    const read = numberAtStart("1½ tbsp oil");
    expect(read.ok && read.value.rest).toBe(" tbsp oil");
  });

  test("no text makes it throw, and what it reads is between zero and the greatest number", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 300 }), (text) => {
        const read = readNumber(text);
        if (!read.ok) return;
        expect(read.value.value).toBeGreaterThanOrEqual(0);
        expect(read.value.to ?? read.value.value).toBeLessThanOrEqual(NUMBER_MAX);
      }),
    );
  });

  test("a plain decimal is read as itself", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999_999 }), (hundredths) => {
        const text = (hundredths / 100).toFixed(2);
        expect(readNumber(text)).toEqual({ ok: true, value: { value: Number(text), to: null } });
      }),
    );
  });
});

describe("folding", () => {
  test("case, accents, ligatures, curly quotes and dashes do not matter", () => {
    expect(fold("  Crème  FRAÎCHE – Jalapeño’s ½ ")).toBe("creme fraiche - jalapeno's 1/2");
    expect(fold("Weißbrot mit Œuf")).toBe("weissbrot mit oeuf");
  });

  test("a fraction glyph stays apart from the digit before it", () => {
    expect(fold("1½ hours, 10² ways")).toBe("1 1/2 hours, 10 2 ways");
  });

  test("for search only letters and digits stay", () => {
    expect(foldWords("Mac 'n' Cheese (4-pack)!")).toBe("mac n cheese 4 pack");
  });

  test("folding twice changes nothing more", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 60 }), (text) => {
        expect(foldWords(foldWords(text))).toBe(foldWords(text));
      }),
    );
  });
});

describe("counting in words", () => {
  test.each([
    [1, "portion", "1 portion"],
    [4, "portion", "4 portions"],
    [0, "portion", "0 portions"],
    [2, "box", "2 boxes"],
    [3, "tray", "3 trays"],
    [2, "patty", "2 patties"],
    [2, "loaf", "2 loaves"],
    [5, "filled wrap", "5 filled wraps"],
    [2, "dish", "2 dishes"],
    [1.5, "hour", "1½ hours"],
    [0.5, "portion", "½ portion"],
    [2.25, "hour", "2.25 hours"],
  ])("%d %s is written %s", (n, word, expected) => {
    expect(count(n, word)).toBe(expected);
  });

  test("the singular takes the plural back", () => {
    for (const word of "portion box tray patty loaf dish wrap leaf tomato half day batch glass pie".split(
      " ",
    )) {
      expect(singular(plural(word))).toBe(word);
    }
    expect(singular("couscous")).toBe("couscous");
  });
});
