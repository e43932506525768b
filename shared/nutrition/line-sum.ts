import { ALCOHOL_KCAL_PER_G, alcoholKept, sodiumKept } from "../cooking/retention.ts";
import type { CookingAssumption } from "../cooking/types.ts";
import type { FoodBook } from "../food/book.ts";
import type { Food } from "../food/types.ts";
import { isAsBought } from "../recipe/line-words.ts";
import type { ScaledLine } from "../recipe/scale.ts";
import { isCountedInFull } from "../recipe/uptake.ts";
import { atLeastFor, NOTHING, nutrientsOf, sumsBy, UNMEASURED } from "./sum.ts";
import type { NutrientSums } from "./types.ts";

/** Above this, "to taste" can add sodium that matters: salt, soy sauce, stock cubes. */
const SALTY_MG_PER_100G = 1000;

/**
 * What one line brings to the figures: its edible grams times the share that is eaten, less the alcohol
 * that cooking drives off and the sodium that goes with the cooking water, where factors are published.
 */
export function sumOfLine(line: ScaledLine, foods: FoodBook): NutrientSums {
  const food = foodOf(line, foods);
  if (line.choice.amount === null) {
    const sodium = food?.per100g.sodiumMg ?? null;
    const mayBeSalty = sodium === null || sodium >= SALTY_MG_PER_100G;
    return mayBeSalty ? atLeastFor(NOTHING, ["sodiumMg"]) : NOTHING;
  }
  if (food === null || line.grams === null) return UNMEASURED;
  const grams = line.grams * line.choice.uptake * line.choice.tableGPerG;
  return afterCooking(nutrientsOf(food, grams), food, grams, line);
}

function afterCooking(
  sums: NutrientSums,
  food: Food,
  grams: number,
  line: ScaledLine,
): NutrientSums {
  const lessKcal = goneKcal(food, grams, line);
  const kept = sodiumKept(food, line.cooking);
  if (lessKcal === 0 && kept === 1) return sums;
  return sumsBy((key) => {
    const { amount, atLeast } = sums[key];
    if (key === "energyKcal") return { amount: Math.max(0, amount - lessKcal), atLeast };
    return { amount: key === "sodiumMg" ? amount * kept : amount, atLeast };
  });
}

/** Energy of the alcohol that cooking drives off, kcal. */
function goneKcal(food: Food, grams: number, { cooking }: ScaledLine): number {
  return ((grams * food.alcoholG) / 100) * ALCOHOL_KCAL_PER_G * (1 - alcoholKept(cooking));
}

/** Less than this moves no figure that is shown. */
const SHOWN = { energyKcal: 5, sodiumMg: 20 } as const;

/** What the figures of a line rest on besides the table, where it moves a figure that is shown. */
export function assumptionsOf(line: ScaledLine, foods: FoodBook): readonly CookingAssumption[] {
  const { choice, cooking } = line;
  const food = foodOf(line, foods);
  if (choice.amount === null || food === null || line.grams === null) return [];
  const name = choice.foodText;
  const found: CookingAssumption[] = [];
  if (choice.uptake < 1) found.push({ code: "taken up", food: name, share: choice.uptake });
  if (isCountedInFull(choice)) found.push({ code: "counted in full", food: name });
  if (choice.tableGPerG !== 1) {
    found.push({ code: "converted", food: name, factor: choice.tableGPerG });
  }
  const grams = line.grams * choice.uptake * choice.tableGPerG;
  if (goneKcal(food, grams, line) >= SHOWN.energyKcal) {
    found.push({ code: "alcohol kept", food: name, share: alcoholKept(cooking) });
  }
  const sodium = sodiumKept(food, cooking);
  const goneMg = ((food.per100g.sodiumMg ?? 0) * grams * (1 - sodium)) / 100;
  if (goneMg >= SHOWN.sodiumMg) found.push({ code: "sodium kept", food: name, share: sodium });
  if (food.refusePct === 0 && isAsBought(`${name}, ${choice.preparation}`)) {
    found.push({ code: "refuse not known", food: name });
  }
  return found;
}

/** The table's food of a line; null when there is none. */
export function foodOf(line: ScaledLine, foods: FoodBook): Food | null {
  return line.choice.foodId === null ? null : foods.byId(line.choice.foodId);
}
