import { saltG } from "../nutrition/sum.ts";
import type { NutrientSum, NutrientSums } from "../nutrition/types.ts";
import { declare, type RoundingRule } from "./rounding.ts";
import type { BoundedAmount, LabelExtras, LabelFigure, LabelName, LabelRow } from "./types.ts";

type EuKey = "fat" | "saturates" | "carbohydrate" | "sugars" | "fibre" | "protein" | "salt";

/** A portion as Regulation (EU) No 1169/2011 counts it. */
export interface EuSums {
  readonly energyKj: BoundedAmount;
  readonly energyKcal: BoundedAmount;
  /** Grams. Carbohydrate is without fibre (Annex I, point 7); salt is sodium x 2.5 (point 11). */
  readonly grams: Readonly<Record<EuKey, BoundedAmount>>;
}

/** Conversion factors per gram: Regulation (EU) No 1169/2011, Annex XIV. kJ are no multiple of kcal. */
const FACTORS = {
  kcal: { carbohydrate: 4, protein: 4, fat: 9, fibre: 2, alcohol: 7 },
  kj: { carbohydrate: 17, protein: 17, fat: 37, fibre: 8, alcohol: 29 },
} as const;

/**
 * Figures as the EU counts them. Our carbohydrate is by difference and holds the fibre. Where the fibre
 * of a food is not known, its carbohydrate may be fibre in any part: what was added up is then the most
 * that it can be, and where something else is missing too, only what is left without it is certain.
 * Without `extras`, any of the carbohydrate may be of such foods, and there is no alcohol.
 */
export function euSums(sums: NutrientSums, extras?: LabelExtras): EuSums {
  const { proteinG, fatG, carbohydrateG, fibreG } = sums;
  const availableG = Math.max(0, carbohydrateG.amount - fibreG.amount);
  const unclearG = fibreG.atLeast ? (extras?.unknownFibreCarbohydrateG ?? availableG) : 0;
  const energy = (per: (typeof FACTORS)[keyof typeof FACTORS]): BoundedAmount =>
    bounded(
      per.protein * proteinG.amount +
        per.carbohydrate * availableG +
        per.fat * fatG.amount +
        per.fibre * fibreG.amount +
        per.alcohol * (extras?.alcoholG ?? 0),
      proteinG.atLeast || fatG.atLeast || carbohydrateG.atLeast,
      (per.carbohydrate - per.fibre) * unclearG,
    );
  return {
    energyKj: energy(FACTORS.kj),
    energyKcal: energy(FACTORS.kcal),
    grams: {
      fat: lowerBound(fatG),
      saturates: lowerBound(sums.saturatedFatG),
      carbohydrate: bounded(availableG, carbohydrateG.atLeast, unclearG),
      sugars: lowerBound(sums.sugarsG),
      fibre: lowerBound(fibreG),
      protein: lowerBound(proteinG),
      salt: lowerBound(saltG(sums.sodiumMg)),
    },
  };
}

/**
 * The same sums with their energy by the EU's factors, so that it is one figure wherever it stands. All
 * else stays as the food table counts it: carbohydrate with fibre.
 */
export function withEuEnergy(sums: NutrientSums, extras?: LabelExtras): NutrientSums {
  const { amount, bound } = euSums(sums, extras).energyKcal;
  return { ...sums, energyKcal: { amount, atLeast: bound === "at least" } };
}

/** An amount that may be more, for parts are missing, or less, by at most `lessBy`. */
function bounded(amount: number, maybeMore: boolean, lessBy: number): BoundedAmount {
  if (maybeMore) return { amount: Math.max(0, amount - lessBy), bound: "at least" };
  return { amount, bound: lessBy > 0 ? "up to" : "exact" };
}

function lowerBound({ amount, atLeast }: NutrientSum): BoundedAmount {
  return bounded(amount, atLeast, 0);
}

// Rounding: European Commission, "Guidance document ... with regard to the setting of tolerances for
// nutrient values declared on a label" (December 2012), table 4; from memory.

const energyRule = (unit: "kJ" | "kcal"): RoundingRule => ({
  unit,
  bands: [{ say: "nearest", step: 1 }],
});

/** To a gram from 10 g, to a tenth below; what is not above `trace` may be said to be less than it. */
const gramsRule = (trace: number): RoundingRule => ({
  unit: "g",
  bands: [
    { through: 0, say: "zero" },
    { through: trace, say: "less than", limit: trace },
    { below: 10, say: "nearest", step: 0.1 },
    { say: "nearest", step: 1 },
  ],
});

/**
 * To a tenth from 1 g, to a hundredth below. Up to 0.0125 g the guidance allows "less than 0.01 g"; we
 * say so only where it is true.
 */
const SALT: RoundingRule = {
  unit: "g",
  bands: [
    { through: 0, say: "zero" },
    { below: 0.01, say: "less than", limit: 0.01 },
    { below: 1, say: "nearest", step: 0.01 },
    { say: "nearest", step: 0.1 },
  ],
};

const MACRO = gramsRule(0.5);
const RULES: Readonly<Record<EuKey, RoundingRule>> = {
  fat: MACRO,
  saturates: gramsRule(0.1),
  carbohydrate: MACRO,
  sugars: MACRO,
  fibre: MACRO,
  protein: MACRO,
  salt: SALT,
};

/** Regulation (EU) No 1169/2011, Annex XV: names and order. */
const PANEL: readonly LabelName<EuKey>[] = [
  { key: "fat", name: "Fat", isPart: false },
  { key: "saturates", name: "of which saturates", isPart: true },
  { key: "carbohydrate", name: "Carbohydrate", isPart: false },
  { key: "sugars", name: "of which sugars", isPart: true },
  { key: "fibre", name: "Fibre", isPart: false },
  { key: "protein", name: "Protein", isPart: false },
  { key: "salt", name: "Salt", isPart: false },
];

/** A figure in grams as an EU label prints it. */
export function euGrams({ grams }: EuSums, key: EuKey): string {
  return declare(RULES[key], grams[key]).text;
}

/** Energy in kilocalories alone: "511 kcal". */
export function euKcal({ energyKcal }: EuSums): string {
  return declare(energyRule("kcal"), energyKcal).text;
}

/** Energy as the law wants it, kJ first: "2140 kJ / 511 kcal", "at least 2140 kJ / 511 kcal". */
export function euEnergy({ energyKj, energyKcal }: EuSums): string {
  const kj = declare(energyRule("kJ"), energyKj);
  const kcal = declare(energyRule("kcal"), energyKcal);
  if (kj.amount === null || kcal.amount === null) return kcal.text;
  return `${kj.text} / ${kcal.amount} kcal`;
}

/** The rows of an EU panel, in the law's order. */
export function euPanel(sums: NutrientSums, extras?: LabelExtras): readonly LabelRow[] {
  const eu = euSums(sums, extras);
  const figureOf = (text: string): LabelFigure => ({ text, dailyValue: null });
  return [
    { name: "Energy", isPart: false, figure: figureOf(euEnergy(eu)) },
    ...PANEL.map(({ key, name, isPart }) => ({
      name,
      isPart,
      figure: figureOf(euGrams(eu, key)),
    })),
  ];
}
