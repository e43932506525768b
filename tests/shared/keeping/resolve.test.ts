import { describe, expect, it } from "vitest";
import { resolveKeeping } from "../../../shared/keeping/resolve.ts";
import { readRecipe } from "../../../shared/recipe/read.ts";
import { loadFoodBook } from "../../../src/foods/load.ts";

const foods = loadFoodBook();
function keepingOf(lines: string, without: readonly string[] = []) {
  const steps = "Steps\n1. Bake at 180 °C for 30 minutes.";
  const text = `Test dish\nMakes 4 portions\n\n${lines.replace("STEPS", steps)}\n`;
  const read = readRecipe(text, foods);
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  return resolveKeeping(read.value.recipe, foods, without);
}

describe("how long a batch keeps", () => {
  it("follows the leftover rule where the coach states nothing", () => {
    expect(keepingOf("- 500 g chicken thigh\n- 200 g rice\n\nSTEPS")).toMatchObject({
      fridgeDays: 3,
      freezes: "well",
      freezerMonths: 3,
    });
  });

  it("is the coach's where that is shorter, and the card says so", () => {
    const kept = keepingOf("- 500 g salmon\n\nSTEPS\n\nKeeps 2 days in the fridge");
    expect(kept).toMatchObject({ fridgeDays: 2, limitedBy: "the coach's own limit" });
  });

  it("is the chart's where the coach states longer, and both are said", () => {
    const kept = keepingOf("- 500 g chicken thigh\n\nSTEPS\n\nKeeps 6 days in the fridge");
    expect(kept.fridgeDays).toBe(3);
    expect(kept.remarks.join(" ")).toMatch(/states 6 days.*gives 3.*use 3/u);
  });

  it("is as short as its shortest part, and longer without that part", () => {
    const dish = `Base:
- 300 g sour cream
- 100 g mayonnaise

Fish (optional):
- 300 g cooked salmon`;
    expect(keepingOf(dish)).toMatchObject({ fridgeDays: 3, limitedBy: "Fish" });
    expect(keepingOf(dish).remarks).toContain(
      "The Fish decides the 3 days in the fridge: without it 6.",
    );
    expect(keepingOf(dish, ["Fish"]).fridgeDays).toBe(6);
  });

  it("promises nothing from leaving a part out that would buy nothing", () => {
    const dish = "Base:\n- 500 g chicken thigh\n\nFish (optional):\n- 300 g cooked salmon\n\nSTEPS";
    const decided = (kept: ReturnType<typeof keepingOf>) =>
      kept.remarks.filter((remark) => remark.includes("decides"));
    expect(decided(keepingOf(dish))).toEqual([]);
    expect(decided(keepingOf(`${dish}\n\nKeeps 2 days in the fridge`))).toEqual([]);
  });

  it("never goes past seven calendar days, the day of cooking the first", () => {
    expect(keepingOf("- 200 g salt\n\nKeeps 30 days in the fridge").fridgeDays).toBe(6);
  });

  it("says why something freezes badly, from the chart where the coach is silent", () => {
    expect(keepingOf("- 200 g romaine lettuce\n- 100 g cucumber")).toMatchObject({
      freezes: "no",
      freezerMonths: null,
      reason: expect.stringMatching(/limp/u),
    });
  });

  it("judges freezing by the parts that must be in it, and keeps a sauce that splits out", () => {
    const kept = keepingOf(`Base:
- 500 g chicken thigh

Yoghurt sauce (optional):
- 200 g plain yogurt

STEPS`);
    expect(kept.freezes).toBe("well");
    expect(kept.remarks.join(" ")).toMatch(
      /Freeze without the Yoghurt sauce: soft dairy separates/u,
    );
  });

  it("fish is at its best for two months, meat for three", () => {
    expect(keepingOf("- 500 g salmon\n\nSTEPS\n\nFreezes 6 months").freezerMonths).toBe(2);
  });

  it("goes by raw food where no step cooks it (FoodSafety.gov, Cold Food Storage Chart: fish 1 to 3 days)", () => {
    const kept = keepingOf(
      "- 500 g salmon\n- 50 g mayonnaise\n\nSteps\n1. Chop and mix.\n\nKeeps 10 days",
    );
    expect(kept.fridgeDays).toBe(1);
    expect(kept.remarks.join(" ")).toMatch(/No step says that this is cooked/u);
  });

  it("does not call cooked spinach a raw salad", () => {
    expect(keepingOf("- 8 eggs\n- 200 g spinach\n\nSTEPS")).toMatchObject({ freezes: "well" });
  });
});
