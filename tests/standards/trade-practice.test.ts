import { describe, expect, test } from "vitest";
import { writeCore, writeOven } from "../../shared/quantity/temperature.ts";
import { readRecipe } from "../../shared/recipe/read.ts";
import { scaleRecipe } from "../../shared/recipe/scale.ts";
import { loadFoodBook } from "../../src/foods/load.ts";

// Facts of the trade that everybody works by and nobody publishes: common practice, no published source.

const WRAPS = `Chicken and slaw wraps
Makes 5 wraps

Filling:
- 750 g cooked chicken breast, sliced
- 400 g cabbage, shredded
- 5 flour tortillas (60 g each)

Buttermilk dressing:
- 200 g buttermilk
The buttermilk dressing keeps up to one week

Steps
1. Warm the oven to 200 °C / 390 °F and heat the tortillas for 3 minutes.
2. Fill and roll.

The wraps keep 3 days chilled and 3 months frozen
`;

describe("common practice, no published source", () => {
  const read = readRecipe(WRAPS, loadFoodBook());
  const recipe = read.ok ? read.value.recipe : null;

  test("200 °C is called 390 °F, and a core temperature is not rounded like that", () => {
    expect(writeOven(200)).toBe("200 °C / 390 °F");
    expect(writeCore(74)).toBe("74 °C / 165 °F");
    expect(recipe?.steps[0]?.temperaturesC).toEqual([200]);
  });

  test("what a recipe for five makes is divided by five", () => {
    if (recipe === null) throw new Error("not read");
    const by = { kind: "portions", portions: 1 } as const;
    const one = scaleRecipe(recipe, loadFoodBook(), { by, without: [], swaps: {} });
    expect(one.ok && one.value.portionWord).toBe("wrap");
    const lines = one.ok ? one.value.components.flatMap((part) => part.lines) : [];
    expect(lines.map((line) => line.grams)).toEqual([150, 80, 60, 40]);
    expect(lines[2]?.written).toBe("1");
  });

  test("a filled wrap is stated to keep 3 days chilled and 3 months frozen", () => {
    expect(recipe?.keeping).toMatchObject({ fridgeDays: 3, freezerMonths: 3, freezes: "well" });
  });

  test("a buttermilk dressing is stated to keep up to one week", () => {
    expect(recipe?.components[1]?.keeping.fridgeDays).toBe(7);
  });
});
