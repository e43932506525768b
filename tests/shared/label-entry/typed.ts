import { checkLabel } from "../../../shared/label-entry/check.ts";
import type { LabelFinding } from "../../../shared/label-entry/finding.ts";
import type { LabelProblem } from "../../../shared/label-entry/problems.ts";
import { readLabel, type TypedLabel } from "../../../shared/label-entry/read-label.ts";
import type { Label } from "../../../shared/label-entry/types.ts";
import type { Nutrients } from "../../../shared/nutrition/types.ts";

/** An EU label of an invented crispbread that has nothing wrong. */
export const CRISPBREAD: TypedLabel = {
  per: "100 g",
  energy: "1448 kJ / 344 kcal",
  protein: "9.5 g",
  fat: "1.7 g",
  carbohydrate: "64 g",
  saturates: "0.3 g",
  fibre: "16 g",
  sugars: "1.2 g",
  salt: "1.2 g",
};

export const LIKE: Nutrients = {
  energyKcal: 366,
  proteinG: 8,
  fatG: 1.3,
  saturatedFatG: 0.1,
  carbohydrateG: 82,
  fibreG: 16.5,
  sugarsG: 1.1,
  sodiumMg: 410,
};

export function labelOf(change: Partial<TypedLabel> = {}, style: "us" | "eu" = "eu"): Label {
  const read = readLabel({ ...CRISPBREAD, ...change }, style);
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  return read.value;
}

export function problemsOf(
  change: Partial<TypedLabel>,
  style: "us" | "eu" = "eu",
): readonly LabelProblem[] {
  const read = readLabel({ ...CRISPBREAD, ...change }, style);
  return read.ok ? [] : read.problem;
}

export function findingsOf(
  change: Partial<TypedLabel>,
  style: "us" | "eu" = "eu",
): readonly LabelFinding[] {
  return checkLabel(labelOf(change, style), LIKE);
}
