import type { NutrientKey } from "../nutrition/types.ts";

/** How far food may lie from its label before the label misleads. */
interface Band {
  readonly least: number;
  readonly most: number;
}

type EuNutrient = Exclude<NutrientKey, "energyKcal" | "sodiumMg"> | "saltG";

/** Below `few` grams a fixed width, then a share, above `many` grams a fixed width again. */
interface EuWidths {
  readonly few: number;
  readonly fewG: number;
  readonly many: number;
  readonly manyG: number;
}

const SHARE = 0.2;
const NEVER = Number.POSITIVE_INFINITY;
const MACRO: EuWidths = { few: 10, fewG: 2, many: 40, manyG: 8 };

/**
 * European Commission, guidance on tolerances for nutrient values declared on a label (December 2012),
 * table 1: foods with nothing added, measurement uncertainty included. From memory.
 */
const EU: Readonly<Record<EuNutrient, EuWidths>> = {
  carbohydrateG: MACRO,
  sugarsG: MACRO,
  proteinG: MACRO,
  fibreG: MACRO,
  fatG: { few: 10, fewG: 1.5, many: 40, manyG: 8 },
  saturatedFatG: { few: 4, fewG: 0.8, many: NEVER, manyG: 0 },
  saltG: { few: 1.25, fewG: 0.375, many: NEVER, manyG: 0 },
};

/** What a measurement may find in a food that declares `declaredG` grams per 100 g. */
export function euTolerance(nutrient: EuNutrient, declaredG: number): Band {
  const { few, fewG, many, manyG } = EU[nutrient];
  const width = declaredG < few ? fewG : declaredG <= many ? SHARE * declaredG : manyG;
  return { least: Math.max(0, declaredG - width), most: declaredG + width };
}

/** 21 CFR 101.9(g)(4)(ii) "class II", naturally present; (g)(5) the group that must not exceed. */
const US_AT_LEAST: readonly NutrientKey[] = ["proteinG", "fibreG", "carbohydrateG"];

/**
 * What a measurement may find in a food that declares `declared` in the nutrient's own unit: at least
 * 80 % of protein, fibre and carbohydrate, at most 120 % of energy, sugars, fats and sodium; reasonable
 * differences the other way are lawful (101.9(g)(4) to (g)(6)).
 */
export function usTolerance(nutrient: NutrientKey, declared: number): Band {
  return US_AT_LEAST.includes(nutrient)
    ? { least: 0.8 * declared, most: NEVER }
    : { least: 0, most: 1.2 * declared };
}
