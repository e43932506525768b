import { describe, expect, it } from "vitest";
import {
  byChart,
  countedFor,
  statedLonger,
  whoseWord,
} from "../../../shared/keeping/coach-word.ts";
import { resolveKeeping } from "../../../shared/keeping/resolve.ts";
import { VULNERABLE } from "../../../shared/people/types.ts";
import { readRecipe } from "../../../shared/recipe/read.ts";
import { loadFoodBook } from "../../../src/foods/load.ts";

const foods = loadFoodBook();

function recipeOf(lines: string) {
  const steps = "Steps\n1. Bake at 180 °C for 30 minutes.";
  const read = readRecipe(
    `Test dish\nMakes 4 portions\n\n${lines.replace("STEPS", steps)}\n`,
    foods,
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  return read.value.recipe;
}
const confirmed = (lines: string, without: readonly string[] = []) =>
  resolveKeeping(recipeOf(lines), foods, without, true);

const STEW = "- 500 g chicken thigh\n- 200 g carrots\n\nSTEPS\n\nKeeps 5 days in the fridge";

describe("a longer time on the coach's word", () => {
  it("is used only once it is confirmed", () => {
    expect(resolveKeeping(recipeOf(STEW), foods, [])).toMatchObject({
      fridgeDays: 3,
      longer: null,
    });
    const kept = confirmed(STEW);
    expect(kept.longer).toMatchObject({ chart: { fridgeDays: 3 }, coach: { fridgeDays: 5 } });
    expect(countedFor(kept, []).fridgeDays).toBe(5);
  });

  it("counts for nobody until it is known who eats", () => {
    expect(confirmed(STEW).fridgeDays).toBe(3);
    expect(byChart(countedFor(confirmed(STEW), []))).toEqual(confirmed(STEW));
  });

  it.each(VULNERABLE)("never counts with somebody %s at the table", (one) => {
    const kept = countedFor(confirmed(STEW), [one]);
    expect(kept.fridgeDays).toBe(3);
    expect(whoseWord(kept)).toBe("chart");
    // Also where it counted before.
    expect(countedFor(countedFor(confirmed(STEW), []), [one])).toEqual(kept);
    expect(whoseWord(countedFor(kept, []))).toBe("coach");
  });

  it("says both times to whom it counts, and for whom it does not", () => {
    const said = countedFor(confirmed(STEW), []).remarks.join(" ");
    expect(said).toMatch(/5 days in the fridge are the coach's word; the published chart gives 3/u);
    expect(said).toMatch(
      /pregnant, under five, over 65 or with a weak immune system.*3 days count/u,
    );
    expect(said).not.toMatch(/Dates here use 3/u);
  });

  it("never goes beyond seven days, the day of cooking counted", () => {
    const kept = countedFor(confirmed(STEW.replace("5 days", "12 days")), []);
    expect(kept.fridgeDays).toBe(6);
  });

  it("changes nothing where the coach states less or nothing, or what the chart gives", () => {
    for (const days of ["", "\n\nKeeps 2 days in the fridge", "\n\nKeeps 3 days in the fridge"]) {
      expect(confirmed(`- 500 g chicken thigh\n\nSTEPS${days}`).longer).toBeNull();
    }
  });

  it.each([
    ["fish", "- 500 g salmon\n\nSTEPS\n\nKeeps 5 days in the fridge"],
    ["seafood", "- 500 g shrimp\n\nSTEPS\n\nKeeps 5 days in the fridge"],
    ["raw fish", "- 500 g salmon\n\nSteps\n1. Slice.\n\nKeeps 5 days in the fridge"],
    ["raw minced meat", "- 500 g ground beef\n\nSteps\n1. Mix.\n\nKeeps 5 days in the fridge"],
    ["raw egg", "- 3 eggs\n\nSteps\n1. Whisk.\n\nKeeps 5 days in the fridge"],
    ["sprouts", "- 300 g bean sprouts\n\nSTEPS\n\nKeeps 5 days in the fridge"],
  ])("never lengthens %s", (_, lines) => {
    expect(confirmed(lines).longer).toBeNull();
  });

  it("never lengthens a dressing of raw egg in a dish that is otherwise cooked", () => {
    const dish = `Base:
- 500 g chicken thigh

Dressing (optional):
- 2 eggs
- 100 g olive oil

STEPS

Keeps 5 days in the fridge`;
    expect(confirmed(dish).longer).toBeNull();
    expect(confirmed(dish).fridgeDays).toBe(2);
    expect(countedFor(confirmed(dish, ["Dressing"]), []).fridgeDays).toBe(5);
  });

  it("leaves the part that stays at the chart's to decide, beside parts that keep longer", () => {
    const dish = `Base:
- 500 g chicken thigh

Fish (optional):
- 300 g cooked salmon

STEPS

Keeps 5 days in the fridge`;
    expect(confirmed(dish).longer).toBeNull();
    expect(countedFor(confirmed(dish, ["Fish"]), []).fridgeDays).toBe(5);
  });
});

describe("what there is to confirm", () => {
  it("is each part for which more is stated than the chart gives, with the chart's row and source", () => {
    const [part, ...others] = statedLonger(recipeOf(STEW), foods);
    expect(others).toEqual([]);
    expect(part).toMatchObject({ statedDays: 5, limit: { days: 3, stays: null } });
    expect(part?.limit.row?.source).toMatch(/USDA FSIS/u);
  });

  it("is nothing where only more than seven days is stated of what keeps seven", () => {
    const sauce = "- 200 g salt\n\nKeeps 30 days in the fridge";
    expect(statedLonger(recipeOf(sauce), foods)).toEqual([]);
  });

  it("names fish, raw food and sprouts as what keeps no longer", () => {
    const fish = statedLonger(
      recipeOf("- 500 g salmon\n\nSTEPS\n\nKeeps 5 days in the fridge"),
      foods,
    );
    expect(fish.map(({ limit }) => limit.stays)).toEqual(["fish or seafood"]);
  });
});
