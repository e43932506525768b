import { cookedMassOf } from "../cooking/cooked-mass.ts";
import type { CookedMass, CookingAssumption } from "../cooking/types.ts";
import type { FoodBook } from "../food/book.ts";
import type { ScaledComponent, ScaledLine, ScaledRecipe } from "../recipe/scale.ts";
import { assumptionsOf, foodOf, sumOfLine } from "./line-sum.ts";
import { addSums, timesSums, UNMEASURED } from "./sum.ts";
import type { NutrientSums } from "./types.ts";

/** What "per 100 g" is a hundred grams of. */
export type HundredOf =
  | "cooked, weighed"
  | "cooked, as the recipe states"
  | "cooked, estimated"
  | "as put together";

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
  /** Everything that could be weighed, edible and before cooking, with all that is poured off later, grams. */
  readonly togetherG: number;
  /** Cooked mass of the whole, grams, by what `per100gOf` says; null when it is not known. */
  readonly cookedWeightG: number | null;
  /** What an estimated cooked mass rests on; null when it is weighed, stated or not known. */
  readonly estimate: CookedMass | null;
  /** What the figures rest on besides the table: uptake, retention, conversions. */
  readonly assumptions: readonly CookingAssumption[];
  /** Per component, in the recipe's order. */
  readonly components: readonly PartNutrition[];
  /** Each optional component and line that is in: what a portion has without it. */
  readonly without: readonly { readonly name: string; readonly perPortion: NutrientSums }[];
  /** Foods of lines that could not be counted: every figure is then "at least". */
  readonly unmeasured: readonly string[];
  /** Foods of lines "to taste", left out of the figures. */
  readonly toTaste: readonly string[];
}

/**
 * Figures of a recipe as scaled: sums of the edible foods that are eaten, nothing guessed. Per 100 g is of the
 * cooked food: by the member's scale, else by the weight that the recipe states (and nothing was left out),
 * else by published yields; of the foods as put together where nothing is heated or the mass cannot be told.
 * Protein, fat, carbohydrate and fibre have no published retention and are counted in full; fat that is
 * poured off is an upper bound.
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
  const cooked = cookedMass(scaled, foods, options.cookedWeightG);
  const eatenG = lines.reduce((sum, { grams, choice }) => sum + (grams ?? 0) * choice.uptake, 0);
  const massG = cooked?.grams ?? eatenG;
  return {
    whole,
    perPortion: perPortion(whole),
    per100g: massG > 0 ? timesSums(whole, 100 / massG) : UNMEASURED,
    per100gOf: cooked?.of ?? "as put together",
    togetherG,
    cookedWeightG: cooked?.grams ?? null,
    estimate: cooked?.estimate ?? null,
    assumptions: lines.flatMap((line) => assumptionsOf(line, foods)),
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

interface Cooked {
  readonly grams: number;
  readonly of: HundredOf;
  readonly estimate: CookedMass | null;
}

/** By the scale, else as stated, else estimated. */
function cookedMass(scaled: ScaledRecipe, foods: FoodBook, weighedG: number | null): Cooked | null {
  if (weighedG !== null) return { grams: weighedG, of: "cooked, weighed", estimate: null };
  if (scaled.yieldG !== null) {
    return { grams: scaled.yieldG, of: "cooked, as the recipe states", estimate: null };
  }
  const estimate = cookedMassOf(scaled, foods);
  return estimate === null ? null : { grams: estimate.grams, of: "cooked, estimated", estimate };
}

function sumOf(lines: readonly ScaledLine[], foods: FoodBook): NutrientSums {
  return addSums(lines.map((line) => sumOfLine(line, foods)));
}

function isUnmeasured(line: ScaledLine, foods: FoodBook): boolean {
  return line.choice.amount !== null && (line.grams === null || foodOf(line, foods) === null);
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
