import type { FoodBook } from "../food/book.ts";
import type { ScaledComponent, ScaledLine, ScaledRecipe } from "../recipe/scale.ts";
import { addSums, atLeastFor, NOTHING, nutrientsOf, timesSums, UNMEASURED } from "./sum.ts";
import type { NutrientSums } from "./types.ts";

/** What "per 100 g" is a hundred grams of. */
export type HundredOf = "cooked, weighed" | "cooked, as the recipe states" | "as put together";

export interface PartNutrition {
  readonly name: string;
  readonly optional: boolean;
  readonly perPortion: NutrientSums;
}

export interface Nutrition {
  readonly whole: NutrientSums;
  readonly perPortion: NutrientSums;
  readonly per100g: NutrientSums;
  readonly per100gOf: HundredOf;
  /** Everything that could be weighed, edible and before cooking, grams. */
  readonly togetherG: number;
  /** Cooked mass of the whole, weighed or as the recipe states it, grams; null when neither is known. */
  readonly cookedWeightG: number | null;
  /** Per component, in the recipe's order. */
  readonly components: readonly PartNutrition[];
  /** Each optional component and line that is in: what a portion has without it. */
  readonly without: readonly { readonly name: string; readonly perPortion: NutrientSums }[];
  /** Foods of lines that could not be counted: every figure is then "at least". */
  readonly unmeasured: readonly string[];
  /** Foods of lines "to taste", left out of the figures. */
  readonly toTaste: readonly string[];
}

/** Above this, "to taste" can add sodium that matters: salt, soy sauce, stock cubes. */
const SALTY_MG_PER_100G = 1000;

/**
 * Figures of a recipe as scaled: sums of the edible raw foods, nothing guessed. Per 100 g is of the
 * cooked food where its mass was weighed or is stated (and nothing was left out), else of the foods as
 * put together before cooking. Cooking losses of nutrients are not taken off.
 */
export function nutritionOf(
  scaled: ScaledRecipe,
  foods: FoodBook,
  options: { readonly cookedWeightG: number | null } = { cookedWeightG: null },
): Nutrition {
  const parts = scaled.components.map((part) => ({ part, sums: sumOf(part.lines, foods) }));
  const whole = addSums(parts.map(({ sums }) => sums));
  const lines = scaled.components.flatMap((part) => part.lines);
  const togetherG = lines.reduce((sum, line) => sum + (line.grams ?? 0), 0);
  const perPortion = (sums: NutrientSums) => timesSums(sums, 1 / scaled.portions);
  const cooked = cookedMass(scaled, options.cookedWeightG);
  const massG = cooked?.grams ?? togetherG;
  return {
    whole,
    perPortion: perPortion(whole),
    per100g: massG > 0 ? timesSums(whole, 100 / massG) : UNMEASURED,
    per100gOf: cooked?.of ?? "as put together",
    togetherG,
    cookedWeightG: cooked?.grams ?? null,
    components: parts.map(({ part, sums }) => ({
      name: part.name,
      optional: part.optional,
      perPortion: perPortion(sums),
    })),
    without: withoutEach(scaled.components, foods).map(({ name, sums }) => ({
      name,
      perPortion: perPortion(sums),
    })),
    unmeasured: lines.filter((line) => isUnmeasured(line, foods)).map(nameOf),
    toTaste: lines.filter((line) => line.choice.amount === null).map(nameOf),
  };
}

function cookedMass(
  scaled: ScaledRecipe,
  weighedG: number | null,
): { readonly grams: number; readonly of: HundredOf } | null {
  if (weighedG !== null) return { grams: weighedG, of: "cooked, weighed" };
  return scaled.yieldG === null
    ? null
    : { grams: scaled.yieldG, of: "cooked, as the recipe states" };
}

function sumOf(lines: readonly ScaledLine[], foods: FoodBook): NutrientSums {
  return addSums(lines.map((line) => sumOfLine(line, foods)));
}

function sumOfLine(line: ScaledLine, foods: FoodBook): NutrientSums {
  const food = line.choice.foodId === null ? null : foods.byId(line.choice.foodId);
  if (line.choice.amount === null) {
    const sodium = food?.per100g.sodiumMg ?? null;
    const mayBeSalty = sodium === null || sodium >= SALTY_MG_PER_100G;
    return mayBeSalty ? atLeastFor(NOTHING, ["sodiumMg"]) : NOTHING;
  }
  return food === null || line.grams === null ? UNMEASURED : nutrientsOf(food, line.grams);
}

function isUnmeasured(line: ScaledLine, foods: FoodBook): boolean {
  if (line.choice.amount === null) return false;
  const { foodId } = line.choice;
  return line.grams === null || foodId === null || foods.byId(foodId) === null;
}

/** Sums of the whole without each optional component and each optional line. */
function withoutEach(
  components: readonly ScaledComponent[],
  foods: FoodBook,
): readonly { readonly name: string; readonly sums: NutrientSums }[] {
  const lines = components.flatMap((part) => part.lines);
  const rest = (left: (line: ScaledLine) => boolean) =>
    sumOf(
      lines.filter((line) => !left(line)),
      foods,
    );
  return components.flatMap((part) => {
    const own = new Set(part.lines);
    if (part.optional) return [{ name: part.name, sums: rest((line) => own.has(line)) }];
    return part.lines
      .filter((line) => line.optional)
      .map((line) => ({ name: nameOf(line), sums: rest((other) => other === line) }));
  });
}

function nameOf(line: ScaledLine): string {
  return line.choice.foodText;
}
