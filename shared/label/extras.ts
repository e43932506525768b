import { alcoholKept } from "../cooking/retention.ts";
import type { FoodBook } from "../food/book.ts";
import { foodOf, sumOfLine } from "../nutrition/line-sum.ts";
import type { Nutrition } from "../nutrition/portion.ts";
import type { ScaledLine, ScaledRecipe } from "../recipe/scale.ts";
import type { LabelExtras } from "./types.ts";

/**
 * What the EU's figures need besides the sums of `figures`, from the lines of the same recipe: the
 * alcohol that cooking leaves, and the carbohydrate of foods whose fibre nobody knows.
 */
export function labelExtras(
  scaled: ScaledRecipe,
  foods: FoodBook,
  figures: Pick<Nutrition, "whole" | "per100g">,
): { readonly perPortion: LabelExtras; readonly per100g: LabelExtras } {
  const lines = scaled.components.flatMap((part) => part.lines);
  const whole = {
    alcoholG: total(lines, (line) => alcoholOf(line, foods)),
    unknownFibreCarbohydrateG: total(lines, (line) => unknownFibreOf(line, foods)),
  };
  // What has alcohol or carbohydrate has energy: so its share tells the mass that the sums go by.
  const wholeKcal = figures.whole.energyKcal.amount;
  return {
    perPortion: times(whole, 1 / scaled.portions),
    per100g: times(whole, wholeKcal > 0 ? figures.per100g.energyKcal.amount / wholeKcal : 0),
  };
}

function total(lines: readonly ScaledLine[], of: (line: ScaledLine) => number): number {
  return lines.reduce((sum, line) => sum + of(line), 0);
}

function alcoholOf(line: ScaledLine, foods: FoodBook): number {
  const { choice, grams, cooking } = line;
  const eatenG = (grams ?? 0) * choice.uptake * choice.tableGPerG;
  return ((foodOf(line, foods)?.alcoholG ?? 0) * eatenG * alcoholKept(cooking)) / 100;
}

function unknownFibreOf(line: ScaledLine, foods: FoodBook): number {
  const { fibreG, carbohydrateG } = sumOfLine(line, foods);
  return fibreG.atLeast ? carbohydrateG.amount : 0;
}

function times(extras: LabelExtras, factor: number): LabelExtras {
  return {
    alcoholG: extras.alcoholG * factor,
    unknownFibreCarbohydrateG: extras.unknownFibreCarbohydrateG * factor,
  };
}
