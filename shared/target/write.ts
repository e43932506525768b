import { writeMassG } from "../nutrition/write.ts";
import { TARGET_KEYS, type TargetFigures, type TargetKey } from "./types.ts";

/** The names of the figures, as members read and type them. */
export const TARGET_NAMES: Readonly<Record<TargetKey, string>> = {
  energyKcal: "energy",
  proteinG: "protein",
  fatG: "fat",
  carbohydrateG: "carbohydrate",
  fibreG: "fibre",
};

/** Energy with its thousands parted: "2,100 kcal". */
export function writeKcal(kcal: number): string {
  return `${String(Math.round(kcal)).replace(/\B(?=(?:\d{3})+$)/gu, ",")} kcal`;
}

/** One figure with its unit: "2,100 kcal", "120 g". */
export function writeTargetFigure(key: TargetKey, value: number): string {
  return key === "energyKcal" ? writeKcal(value) : writeMassG(value);
}

/** A day's figures in one line: "2,100 kcal · protein 120 g"; "no target" without any. */
export function writeTarget(
  figures: TargetFigures,
  keys: readonly TargetKey[] = TARGET_KEYS,
): string {
  const parts = keys.flatMap((key) => {
    const value = figures[key];
    if (value === undefined) return [];
    const figure = writeTargetFigure(key, value);
    return [key === "energyKcal" ? figure : `${TARGET_NAMES[key]} ${figure}`];
  });
  return parts.length === 0 ? "no target" : parts.join(" · ");
}
