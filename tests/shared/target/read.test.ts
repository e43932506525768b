import { describe, expect, it } from "vitest";
import { readTargetFigure } from "../../../shared/target/read-figure.ts";
import { readFromDate } from "../../../shared/target/read-from.ts";
import { writeTarget } from "../../../shared/target/write.ts";
import { date } from "../../kit/stock.ts";

const figure = (key: Parameters<typeof readTargetFigure>[0], text: string) => {
  const read = readTargetFigure(key, text);
  return read.ok ? read.value : read.problem.code;
};

describe("a figure as typed", () => {
  it.each([
    ["2100", 2100],
    [" 2,100 KCAL ", 2100],
    ["2 100 kcal", 2100],
    ["2100cal", 2100],
    ["2100 kcal/day", 2100],
    ["2100 kcal a day", 2100],
    ["2100.5", 2100.5],
    ["none", null],
    ["Off", null],
  ])("energy “%s” is %s kcal", (text, kcal) => {
    expect(figure("energyKcal", text)).toBe(kcal);
  });

  it.each([
    ["8368 kJ", 2000],
    ["8,368 kj", 2000],
    ["8.368 MJ", 2000],
  ])("energy “%s” is turned into %d kcal", (text, kcal) => {
    expect(figure("energyKcal", text)).toBeCloseTo(kcal, 6);
  });

  it.each([
    ["120 g", 120],
    ["120g", 120],
    ["62,5 g", 62.5],
    ["120 grams per day", 120],
    ["no", null],
  ])("protein “%s” is %s g", (text, grams) => {
    expect(figure("proteinG", text)).toBe(grams);
  });

  it.each([
    ["energyKcal", "lots", "figure not understood"],
    ["energyKcal", "", "figure not understood"],
    ["energyKcal", "-2100", "figure not understood"],
    ["energyKcal", "2100 g", "figure not understood"],
    ["energyKcal", "2.100,5", "figure not understood"],
    ["energyKcal", "2000-2200", "figure is a range"],
    ["energyKcal", "6001", "figure out of range"],
    ["energyKcal", "8800", "figure out of range"],
    ["proteinG", "30 %", "figure not understood"],
    ["proteinG", "120 kcal", "figure not understood"],
    ["proteinG", "constructor", "figure not understood"],
    ["proteinG", "120 constructor", "figure not understood"],
    ["proteinG", "29.9", "figure out of range"],
    ["proteinG", "401", "figure out of range"],
    ["fatG", "19", "figure out of range"],
    ["carbohydrateG", "1,001", "figure out of range"],
    ["fibreG", "101", "figure out of range"],
    ["fibreG", `${"9".repeat(5000)}`, "figure not understood"],
  ] as const)("%s “%s”: %s", (key, text, code) => {
    expect(figure(key, text)).toBe(code);
  });

  it.each([
    ["proteinG", 30, 400],
    ["fatG", 20, 400],
    ["carbohydrateG", 20, 1000],
    ["fibreG", 5, 100],
  ] as const)("%s may be %d and %d g themselves", (key, min, max) => {
    expect([figure(key, `${min}`), figure(key, `${max}`)]).toEqual([min, max]);
  });
});

describe("the date from which targets hold, said on Wed 25 Nov 2026", () => {
  const today = date("2026-11-25");
  it.each([
    ["today", "2026-11-25"],
    ["tomorrow", "2026-11-26"],
    ["Wed", "2026-11-25"],
    ["next Wed", "2026-12-02"],
    ["Tue", "2026-12-01"],
    ["from Mon", "2026-11-30"],
    ["next week", "2026-11-30"],
    ["1 Dec", "2026-12-01"],
    ["Jan 4", "2027-01-04"],
    ["2027-11-26", "2027-11-26"],
  ])("“%s” is %s", (text, expected) => {
    const read = readFromDate(text, today);
    expect(read.ok ? read.value.toString() : read.problem).toBe(expected);
  });

  it.each([
    ["yesterday", "date has passed"],
    ["24 Nov", "date has passed"],
    ["2027-11-27", "date too far ahead"],
    ["soon", "date not understood"],
    ["31 Feb", "date not understood"],
    ["Mon 18:00", "date not understood"],
  ])("“%s”: %s", (text, code) => {
    const read = readFromDate(text, today);
    expect(read.ok ? read.value.toString() : read.problem.code).toBe(code);
  });
});

describe("figures in a line", () => {
  it("part thousands, carry units and keep to the digits they have", () => {
    expect(writeTarget({ energyKcal: 2103.25, proteinG: 62.5, fibreG: 7.25 })).toBe(
      "2,103 kcal · protein 63 g · fibre 7.3 g",
    );
    expect(writeTarget({ energyKcal: 950 })).toBe("950 kcal");
    expect(writeTarget({})).toBe("no target");
  });
});
