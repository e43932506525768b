import { euTolerance } from "../label/tolerance.ts";
import type { Nutrients } from "../nutrition/types.ts";
import { energyFindings } from "./check-energy.ts";
import { mostG, NONE, SALT_PER_SODIUM, saltOf, timesFigure } from "./figures.ts";
import type { LabelFinding } from "./finding.ts";
import type { Label, PackFigure } from "./types.ts";

/** Pure sodium chloride has 39.34 % sodium by its atomic weights (22.99 of 58.44). */
const SODIUM_SHARE_OF_SALT = 0.3934;
/** Protein, fat and the rest are measured apart and may pass the whole by this: common practice, no published source. */
const MEASURED_APART_SHARE = 0.01;
/** Above this, and this many times its like, salt looks like a slip: common practice, no published source. */
const SALTY_G_PER_100G = 5;
const SALTIER_TIMES = 4;

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

function massFindings(label: Label): readonly LabelFinding[] {
  const fibre = label.style === "eu" ? label.fibreG : null;
  // Of salt only the sodium is sure: a label counts the sodium of baking powder and glutamate as salt too.
  const salt = timesFigure(saltOf(label) ?? NONE, 1 / SALT_PER_SODIUM);
  const parts = [label.proteinG, label.fatG, label.carbohydrateG, fibre ?? NONE, salt];
  const sum = (end: "value" | "low") =>
    parts.reduce((total, part) => total + part[end], label.alcoholG);
  const { basisG } = label;
  return sum("low") > mostG(label) * (1 + MEASURED_APART_SHARE)
    ? [{ severity: "impossible", code: "more than the mass", sumG: sum("value"), basisG }]
    : [];
}

function partFindings(label: Label): readonly LabelFinding[] {
  const { saturatesG, sugarsG, fibreG, fatG, carbohydrateG, style } = label;
  const saturates = howFarAbove(label, "saturatedFatG", saturatesG, fatG);
  const sugars = howFarAbove(label, "sugarsG", sugarsG, carbohydrateG);
  // 21 CFR 101.9(c)(6): total carbohydrate is by difference and has the fibre in it.
  const fibre = style === "us" ? howFarAbove(label, "fibreG", fibreG, carbohydrateG) : null;
  const both = (sugarsG?.low ?? 0) + (fibreG?.low ?? 0);
  const isTooMuch =
    style === "us" && both > carbohydrateG.high && sugars === null && fibre === null;
  return [
    ...(saturates === null ? [] : [{ severity: saturates, code: "saturates above fat" } as const]),
    ...(sugars === null ? [] : [{ severity: sugars, code: "sugars above carbohydrate" } as const]),
    ...(fibre === null ? [] : [{ severity: fibre, code: "fibre above carbohydrate" } as const]),
    ...(isTooMuch
      ? [{ severity: "doubtful", code: "sugars and fibre above carbohydrate" } as const]
      : []),
  ];
}

/**
 * How bad it is that a part is above its whole; null where it is not, also when both were rounded against
 * each other. Within what the two measurements may differ it is only odd (`euTolerance`).
 */
function howFarAbove(
  { basisG }: Label,
  nutrient: "saturatedFatG" | "sugarsG" | "fibreG",
  part: PackFigure | null,
  whole: PackFigure,
): LabelFinding["severity"] | null {
  if (part === null || part.low <= whole.high) return null;
  const least = euTolerance(nutrient, (part.low * 100) / basisG).least;
  return least > (whole.high * 100) / basisG ? "impossible" : "doubtful";
}

function saltFindings(label: Label, like: Nutrients): readonly LabelFinding[] {
  const { saltG, sodiumMg } = label;
  const leastSodiumG = (saltOf(label)?.low ?? 0) / SALT_PER_SODIUM;
  if (leastSodiumG > SODIUM_SHARE_OF_SALT * mostG(label)) {
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
