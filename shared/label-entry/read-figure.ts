import type { LabelStyle } from "../label/types.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import { fold } from "../words/fold.ts";
import { excerpt } from "../words/problems.ts";
import type { LabelField, LabelProblem } from "./problems.ts";
import type { PackFigure } from "./types.ts";

/** A number with its unit as a pack prints it. */
export interface Printed {
  readonly value: number;
  /** Half of the last digit's place: "12" is 11.5 to 12.5, "1.2" is 1.15 to 1.25. */
  readonly halfDigit: number;
  /** "<0.5 g", "less than 1 g". */
  readonly isBelow: boolean;
  /** In lower case; empty where none stands there. */
  readonly unit: string;
  /** What follows, folded. */
  readonly rest: string;
}

// Anchored, with bounded and disjoint repeats: linear in the text.
const BELOW = /^(?:<=? ?|≤ ?|(?:less than|below|under) )/u;
const NUMBER = /^(?:\d{1,3}(?: \d{3}){1,2}(?![\d.,])|[\d.,]{1,12})/u;
const UNIT = /^ ?([a-z]{1,14}|%)?/u;
/** Units in which a pack states whole numbers, so that a mark before three digits parts thousands. */
const WHOLE_UNITS = new Set(["mg", "kj", "kcal", "cal", "cals", "calorie", "calories"]);

/** The figure that a folded text starts with; null when it starts with none. */
export function printedAtStart(text: string): Printed | null {
  const below = BELOW.exec(text)?.[0] ?? "";
  const digits = NUMBER.exec(text.slice(below.length))?.[0] ?? "";
  const after = text.slice(below.length + digits.length);
  const found = UNIT.exec(after);
  const unit = found?.[1] ?? "";
  const number = numberOf(digits, WHOLE_UNITS.has(unit));
  if (number === null) return null;
  const rest = after.slice(unit === "" ? 0 : (found?.[0].length ?? 0)).trim();
  return { ...number, isBelow: below !== "", unit, rest };
}

/**
 * "1,2" and "1.2" are one and two tenths. In whole units "2.080", "2,080" and "2 080" are two thousand:
 * no pack states thousandths of a kilojoule.
 */
function numberOf(digits: string, isWhole: boolean): { value: number; halfDigit: number } | null {
  if (isWhole && /^[1-9]\d{0,2}(?:[ .,]\d{3}){1,2}$/u.test(digits)) {
    return { value: Number(digits.replace(/[ .,]/gu, "")), halfDigit: 0.5 };
  }
  const match = /^(\d{1,6})?(?:[.,](\d{1,6}))?$/u.exec(digits);
  if (match === null || digits === "") return null;
  const decimals = match[2] ?? "";
  return {
    value: Number(`${match[1] ?? "0"}.${decimals === "" ? "0" : decimals}`),
    halfDigit: 0.5 * 10 ** -decimals.length,
  };
}

/** "-3 g", which no pack states. */
export function isNegative(folded: string): boolean {
  return /^- ?[\d.,]/u.test(folded);
}

/**
 * What is declared as 0 may be up to this: below 0.5 g (21 CFR 101.9(c); European Commission, Guidance
 * on tolerances (2012), rounding table).
 */
const ZERO_G = 0.5;

/**
 * Half of the step that a US label rounds to, in grams: fat to 0.5 g below 5 g and to 1 g above, the
 * others to 1 g (21 CFR 101.9(c)(2), (c)(6), (c)(7)).
 */
function usHalfStepG(field: LabelField, valueG: number): number {
  const isFat = field === "fat" || field === "saturates";
  return isFat && valueG < 5 ? 0.25 : 0.5;
}

/** The figure with what rounding hides. EU figures are as exact as their last digit. */
export function figureOf(printed: Printed, halfStep: number, zeroHigh: number): PackFigure {
  const { value, isBelow, halfDigit } = printed;
  if (isBelow) return { low: 0, value: value / 2, high: value };
  const half = Math.max(halfDigit, halfStep);
  const high = value === 0 ? Math.max(half, zeroHigh) : value + half;
  return { low: Math.max(0, value - half), value, high };
}

/** A mass of a label in grams: "12", "12 g", "0,5 g", "<0.5 g", "480 mg". Without a unit it is grams. */
export function readMass(
  text: string,
  field: LabelField,
  style: LabelStyle,
): Outcome<PackFigure, LabelProblem> {
  const folded = fold(text.slice(0, 60));
  if (isNegative(folded)) return fail({ code: "figure below zero", field, text: excerpt(text) });
  const printed = printedAtStart(folded);
  const factor = printed === null || printed.rest !== "" ? null : massUnit(printed.unit);
  if (printed === null || factor === null) {
    return fail({ code: "figure not understood", field, text: excerpt(text) });
  }
  const grams = inUnit(printed, factor);
  return ok(figureOf(grams, style === "us" ? usHalfStepG(field, grams.value) : 0, ZERO_G));
}

function massUnit(unit: string): number | null {
  if (["", "g", "gr", "gram", "grams"].includes(unit)) return 1;
  return unit === "mg" ? 0.001 : null;
}

/** The figure in another unit. */
export function inUnit(printed: Printed, factor: number): Printed {
  return {
    ...printed,
    value: printed.value * factor,
    halfDigit: printed.halfDigit * factor,
  };
}
