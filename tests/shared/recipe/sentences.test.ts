import { describe, expect, test } from "vitest";
import { readKeeping } from "../../../shared/recipe/read-keeping.ts";
import { readStep } from "../../../shared/recipe/read-step.ts";

describe("sentences about keeping", () => {
  test.each([
    ["Keeps 3 days in the fridge", "", 3, null, null],
    ["Keeps up to one week", "", 7, null, null],
    ["Keeps 2-3 days", "", 2, null, null],
    ["Keeps for 36 hours", "", 1, null, null],
    ["Eat the same day", "", 0, null, null],
    ["Freezes 3 months", "", null, 3, "well"],
    ["Freezes up to 6 weeks", "", null, 1, "well"],
    ["Freezes badly: it weeps, and cucumber goes limp", "", null, null, "poorly"],
    ["Do not freeze", "", null, null, "no"],
    ["Keeps 3 days chilled and 3 months frozen", "", 3, 3, "well"],
    ["Up to one week in the fridge", "", 7, null, null],
    ["3 days chilled", "", 3, null, null],
    ["will keep for 3–4 days refrigerated", "", 3, null, null],
    ["Store in an airtight box in the fridge for up to 4 days", "", 4, null, null],
    ["Refrigerate for up to 3 days.", "", 3, null, null],
    ["Best eaten within 2 days", "", 2, null, null],
    ["Freeze for up to 2 months", "", null, 2, "well"],
    ["Can be frozen for up to 3 months", "", null, 3, "well"],
    ["Suitable for freezing", "", null, null, "well"],
    ["Not suitable for home freezing", "", null, null, "no"],
    ["Keeps in the fridge for 3 days, in the freezer for 2 months", "", 3, 2, "well"],
    ["The dip will keep 2 days in the fridge", "dip", 2, null, null],
    ["Lime yoghurt sauce keeps 5 days in the fridge", "Lime yoghurt sauce", 5, null, null],
  ])("%s", (text, about, fridgeDays, freezerMonths, freezes) => {
    expect(readKeeping(text)).toMatchObject([
      { about, keeping: { fridgeDays, freezerMonths, freezes } },
    ]);
  });

  test("one line may hold several", () => {
    const text =
      "Keeps 3 days in the fridge, the base freezes 3 months and the sauce does not freeze: it splits";
    expect(readKeeping(text)?.map(({ about }) => about)).toEqual(["", "base", "sauce"]);
  });

  test("what says no part of its own speaks of the part named before it", () => {
    expect(
      readKeeping("Lime sauce keeps 3 days in the fridge, in the freezer 2 months"),
    ).toMatchObject([{ about: "Lime sauce", keeping: { fridgeDays: 3, freezerMonths: 2 } }]);
    expect(readKeeping("Lime sauce keeps 3 days chilled and 2 months frozen")).toHaveLength(1);
    expect(readKeeping("Lime sauce: up to one week in the fridge")).toMatchObject([
      { about: "Lime sauce", keeping: { fridgeDays: 7 } },
    ]);
    expect(readKeeping("Shelf life: 3 days chilled")).toMatchObject([
      { about: "", keeping: { fridgeDays: 3 } },
    ]);
    expect(readKeeping("Lime sauce: 200 g yoghurt")).toBeNull();
    expect(readKeeping("Fridge 3 days / freezer 2 months")).toMatchObject([
      { about: "", keeping: { fridgeDays: 3, freezerMonths: null } },
      { about: "", keeping: { fridgeDays: null, freezerMonths: 2 } },
    ]);
  });

  test.each([
    "Keep warm for 5 minutes.",
    "Refrigerate overnight.",
    "Chill for 2 days before you slice it.",
    "Refrigerate for up to 2 days, then bake.",
    "Keep stirring for a minute",
    "Freeze flat for 2 hours.",
    "Stir until it keeps its shape",
    "Keeps well",
    "Rest 3 days",
  ])("%s is none", (text) => {
    expect(readKeeping(text)).toBeNull();
  });
});

describe("what a step names", () => {
  test.each([
    ["Roast at 200 °C (400 °F) for 30-35 minutes", [200], [35]],
    ["Heat to 165 °F", [73.9], []],
    ["Bake at 350F/177C for 1 h 30 min", [177], [90]],
    ["180–200 °C for 1½ hours and 10 min, then 45 seconds", [180, 200], [100, 0.75]],
    ["Gas mark 6 for 20 min", [200], [20]],
    ["Freeze at -18 °C", [-18], []],
    ["2 c flour", [], []],
    ["Bake for 1 hr 20.", [], [80]],
    ["Bake 1h20, then 25-30 min", [], [80, 30]],
    ["Marinate overnight", [], [480]],
    ["Rest for an hour and a half", [], [90]],
    ["Half an hour, then a minute, then twenty minutes", [], [30, 1, 20]],
    ["Roast for 1 hour 180 °C", [180], [60]],
    ["Add 1 hour 20 g of salt", [], [60]],
    ["A quarter of an hour at gas mark 4", [180], [15]],
  ])("%s", (text, temperaturesC, minutes) => {
    expect(readStep(text)).toEqual({ text, temperaturesC, minutes });
  });
});
