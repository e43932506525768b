import type { FoodBook } from "../food/book.ts";
import type { Nutrition } from "../nutrition/portion.ts";
import type { ScaledLine, ScaledRecipe } from "../recipe/scale.ts";
import type { LabelExtras } from "./types.ts";

/**
 * What the EU's figures need besides the sums of `figures`, from the lines of the same recipe: alcohol
 * as put in (none is taken off for cooking, as with the sums), and carbohydrate of unknown fibre.
 */
export function labelExtras(
  scaled: ScaledRecipe,
  foods: FoodBook,
  figures: Pick<Nutrition, "cookedWeightG" | "togetherG">,
): { readonly perPortion: LabelExtras; readonly per100g: LabelExtras } {
  const lines = scaled.components.flatMap((part) => part.lines);
  const whole = {
    alcoholG: total(lines, (line) => alcoholOf(line, foods)),
    unknownFibreCarbohydrateG: total(lines, (line) => unknownFibreOf(line, foods)),
  };
  const massG = figures.cookedWeightG ?? figures.togetherG;
  return {
    perPortion: times(whole, 1 / scaled.portions),
    per100g: times(whole, massG > 0 ? 100 / massG : 0),
  };
}

function total(lines: readonly ScaledLine[], of: (line: ScaledLine) => number): number {
  return lines.reduce((sum, line) => sum + of(line), 0);
}

function alcoholOf({ choice, grams }: ScaledLine, foods: FoodBook): number {
  const food = choice.foodId === null ? null : foods.byId(choice.foodId);
  return ((food?.alcoholG ?? 0) * (grams ?? 0)) / 100;
}

function unknownFibreOf({ choice, grams }: ScaledLine, foods: FoodBook): number {
  const per100g = choice.foodId === null ? null : foods.byId(choice.foodId)?.per100g;
  if (per100g == null || per100g.fibreG !== null) return 0;
  return ((per100g.carbohydrateG ?? 0) * (grams ?? 0)) / 100;
}

function times(extras: LabelExtras, factor: number): LabelExtras {
  return {
    alcoholG: extras.alcoholG * factor,
    unknownFibreCarbohydrateG: extras.unknownFibreCarbohydrateG * factor,
  };
}
