import type { Nutrients } from "../nutrition/types.ts";
import type { Label, PackFigure } from "./types.ts";

/**
 * What looks like a slip of the fingers. "impossible" cannot stand on any pack; "doubtful" can, and
 * is kept when the coach says so.
 */
export type LabelFinding = { readonly severity: "impossible" | "doubtful" } & (
  | { readonly code: "energies swapped" }
  | { readonly code: "energies apart"; readonly kcal: number; readonly kj: number }
  | { readonly code: "energy above pure fat"; readonly kcalPer100g: number }
  | {
      readonly code: "energy off the macros";
      readonly stated: number;
      readonly from: number;
      readonly to: number;
      readonly unit: "kcal" | "kJ";
      readonly side: "above" | "below";
    }
  | { readonly code: "more than the mass"; readonly sumG: number; readonly basisG: number }
  | { readonly code: "saturates above fat" }
  | { readonly code: "sugars above carbohydrate" }
  | { readonly code: "fibre above carbohydrate" }
  | { readonly code: "sugars and fibre above carbohydrate" }
  | {
      readonly code: "salt and sodium apart";
      readonly saltOfSodiumG: number;
      readonly saltG: number;
    }
  | { readonly code: "more sodium than salt has" }
  | { readonly code: "sodium below a milligram" }
  | {
      readonly code: "much saltier than its like";
      readonly saltPer100g: number;
      readonly likePer100g: number;
    }
);

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
/** Salt is sodium x 2.5 by Annex I; pure sodium chloride has 39.34 % sodium by its atomic weights. */
const SALT_PER_SODIUM = 2.5;
const SODIUM_SHARE_OF_SALT = 0.3934;
/** A spoon or a cup weighs a food to a few per cent: common practice, no published source. */
const DENSITY_SHARE = 0.03;
/** Above this, and this many times its like, salt looks like a slip: common practice, no published source. */
const SALTY_G_PER_100G = 5;
const SALTIER_TIMES = 4;

const NONE: PackFigure = { value: 0, low: 0, high: 0 };

/** All that looks wrong with a label, impossible things first. `like` are the figures of the table food it is like. */
export function checkLabel(label: Label, like: Nutrients): readonly LabelFinding[] {
  const found = [
    ...energyFindings(label),
    ...massFindings(label),
    ...partFindings(label),
    ...saltFindings(label, like),
  ];
  const isGrave = (finding: LabelFinding) => finding.severity === "impossible";
  return [...found.filter(isGrave), ...found.filter((finding) => !isGrave(finding))];
}

function energyFindings(label: Label): readonly LabelFinding[] {
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
  unit: "kcal" | "kJ",
): readonly LabelFinding[] {
  const { from, to } = energyOfMacros(label, unit);
  const floor = (ENERGY_FLOOR_KCAL * (unit === "kJ" ? 4.184 : 1) * label.basisG) / 100;
  const finding = { severity: "doubtful", code: "energy off the macros", unit, from, to } as const;
  if (stated.low > to * (1 + ENERGY_SHARE) + floor) {
    return [{ ...finding, stated: stated.value, side: "above" }];
  }
  return stated.high < from * (1 - ENERGY_SHARE) - floor
    ? [{ ...finding, stated: stated.value, side: "below" }]
    : [];
}

/**
 * The energy that the macros of the label may give. In a US label fibre is inside carbohydrate and counts
 * from nothing to 4 kcal (21 CFR 101.9(c)(1)(i)(B) and (C)); in an EU label it is outside and counts 2 kcal.
 */
function energyOfMacros(label: Label, unit: "kcal" | "kJ"): { from: number; to: number } {
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

/** The most grams that the basis may weigh. */
function mostG({ basis, basisG }: Label): number {
  const rounded = (basisG * (basis.amount + basis.halfStep)) / basis.amount;
  return basis.unit === "g" ? rounded : rounded * (1 + DENSITY_SHARE);
}

function massFindings(label: Label): readonly LabelFinding[] {
  const fibre = label.style === "eu" ? label.fibreG : null;
  const parts = [label.proteinG, label.fatG, label.carbohydrateG, fibre, saltOf(label)];
  const sum = (of: (figure: PackFigure) => number) =>
    parts.reduce((total, part) => total + (part === null ? 0 : of(part)), label.alcoholG);
  return sum((part) => part.low) > mostG(label)
    ? [
        {
          severity: "impossible",
          code: "more than the mass",
          sumG: sum((part) => part.value),
          basisG: label.basisG,
        },
      ]
    : [];
}

/** Salt in grams, from whichever the pack states. */
export function saltOf({ saltG, sodiumMg }: Label): PackFigure | null {
  return saltG ?? (sodiumMg === null ? null : timesFigure(sodiumMg, SALT_PER_SODIUM / 1000));
}

function timesFigure({ value, low, high }: PackFigure, times: number): PackFigure {
  return { value: value * times, low: low * times, high: high * times };
}

function partFindings(label: Label): readonly LabelFinding[] {
  const { saturatesG, sugarsG, fibreG, fatG, carbohydrateG, style } = label;
  const found: LabelFinding[] = [];
  if (isAbove(saturatesG, fatG)) {
    found.push({ severity: "impossible", code: "saturates above fat" });
  }
  if (isAbove(sugarsG, carbohydrateG)) {
    found.push({ severity: "impossible", code: "sugars above carbohydrate" });
  }
  if (style === "eu" || fibreG === null) return found;
  // 21 CFR 101.9(c)(6): total carbohydrate is by difference and has the fibre in it.
  if (isAbove(fibreG, carbohydrateG)) {
    found.push({ severity: "impossible", code: "fibre above carbohydrate" });
  } else if (sugarsG !== null && sugarsG.low + fibreG.low > carbohydrateG.high) {
    found.push({ severity: "doubtful", code: "sugars and fibre above carbohydrate" });
  }
  return found;
}

/** A part above the whole, also when both were rounded against each other. */
function isAbove(part: PackFigure | null, whole: PackFigure): boolean {
  return part !== null && part.low > whole.high;
}

function saltFindings(label: Label, like: Nutrients): readonly LabelFinding[] {
  const { saltG, sodiumMg } = label;
  if (sodiumMg !== null && sodiumMg.low / 1000 > SODIUM_SHARE_OF_SALT * mostG(label)) {
    return [{ severity: "impossible", code: "more sodium than salt has" }];
  }
  const both = saltG === null || sodiumMg === null ? [] : betweenSalts(saltG, sodiumMg);
  // Labels go to 5 mg: a fraction of one is grams under the wrong unit.
  const isFraction = sodiumMg !== null && sodiumMg.low > 0 && sodiumMg.value < 1;
  return [
    ...both,
    ...(isFraction
      ? [{ severity: "doubtful", code: "sodium below a milligram" } as const]
      : againstLike(label, like)),
  ];
}

function betweenSalts(saltG: PackFigure, sodiumMg: PackFigure): readonly LabelFinding[] {
  const fromSodium = timesFigure(sodiumMg, SALT_PER_SODIUM / 1000);
  return fromSodium.low > saltG.high || fromSodium.high < saltG.low
    ? [
        {
          severity: "doubtful",
          code: "salt and sodium apart",
          saltOfSodiumG: fromSodium.value,
          saltG: saltG.value,
        },
      ]
    : [];
}

function againstLike(label: Label, like: Nutrients): readonly LabelFinding[] {
  if (like.sodiumMg === null) return [];
  const { value, low } = timesFigure(saltOf(label) ?? NONE, 100 / label.basisG);
  const likePer100g = (like.sodiumMg * SALT_PER_SODIUM) / 1000;
  return low > SALTY_G_PER_100G && low > SALTIER_TIMES * likePer100g
    ? [
        {
          severity: "doubtful",
          code: "much saltier than its like",
          saltPer100g: value,
          likePer100g,
        },
      ]
    : [];
}
