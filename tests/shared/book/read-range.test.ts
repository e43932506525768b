import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readEnergyRange, readProteinRange } from "../../../shared/book/read-range.ts";
import { anyText } from "../../kit/any-text.ts";

const read = (range: ReturnType<typeof readEnergyRange>) =>
  range.ok ? [range.value.from, range.value.to] : range.problem.code;

describe("a range of energy", () => {
  it.each([
    ["400-600", 400, 600],
    ["400 to 600 kcal", 400, 600],
    ["400 kcal – 600 kcal", 400, 600],
    ["between 400 and 600", 400, 600],
    ["under 500", null, 500],
    ["at most 500 kcal a portion", null, 500],
    ["< 500", null, 500],
    ["500 or less", null, 500],
    ["max. 500", null, 500],
    ["at least 300", 300, null],
    ["over 300", 300, null],
    ["300+", 300, null],
    ["≥300", 300, null],
    ["1,000-1,200", 1000, 1200],
  ])("reads %s", (typed, from, to) => {
    expect(read(readEnergyRange(typed))).toEqual([from, to]);
  });

  it("reads kilojoules: 4.184 to the kilocalorie (NIST SP 811, 2008, Appendix B.8)", () => {
    expect(read(readEnergyRange("under 2092 kJ"))).toEqual([null, 500]);
    expect(read(readEnergyRange("1673.6-2510.4 kJ"))).toEqual([400, 600]);
  });

  it.each([
    ["500", "range needs a side"],
    ["600-400", "range backwards"],
    ["", "range not understood"],
    ["lots", "range not understood"],
    ["under", "range not understood"],
    ["under 400-600", "range not understood"],
    ["-5", "range not understood"],
    ["1/0", "range not understood"],
    ["400-500-600", "range not understood"],
    ["30 g", "range not understood"],
    ["9".repeat(50), "range not understood"],
  ])("does not guess at %s", (typed, code) => {
    expect(read(readEnergyRange(typed))).toBe(code);
  });
});

describe("a range of protein", () => {
  it.each([
    ["at least 30", 30, null],
    ["30", 30, null],
    ["30 g protein", 30, null],
    ["30-45 g", 30, 45],
    ["under 20", null, 20],
  ])("reads %s", (typed, from, to) => {
    expect(read(readProteinRange(typed))).toEqual([from, to]);
  });
});

describe("any range", () => {
  it("never throws, and what it reads has a side and runs upwards", () => {
    fc.assert(
      fc.property(anyText, (typed) => {
        const range = readEnergyRange(typed);
        if (!range.ok) return;
        const { from, to } = range.value;
        expect(from ?? to).not.toBeNull();
        expect(from ?? 0).toBeLessThanOrEqual(to ?? Number.POSITIVE_INFINITY);
      }),
    );
  });
});
