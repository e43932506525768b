import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { withOtherScale } from "../../../shared/recipe/both-scales.ts";

describe("temperatures in both scales", () => {
  test.each([
    ["Bake at 200 °C for 35 minutes.", "Bake at 200 °C / 390 °F for 35 minutes."],
    ["Bake at 400°F until done", "Bake at 400°F / 200 °C until done"],
    ["Until 165 °F throughout", "Until 165 °F / 74 °C throughout"],
    ["200 °C (180 °C fan)", "200 °C / 390 °F (180 °C / 360 °F fan)"],
    ["180-200 °C", "180-200 °C / 360-390 °F"],
    ["Keep below 5 °C", "Keep below 5 °C / 41 °F"],
    ["heat the oil to 121 °C", "heat the oil to 121 °C / 250 °F"],
  ])("%s", (text, both) => {
    expect(withOtherScale(text, "both")).toBe(both);
  });

  test.each([
    "74 °C / 165 °F",
    "400 °F (200 °C)",
    "Lower the oven by 20 °C",
    "20 °C lower",
    "200 g carrots",
    "vitamin C",
  ])("“%s” is left alone", (text) => {
    expect(withOtherScale(text, "both")).toBe(text);
  });

  test("only the scale asked for is added", () => {
    expect(withOtherScale("Bake at 200 °C", "C")).toBe("Bake at 200 °C");
    expect(withOtherScale("Bake at 200 °C", "F")).toBe("Bake at 200 °C / 390 °F");
  });

  test("the writer's own text stays, and a temperature to be reached is never made lower", () => {
    fc.assert(
      fc.property(fc.integer({ min: 50, max: 99 }), (celsius) => {
        const said = withOtherScale(`until ${celsius} °C inside`, "both");
        expect(said.startsWith(`until ${celsius} °C / `)).toBe(true);
        const fahrenheit = Number(/\/ (\d+) °F/u.exec(said)?.[1]);
        // Pairs that guidance prints are rounded by their publisher, by less than half a degree.
        const isPublished = [54, 57, 60, 63, 68, 71, 74].includes(celsius);
        const belowC = celsius - ((fahrenheit - 32) * 5) / 9;
        expect(belowC).toBeLessThanOrEqual(isPublished ? 0.5 : 1e-9);
      }),
    );
  });
});
