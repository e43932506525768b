import { fail, type Outcome, ok } from "../outcome.ts";
import { fold } from "../words/fold.ts";
import { excerpt } from "../words/problems.ts";
import { numberAtStart } from "../words/read-number.ts";
import { rangeFault } from "./plausible.ts";
import type { FigureProblem } from "./problems.ts";
import type { TargetKey } from "./types.ts";

/** Kilojoules in a kilocalorie: the thermochemical calorie (NIST SP 811, 2008, Appendix B.8). */
const KJ_PER_KCAL = 4.184;

const ENERGY_UNITS: Readonly<Record<string, number>> = {
  "": 1,
  kcal: 1,
  kcals: 1,
  cal: 1,
  cals: 1,
  calorie: 1,
  calories: 1,
  kilocalories: 1,
  kj: 1 / KJ_PER_KCAL,
  kilojoules: 1 / KJ_PER_KCAL,
  mj: 1000 / KJ_PER_KCAL,
};
const MASS_UNITS: Readonly<Record<string, number>> = {
  "": 1,
  g: 1,
  gram: 1,
  grams: 1,
  gramme: 1,
  grammes: 1,
};
const NO_TARGET = new Set(["none", "no", "off"]);

/**
 * Reads a day's figure as typed: "2100", "2,100 kcal", "2 100", "8800 kJ", "120 g", "62,5 g a day". Kcal for
 * energy, grams for the rest; null for "none", which takes the figure away.
 */
export function readTargetFigure(
  key: TargetKey,
  text: string,
): Outcome<number | null, FigureProblem> {
  const said = fold(text.slice(0, 60))
    .replace(/ ?(?:\/|\b(?:a|per|each)\b) ?day$/u, "")
    .trim();
  if (NO_TARGET.has(said)) return ok(null);
  const joined = said.replace(/^(\d{1,3})[ '’](\d{3})(?!\d)/u, "$1$2");
  const number = numberAtStart(joined);
  const notUnderstood = fail({ code: "figure not understood" as const, key, text: excerpt(text) });
  if (!number.ok) return notUnderstood;
  if (number.value.to !== null)
    return fail({ code: "figure is a range", key, text: excerpt(text) });
  const units = key === "energyKcal" ? ENERGY_UNITS : MASS_UNITS;
  const unit = number.value.rest.trim().replace(/\.$/u, "");
  const factor = Object.hasOwn(units, unit) ? units[unit] : undefined;
  if (factor === undefined) return notUnderstood;
  const value = number.value.value * factor;
  const fault = rangeFault(key, value);
  return fault === null ? ok(value) : fail(fault);
}
