import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readAmount } from "../../../shared/quantity/read-amount.ts";
import { roundGrams, roundTo } from "../../../shared/quantity/round.ts";
import type { Unit } from "../../../shared/quantity/types.ts";
import { massUnitG, volumeUnitMl } from "../../../shared/quantity/unit.ts";
import { writeAmount } from "../../../shared/quantity/write-amount.ts";

const one = (value: number, unit: Unit, to: number | null = null) => ({ value, to, unit });

describe("amounts as people type them", () => {
  test.each([
    ["900 g chicken", one(900, "g"), "chicken"],
    ["5g salt", one(5, "g"), "salt"],
    ["1,5 kg flour", one(1.5, "kg"), "flour"],
    ["2 lbs. beef", one(2, "lb"), "beef"],
    ["1 lb 8 oz beef", one(1.5, "lb"), "beef"],
    ["2 tbsp 2 tsp cumin", one(2 + 2 / 3, "tbsp"), "cumin"],
    ["1 cup plus 2 tbsp oats", one(1.125, "cup"), "oats"],
    ["1 l 200 ml stock", one(1.2, "l"), "stock"],
    ["2 tbsp 3 tsp cumin", one(2, "tbsp"), "3 tsp cumin"],
    ["2 x 400 g beans", one(800, "g"), "beans"],
    ["1½ tbsp oil", one(1.5, "tbsp"), "oil"],
    ["2 teaspoons cumin", one(2, "tsp"), "cumin"],
    ["2 fl. oz. water", one(2, "fl oz"), "water"],
    ["a pinch of salt", one(1, "pinch"), "of salt"],
    ["half a lemon", one(0.5, "piece"), "lemon"],
    ["one banana", one(1, "piece"), "banana"],
    ["two bananas", one(2, "piece"), "bananas"],
    ["3-4 cloves garlic", one(3, "piece", 4), "cloves garlic"],
    ["2 limes", one(2, "piece"), "limes"],
    ["1 large carrot", one(1, "piece"), "large carrot"],
    ["100 g / 3.5 oz butter", one(100, "g"), "butter"],
    ["2 dl cream", one(2, "dl"), "cream"],
    ["1/2 gallon water", one(0.5, "gallon"), "water"],
    ["about 300 g rice", one(300, "g"), "rice"],
    ["approx. 2 kg legs", one(2, "kg"), "legs"],
    ["1 heaped tsp paprika", one(1, "tsp"), "paprika"],
    ["a good pinch of salt", one(1, "pinch"), "of salt"],
    ["one 400 g tin of beans", one(400, "g"), "tin of beans"],
    ["2 400g tins beans", one(800, "g"), "tins beans"],
    ["1 and a half cups milk", one(1.5, "cup"), "milk"],
    ["2 and 1/4 cups milk", one(2.25, "cup"), "milk"],
    ["a dozen eggs", one(12, "piece"), "eggs"],
    ["half a dozen eggs", one(6, "piece"), "eggs"],
    ["quarter of a cup oil", one(0.25, "cup"), "oil"],
    // "T" and "t" differ by a factor of three and one slip of the shift key.
    ["1 T oil", one(1, "piece"), "T oil"],
    ["1 t salt", one(1, "piece"), "t salt"],
  ])("%s is read", (text, amount, rest) => {
    expect(readAmount(text)).toEqual({ ok: true, value: { amount, stated: null, rest } });
  });

  test("a measure in brackets wins over cups and cans", () => {
    const cups = readAmount("1 1/2 cups (360 ml) milk");
    expect(cups.ok && cups.value.amount).toEqual(one(360, "ml"));
    const cans = readAmount("2 cans (400 g each) beans");
    expect(cans.ok && cans.value).toEqual({
      amount: one(800, "g"),
      stated: null,
      rest: "canned beans",
    });
    const before = readAmount("2 (400 g) cans beans");
    expect(before.ok && before.value.amount).toEqual(one(800, "g"));
  });

  test.each([
    ["1 stick butter (113 g), melted", one(113, "g"), "butter, melted"],
    ["1 head of broccoli (about 350 g)", one(350, "g"), "broccoli"],
    ["1 large tin (800 g) tomatoes", one(800, "g"), "canned tomatoes"],
  ])("%s is the weight of it", (text, amount, rest) => {
    expect(readAmount(text)).toEqual({ ok: true, value: { amount, stated: null, rest } });
  });

  test.each([
    "4 fillets, about 140 g each",
    "4 fillets (each 140 g)",
    "4 fillets weighing 140 g each",
  ])("%s weigh 560 g", (text) => {
    const read = readAmount(text);
    expect(read.ok && read.value).toEqual({
      amount: one(4, "piece"),
      stated: one(560, "g"),
      rest: "fillets",
    });
  });

  test.each(["5 cm piece of ginger", "2-inch sticks", "5% fat yoghurt"])(
    "%s starts with no amount",
    (text) => {
      expect(readAmount(text).ok).toBe(false);
    },
  );

  test("a decilitre is a tenth of a litre, a gallon four quarts", () => {
    expect(volumeUnitMl("dl", "us")).toBe(100);
    expect(volumeUnitMl("gallon", "us")).toBeCloseTo(4 * (volumeUnitMl("quart", "us") ?? 0), 9);
    expect(writeAmount(one(2, "dl"))).toBe("200 ml");
    expect(writeAmount(one(2, "gallon"))).toBe("2 gallons");
    expect(writeAmount(one(0.25, "gallon"))).toBe("1 quart");
  });

  test("a weight in brackets beside pieces is kept, and the pieces stay pieces", () => {
    const egg = readAmount("1 large egg (50 g)");
    expect(egg.ok && egg.value).toEqual({
      amount: one(1, "piece"),
      stated: one(50, "g"),
      rest: "large egg",
    });
    const eggs = readAmount("3 eggs (50 g each)");
    expect(eggs.ok && eggs.value.stated).toEqual(one(150, "g"));
    const juice = readAmount("1 lemon (juice only)");
    expect(juice.ok && juice.value.stated).toBeNull();
  });

  test.each([
    ["", "no number"],
    ["salt", "not a number"],
    ["a little oil", "not a number"],
    ["5% fat yoghurt", "not a number"],
    ["-5 g salt", "number negative"],
    ["0 g salt", "amount is zero"],
    ["1/0 g salt", "divided by zero"],
    ["2000 kg rice", "amount too big"],
    ["99999999 g rice", "number too big"],
    ["100000 x 5000 kg rice", "amount too big"],
  ])("%s is refused", (text, code) => {
    const read = readAmount(text);
    expect(read.ok ? null : read.problem.code).toBe(code);
  });

  test("no text makes it throw, and what it reads is above zero and finite", () => {
    const pieces = fc.constantFrom(
      "1",
      "½",
      "/",
      " ",
      "g",
      "lb",
      "oz",
      "x",
      "(",
      ")",
      "each",
      "-",
      ",",
      "cup",
      "a",
      "half",
    );
    const texts = fc.oneof(
      fc.string({ unit: "grapheme", maxLength: 200 }),
      fc.array(pieces, { maxLength: 30 }).map((some) => some.join("")),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const read = readAmount(text);
        if (!read.ok) return;
        expect(read.value.amount.value).toBeGreaterThan(0);
        expect(Number.isFinite(read.value.amount.to ?? read.value.amount.value)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});

describe("written amounts", () => {
  test.each([
    [one(340.4, "g"), "340 g"],
    [one(9.7, "g"), "9.5 g"],
    [one(9.8, "g"), "10 g"],
    [one(7.3, "g"), "7.5 g"],
    [one(0.1, "g"), "100 mg"],
    [one(1200, "g"), "1.2 kg"],
    [one(1133.3, "g"), "1133 g"],
    [one(1.25, "kg"), "1.25 kg"],
    [one(0.3, "kg"), "300 g"],
    [one(24, "oz"), "1 lb 8 oz"],
    [one(3.4, "oz"), "3½ oz"],
    [one(1500, "ml"), "1.5 l"],
    [one(1.55, "tsp"), "1½ tsp"],
    [one(0.13, "tsp"), "⅛ tsp"],
    [one(0.02, "tsp"), "a pinch"],
    [one(0.25, "tbsp"), "¾ tsp"],
    [one(0.125, "cup"), "2 tbsp"],
    [one(2.5, "cup"), "2½ cups"],
    [one(2.7, "piece"), "3"],
    [one(0.5, "piece"), "½"],
    [one(3, "piece", 4), "3–4"],
    [one(200, "g", 250), "200–250 g"],
    [one(2.2, "pinch"), "2 pinches"],
  ])("%j is written %s", (amount, text) => {
    expect(writeAmount(amount)).toBe(text);
  });

  test("what is written is read back as the same mass or volume, to the fineness of the tool", () => {
    const units = fc.constantFrom<Unit>(
      "g",
      "kg",
      "oz",
      "lb",
      "ml",
      "l",
      "tsp",
      "tbsp",
      "cup",
      "fl oz",
    );
    fc.assert(
      fc.property(units, fc.double({ min: 0.3, max: 90, noNaN: true }), (unit, value) => {
        const read = readAmount(writeAmount(one(value, unit)));
        expect(read.ok).toBe(true);
        if (!read.ok) return;
        expect(read.value.rest).toBe("");
        const size = (of: Unit) => massUnitG(of) ?? volumeUnitMl(of, "us") ?? 0;
        const off = Math.abs(
          read.value.amount.value * size(read.value.amount.unit) - value * size(unit),
        );
        const tools: Partial<Record<Unit, number>> = {
          g: 0.5,
          kg: 0.5,
          oz: 3.6,
          lb: 3.6,
          ml: 0.5,
          l: 0.5,
        };
        // An eighth of the spoon itself, and of a tablespoon where cups were small.
        expect(off).toBeLessThanOrEqual((tools[unit] ?? size(unit) / 8) + 1e-6);
      }),
      { numRuns: 500 },
    );
  });
});

describe("rounding", () => {
  test("halves go away from zero, and binary fractions do not spoil it", () => {
    expect([roundTo(1.005, 0.01), roundTo(2.5, 1), roundTo(-2.5, 1), roundTo(0.15, 0.1)]).toEqual([
      1.01, 3, -3, 0.2,
    ]);
  });

  test("whole grams from ten up, half grams below", () => {
    expect([roundGrams(9.74), roundGrams(9.76), roundGrams(10.4), roundGrams(0.2)]).toEqual([
      9.5, 10, 10, 0,
    ]);
  });
});
