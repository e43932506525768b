import { describe, expect, it } from "vitest";
import { reply } from "../../../commands/kit/reply.ts";
import { targetPart } from "../../../commands/recipe/target-part.ts";
import { sumsBy } from "../../../shared/nutrition/sum.ts";
import type { NutrientKey } from "../../../shared/nutrition/types.ts";
import type { TargetFigures } from "../../../shared/target/types.ts";
import { readAloud } from "../../kit/recipes-and-context.ts";

function lines(
  figures: TargetFigures,
  portion: Partial<Record<NutrientKey, number>>,
  atLeast = false,
): readonly string[] {
  const sums = sumsBy((key) => ({ amount: portion[key] ?? 0, atLeast }));
  return readAloud(reply("", { parts: [targetPart(figures, sums, "bowl")] }))
    .split("\n")
    .slice(1);
}

describe("a portion against the day's target", () => {
  it("says its share of each figure that has a target, and what is left", () => {
    const figures = { energyKcal: 2100, proteinG: 120, carbohydrateG: 230, fibreG: 30 };
    const portion = { energyKcal: 710, proteinG: 48, carbohydrateG: 69, fibreG: 7.5, fatG: 20 };
    expect(lines(figures, portion)).toEqual([
      "[One bowl of your day's target, nothing else counted]",
      "energy: 34 % of 2,100 kcal (1,390 kcal left)",
      "protein: 40 % of 120 g (72 g left)",
      "carbohydrate, with fibre: 30 % of 230 g (161 g left)",
      "fibre: 25 % of 30 g (23 g left)",
    ]);
  });

  it.each([
    [2220, false, "energy: 106 % of 2,100 kcal (over by 120 kcal)"],
    [2220, true, "energy: at least 106 % of 2,100 kcal (over by at least 120 kcal)"],
    [2100, false, "energy: 100 % of 2,100 kcal (nothing left)"],
    [710, true, "energy: at least 34 % of 2,100 kcal (at most 1,390 kcal left)"],
    [0, true, "energy: not known (target 2,100 kcal)"],
    [0, false, "energy: 0 % of 2,100 kcal (2,100 kcal left)"],
    [5, false, "energy: below 1 % of 2,100 kcal (2,095 kcal left)"],
  ])("%d kcal, lower bound %s: %s", (kcal, atLeast, line) => {
    expect(lines({ energyKcal: 2100 }, { energyKcal: kcal }, atLeast)).toEqual([
      expect.any(String),
      line,
    ]);
  });
});
