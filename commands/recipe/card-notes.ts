import type { CookedMass, CookingAssumption } from "../../shared/cooking/types.ts";
import type { Nutrition } from "../../shared/nutrition/portion.ts";
import { writeGrams } from "../../shared/quantity/write-amount.ts";
import type { ScaledRecipe } from "../../shared/recipe/scale.ts";

/** What the hundred grams of a card are of. */
export const HUNDRED_OF: Readonly<Record<Nutrition["per100gOf"], string>> = {
  "cooked, weighed": "cooked, by its weight",
  "cooked, as the recipe states": "cooked, by the weight the recipe states",
  "cooked, estimated": "cooked, estimated from published yields",
  "as put together": "as put together, before cooking",
};

/** "about 410 g cooked", "420 g before cooking"; empty where nobody can tell. */
export function portionNote(scaled: ScaledRecipe, figures: Nutrition): string {
  const { cookedWeightG, per100gOf, unmeasured, togetherG } = figures;
  if (cookedWeightG !== null) {
    const how = per100gOf === "cooked, estimated" ? "cooked, estimated" : "cooked";
    return `about ${writeGrams(cookedWeightG / scaled.portions)} ${how}`;
  }
  // Foods that could not be weighed would make the mass too small.
  return unmeasured.length > 0 || togetherG === 0
    ? ""
    : `${writeGrams(togetherG / scaled.portions)} before cooking`;
}

/** What the figures leave out or assume, as sentences; the gravest first. */
export function figureNotes(figures: Nutrition): readonly string[] {
  const { unmeasured, toTaste, assumptions, estimate } = figures;
  const list: string[] = [];
  if (unmeasured.length > 0) {
    list.push(
      `Not counted: ${unmeasured.join(", ")}. They are not in the food table or cannot be weighed, so the figures are lower bounds.`,
    );
  }
  if (toTaste.length > 0) {
    list.push(`To taste, left out of the figures: ${saltFirst(toTaste).join(", ")}.`);
  }
  return [...list, ...assumptions.map(sayAssumption), ...estimateNotes(estimate)];
}

/** Salt is what matters most of what is left to taste. */
function saltFirst(foods: readonly string[]): readonly string[] {
  const isSalt = (food: string) => /\bsalt\b/iu.test(food);
  return [...foods.filter(isSalt), ...foods.filter((food) => !isSalt(food))];
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

function sayAssumption(assumed: CookingAssumption): string {
  const { food } = assumed;
  switch (assumed.code) {
    case "taken up":
      return `Of the ${food} ${percent(assumed.share)} is counted as eaten.`;
    case "counted in full":
      return `The ${food} is counted in full although some of it is poured off: the figures are upper bounds for it.`;
    case "alcohol kept":
      return `Of the alcohol in the ${food} ${percent(assumed.share)} is counted as left after cooking (USDA retention factors).`;
    case "sodium kept":
      return `Of the sodium in the ${food} ${percent(assumed.share)} is counted as left after boiling and draining (USDA retention factors).`;
    case "converted":
      return `${food}: converted between dry and cooked weight (1 g counts as ${Math.round(assumed.factor * 100) / 100} g of the table's food).`;
    case "refuse not known":
      return `${food}: what is not edible of it is not known, so it is counted in full.`;
  }
}

function estimateNotes(estimate: CookedMass | null): readonly string[] {
  if (estimate === null) return [];
  const unknown = estimate.noFactor;
  const rest =
    unknown.length === 0
      ? ""
      : ` No published yield for ${unknown.join(", ")}: taken as unchanged.`;
  return [
    `The cooked weight is estimated. Weigh the batch and log it with weight: for your own figure.${rest}`,
  ];
}
