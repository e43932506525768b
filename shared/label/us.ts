import type { NutrientKey, NutrientSum, NutrientSums } from "../nutrition/types.ts";
import { declare, type RoundingRule } from "./rounding.ts";
import type { BoundedAmount, LabelFigure, LabelName, LabelRow } from "./types.ts";

/** 21 CFR 101.9(c)(1): to 5 up to and including 50, to 10 above; below 5 may be zero. */
const CALORIES: RoundingRule = {
  unit: "kcal",
  bands: [
    { below: 5, say: "zero" },
    { through: 50, say: "nearest", step: 5 },
    { say: "nearest", step: 10 },
  ],
};

/** 21 CFR 101.9(c)(2), (c)(2)(i): to half a gram below 5 g, to a gram above; below 0.5 g zero. */
const FAT: RoundingRule = {
  unit: "g",
  bands: [
    { below: 0.5, say: "zero" },
    { below: 5, say: "nearest", step: 0.5 },
    { say: "nearest", step: 1 },
  ],
};

/** 21 CFR 101.9(c)(4): to 5 mg up to 140 mg, to 10 mg above; below 5 mg zero. */
const SODIUM: RoundingRule = {
  unit: "mg",
  bands: [
    { below: 5, say: "zero" },
    { through: 140, say: "nearest", step: 5 },
    { say: "nearest", step: 10 },
  ],
};

/** 21 CFR 101.9(c)(6), (c)(6)(i), (c)(6)(ii), (c)(7): to a gram; "less than 1 g"; below 0.5 g zero. */
const WHOLE_GRAMS: RoundingRule = {
  unit: "g",
  bands: [
    { below: 0.5, say: "zero" },
    { below: 1, say: "less than", limit: 1 },
    { say: "nearest", step: 1 },
  ],
};

const RULES: Readonly<Record<NutrientKey, RoundingRule>> = {
  energyKcal: CALORIES,
  fatG: FAT,
  saturatedFatG: FAT,
  sodiumMg: SODIUM,
  carbohydrateG: WHOLE_GRAMS,
  fibreG: WHOLE_GRAMS,
  sugarsG: WHOLE_GRAMS,
  proteinG: WHOLE_GRAMS,
};

/**
 * Daily values for adults and children from four years on, in the nutrient's own unit: 21 CFR
 * 101.9(c)(9) as amended in 2016. Total sugars have none. Protein's (50 g) is left out, for its percent
 * goes by protein corrected for quality (101.9(c)(7)(ii)), which no food table tells.
 */
const DAILY_VALUES: Readonly<Partial<Record<NutrientKey, number>>> = {
  fatG: 78,
  saturatedFatG: 20,
  carbohydrateG: 275,
  fibreG: 28,
  sodiumMg: 2300,
};

/** 21 CFR 101.9(c) and (d): names and order of the rows that our table can fill. */
const PANEL: readonly LabelName<NutrientKey>[] = [
  { key: "energyKcal", name: "Calories", isPart: false },
  { key: "fatG", name: "Total Fat", isPart: false },
  { key: "saturatedFatG", name: "Saturated Fat", isPart: true },
  { key: "sodiumMg", name: "Sodium", isPart: false },
  { key: "carbohydrateG", name: "Total Carbohydrate", isPart: false },
  { key: "fibreG", name: "Dietary Fiber", isPart: true },
  { key: "sugarsG", name: "Total Sugars", isPart: true },
  { key: "proteinG", name: "Protein", isPart: false },
];

/** One figure as a US label prints it, with its percent of the daily value. */
export function usFigure(sums: NutrientSums, key: NutrientKey): LabelFigure {
  const declared = declare(RULES[key], boundedOf(sums[key]));
  return { text: declared.text, dailyValue: dailyPercent(sums[key], key, declared.amount) };
}

/** The rows of a US panel that our table can fill, in the law's order. */
export function usPanel(sums: NutrientSums): readonly LabelRow[] {
  return PANEL.map(({ key, name, isPart }) => ({ name, isPart, figure: usFigure(sums, key) }));
}

/**
 * Whole percent (101.9(d)(7)(ii)) of the amount as printed, which the rule allows beside the exact one
 * and which never contradicts the figure beside it; of the exact amount where no number is printed.
 */
function dailyPercent(sum: NutrientSum, key: NutrientKey, printed: number | null): string | null {
  const dailyValue = DAILY_VALUES[key];
  if (dailyValue === undefined || (printed === null && sum.atLeast)) return null;
  const percent = (100 * (printed ?? sum.amount)) / dailyValue;
  return sum.atLeast ? `at least ${Math.floor(percent)} %` : `${Math.round(percent)} %`;
}

function boundedOf({ amount, atLeast }: NutrientSum): BoundedAmount {
  return { amount, bound: atLeast ? "at least" : "exact" };
}
