import type { FoodBook } from "../food/book.ts";
import type { ScaledComponent, ScaledRecipe } from "../recipe/scale.ts";
import { cookInWater } from "./cook-in-water.ts";
import { cookLine, type RawLine } from "./cook-line.ts";
import { dryFoodOf } from "./dry-foods.ts";
import type { CookedLine, CookedMass } from "./types.ts";

/**
 * An estimate of what the whole weighs cooked, grams: meat, poultry and fish by published yields, dry
 * grains, pasta and pulses by what they take up (the recipe's water first, then the tap's), vegetables
 * where raw and cooked rows of the table tell, all else unchanged; each line says which. Null when no step
 * heats anything, when no published figure bears on any line (it would only be the raw weight under another
 * name), or when a line cannot be weighed (the whole would be too light).
 */
export function cookedMassOf(scaled: ScaledRecipe, foods: FoodBook): CookedMass | null {
  const parts = scaled.components.map((part) => rawLines(part, foods));
  const lines = parts.flatMap((part) => part ?? []);
  const isHeated = lines.some(({ how }) => how.method !== null);
  if (!isHeated || parts.includes(null)) return null;
  const cooked: CookedLine[] = [];
  let tapG = 0;
  let goneG = 0;
  for (const part of parts) {
    const water = cookInWater(part ?? []);
    tapG += water.tapG;
    goneG += water.goneG;
    for (const line of part ?? []) cooked.push(water.cooked.get(line.key) ?? cookLine(line, lines));
  }
  if (goneG === 0 && !cooked.some((line) => "basis" in line)) return null;
  return {
    grams: cooked.reduce((sum, { cookedG }) => sum + cookedG, 0),
    lines: cooked,
    tapG,
    goneG,
    noFactor: [
      ...new Set(cooked.filter(({ code }) => code === "no factor").map(({ food }) => food)),
    ],
  };
}

/** Lines that have a weight; null when one that should have has not. "To taste" weighs nothing. */
function rawLines(part: ScaledComponent, foods: FoodBook): readonly RawLine[] | null {
  const lines: RawLine[] = [];
  for (const { key, choice, cooking, grams } of part.lines) {
    if (choice.amount === null) continue;
    if (grams === null) return null;
    const food = choice.foodId === null ? null : foods.byId(choice.foodId);
    lines.push({
      key,
      foodText: choice.foodText,
      lineText: `${choice.foodText}, ${choice.preparation}`,
      food,
      // A line that was written cooked has its water already.
      isCooked: choice.tableGPerG < 1,
      dry: food === null || choice.tableGPerG < 1 ? null : dryFoodOf(food),
      grams: grams * choice.uptake,
      how: cooking,
    });
  }
  return lines;
}
