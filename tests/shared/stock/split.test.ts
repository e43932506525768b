import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { portionsInSplit, readSplit, splitOf } from "../../../shared/stock/split.ts";
import { writeHalves } from "../../../shared/words/halves.ts";

const read = (text: string) => {
  const done = readSplit(text);
  return done.ok
    ? done.value.map(({ portions, place }) => `${portions ?? "rest"} ${place}`).join(", ")
    : done.problem.code;
};

describe("reading where a batch went", () => {
  it.each([
    ["3 fridge, 5 freezer", "3 fridge, 5 freezer"],
    ["3 in the fridge, 5 in the freezer", "3 fridge, 5 freezer"],
    ["2 x 2 fridge, 4 freezer", "4 fridge, 4 freezer"],
    ["2×2 fridge; 2 boxes of 3 freezer", "4 fridge, 6 freezer"],
    ["3 Fridge and 5 FROZEN", "3 fridge, 5 freezer"],
    ["1 and a half eaten and rest freezer", "1.5 eaten, rest freezer"],
    ["1,5 eaten,2 fridge", "1.5 eaten, 2 fridge"],
    ["½ ate + 1½ fridge + the rest frozen", "0.5 eaten, 1.5 fridge, rest freezer"],
    ["all freezer", "rest freezer"],
    ["4 portions straight into the freezer", "4 freezer"],
    ["2 boxes fridge", "2 fridge"],
  ])("“%s” is %s", (text, parts) => {
    expect(read(text)).toBe(parts);
  });
  it.each([
    ["", "split unclear"],
    ["3", "split unclear"],
    ["fridge", "split unclear"],
    ["3 cupboard", "split unclear"],
    ["0 fridge", "split unclear"],
    ["-3 fridge", "split unclear"],
    ["0.3 fridge", "split unclear"],
    ["1½ x 2 fridge", "split unclear"],
    ["3-4 fridge", "split unclear"],
    ["3 fridge 5 freezer", "split unclear"],
    ["rest fridge, rest freezer", "split has two rests"],
  ])("“%s” is refused", (text, code) => {
    expect(read(text)).toBe(code);
  });
  it("reads back whatever is written of it, and adds up to it", () => {
    const part = fc.record({
      portions: fc.integer({ min: 1, max: 40 }).map((halves) => halves / 2),
      place: fc.constantFrom("fridge", "freezer", "eaten"),
    } as const);
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 6 }), (parts) => {
        const text = parts
          .map(({ portions, place }) => `${writeHalves(portions)} ${place}`)
          .join(", ");
        expect(readSplit(text)).toEqual({ ok: true, value: parts });
        const sum = parts.reduce((total, { portions }) => total + portions, 0);
        expect(portionsInSplit(parts)).toBe(sum);
        expect(splitOf(parts, sum).ok).toBe(true);
        expect(splitOf(parts, sum + 1)).toMatchObject({
          problem: { code: "split is another number" },
        });
      }),
    );
  });
  it("answers any text in bounded time", () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 400 }), (text) => {
        expect(readSplit(text)).toHaveProperty("ok");
      }),
    );
    expect(read("1 x".repeat(5000))).toBe("split unclear");
  });
});
