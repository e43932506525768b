import type { Nutrients } from "../nutrition/types.ts";
import { energyFindings } from "./check-energy.ts";
import { mostG, NONE, SALT_PER_SODIUM, saltOf, timesFigure } from "./figures.ts";
import type { LabelFinding } from "./finding.ts";
import type { Label, PackFigure } from "./types.ts";

/** Pure sodium chloride has 39.34 % sodium by its atomic weights (22.99 of 58.44). */
const SODIUM_SHARE_OF_SALT = 0.3934;
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
