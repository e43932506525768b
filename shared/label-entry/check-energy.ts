import { mostG, NONE, timesFigure } from "./figures.ts";
import type { EnergyUnit, LabelFinding } from "./finding.ts";
import type { Label, PackFigure } from "./types.ts";

/** Kilocalories and kilojoules of a gram: Regulation (EU) No 1169/2011, Annex XIV; 21 CFR 101.9(c)(1)(i)(B). */
const FACTORS = {
  kcal: { protein: 4, fat: 9, carbohydrate: 4, fibre: 2, alcohol: 7 },
  kJ: { protein: 17, fat: 37, carbohydrate: 17, fibre: 8, alcohol: 29 },
} as const;

/**
 * A declared energy may be off by a fifth: 21 CFR 101.9(g)(5). It also covers the food-specific factors that
 * 21 CFR 101.9(c)(1)(i)(A) allows, but for a few foods (cocoa, lemon juice, vinegar).
 */
const ENERGY_SHARE = 0.2;
/** Less than 5 kcal counts as none (21 CFR 101.9(c)(1)); here per 100 g. */
const ENERGY_FLOOR_KCAL = 5;
/** The highest specific factor of fat, kcal/g (USDA Agriculture Handbook 74, table 13). */
const PURE_FAT_KCAL = 9.02;
/** kJ of a kcal lie between those of fibre (8/2) and of organic acids (13/3) in Annex XIV. */
const KJ_PER_KCAL = { least: 8 / 2, most: 13 / 3 } as const;

/** What looks wrong with the energy: its two units beside each other, and beside the macros. */
export function energyFindings(label: Label): readonly LabelFinding[] {
  const { energyKcal: kcal, energyKj: kj } = label;
  const between = kcal === null || kj === null ? [] : betweenEnergies(kcal, kj);
  if (between.length > 0) return between;
  const stated = kcal ?? (kj === null ? NONE : timesFigure(kj, 1 / 4.184));
  if (stated.low > PURE_FAT_KCAL * mostG(label)) {
    const kcalPer100g = (stated.value * 100) / label.basisG;
    return [{ severity: "impossible", code: "energy above pure fat", kcalPer100g }];
  }
  if (kcal !== null) return againstMacros(label, kcal, "kcal");
  return kj === null ? [] : againstMacros(label, kj, "kJ");
}

function betweenEnergies(kcal: PackFigure, kj: PackFigure): readonly LabelFinding[] {
  if (kj.high < kcal.low) return [{ severity: "impossible", code: "energies swapped" }];
  const isApart = kj.high < KJ_PER_KCAL.least * kcal.low || kj.low > KJ_PER_KCAL.most * kcal.high;
  return isApart
    ? [{ severity: "doubtful", code: "energies apart", kcal: kcal.value, kj: kj.value }]
    : [];
}

/** Energy beside what the macros give, with what rounding hides and the fifth that the law allows. */
function againstMacros(
  label: Label,
  stated: PackFigure,
  unit: EnergyUnit,
): readonly LabelFinding[] {
  const side = sideOf(label, stated, unit);
  if (side === null) return [];
  const other = unit === "kcal" ? "kJ" : "kcal";
  const { value } = stated;
  const { from, to } = energyOfMacros(label, unit);
  // Where the pack's two energies agree, the unit is not what is wrong.
  const isAlone = label.energyKcal === null || label.energyKj === null;
  return [
    isAlone && sideOf(label, stated, other) === null
      ? { severity: "doubtful", code: "energy in the other unit", stated: value, unit, other }
      : {
          severity: "doubtful",
          code: "energy off the macros",
          stated: value,
          unit,
          from,
          to,
          side,
        },
  ];
}

function sideOf(label: Label, stated: PackFigure, unit: EnergyUnit): "above" | "below" | null {
  const { from, to } = energyOfMacros(label, unit);
  const floor = (ENERGY_FLOOR_KCAL * (unit === "kJ" ? 4.184 : 1) * label.basisG) / 100;
  if (stated.low > to * (1 + ENERGY_SHARE) + floor) return "above";
  return stated.high < from * (1 - ENERGY_SHARE) - floor ? "below" : null;
}

/**
 * The energy that the macros of the label may give. In a US label fibre is inside carbohydrate and counts
 * from nothing to 4 kcal (21 CFR 101.9(c)(1)(i)(B) and (C)); in an EU label it is outside and counts 2 kcal.
 */
function energyOfMacros(label: Label, unit: EnergyUnit): { from: number; to: number } {
  const factors = FACTORS[unit];
  const fibre = label.fibreG ?? NONE;
  const sum = (end: "low" | "high") =>
    factors.protein * label.proteinG[end] +
    factors.fat * label.fatG[end] +
    factors.alcohol * label.alcoholG;
  const carbohydrate = label.carbohydrateG;
  if (label.style === "eu") {
    const rest = (end: "low" | "high") =>
      factors.carbohydrate * carbohydrate[end] + factors.fibre * fibre[end];
    return { from: sum("low") + rest("low"), to: sum("high") + rest("high") };
  }
  const digestible = Math.max(0, carbohydrate.low - fibre.high);
  return {
    from: sum("low") + factors.carbohydrate * digestible,
    to: sum("high") + factors.carbohydrate * carbohydrate.high,
  };
}
