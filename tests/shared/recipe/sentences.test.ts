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

  test.each([
    "Keep warm for 5 minutes.",
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
  ])("%s", (text, temperaturesC, minutes) => {
    expect(readStep(text)).toEqual({ text, temperaturesC, minutes });
  });
});
