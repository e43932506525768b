import { fail, type Outcome, ok } from "../outcome.ts";
import { fold } from "../words/fold.ts";
import { excerpt } from "../words/problems.ts";
import { numberAtStart } from "../words/read-number.ts";
import type { FigureRange } from "./types.ts";

/** What can be wrong with a range of a figure as typed. */
export type RangeProblem =
  | { readonly code: "range not understood"; readonly text: string }
  /** A lone figure for energy: nobody knows which side of it is meant. */
  | { readonly code: "range needs a side"; readonly figure: number }
  | { readonly code: "range backwards"; readonly from: number; readonly to: number };

/** Kilojoules in a kilocalorie: the thermochemical calorie (NIST SP 811, 2008, Appendix B.8). */
const KJ_PER_KCAL = 4.184;

const ENERGY_UNITS: ReadonlyMap<string, number> = new Map([
  ["", 1],
  ["kcal", 1],
  ["cal", 1],
  ["calories", 1],
  ["kj", 1 / KJ_PER_KCAL],
]);
const MASS_UNITS: ReadonlyMap<string, number> = new Map([
  ["", 1],
  ["g", 1],
  ["gram", 1],
  ["grams", 1],
]);

type Side = "from" | "to";

const SIDES: readonly (readonly [Side, RegExp])[] = [
  ["from", /^(?:at least|min(?:imum)?|over|above|more than|from|>=?|≥)(?![a-z])[. ]*/u],
  ["to", /^(?:at most|max(?:imum)?|up to|under|below|less than|<=?|≤)(?![a-z])[. ]*/u],
];
const SIDES_AFTER: readonly (readonly [Side, RegExp])[] = [
  ["from", / ?(?:\+|(?:or|and) (?:more|over|above)|at least|min(?:imum)?)$/u],
  ["to", / ?(?:(?:or|and) (?:less|under|below)|at most|max(?:imum)?)$/u],
];

/** Reads a range of energy: "400-600", "under 500", "at least 300 kcal", "1600 to 2400 kJ". In kcal. */
export function readEnergyRange(text: string): Outcome<FigureRange, RangeProblem> {
  return readRange(text, ENERGY_UNITS, null);
}

/** Reads a range of protein, grams: "at least 30", "30-45 g"; a lone "30 g" is at least that. */
export function readProteinRange(text: string): Outcome<FigureRange, RangeProblem> {
  return readRange(text, MASS_UNITS, "from");
}

/** `lone` is what a figure without a side means; null where it could be either. */
function readRange(
  text: string,
  units: ReadonlyMap<string, number>,
  lone: Side | null,
): Outcome<FigureRange, RangeProblem> {
  const notUnderstood = fail({ code: "range not understood" as const, text: excerpt(text) });
  const { side, rest } = sideOf(said(text));
  const figures = figuresIn(rest, units);
  if (figures === null) return notUnderstood;
  const { from, to } = figures;
  if (to !== null) {
    if (side !== null) return notUnderstood;
    return to < from ? fail({ code: "range backwards", from, to }) : ok({ from, to });
  }
  const meant = side ?? lone;
  if (meant === null) return fail({ code: "range needs a side", figure: Math.round(from) });
  return ok(meant === "from" ? { from, to: null } : { from: null, to: from });
}

/** Folded, without what goes without saying. */
function said(text: string): string {
  return fold(text.slice(0, 60))
    .replace(/^between (.+) and /u, "$1 to ")
    .replace(/^(?:protein|energy|calories) /u, "")
    .replace(/ ?(?:\/|\b(?:a|per|each)\b) ?(?:portion|serving)$/u, "")
    .replace(/ (?:of )?protein$/u, "")
    .trim();
}

function sideOf(text: string): { readonly side: Side | null; readonly rest: string } {
  for (const [side, pattern] of [...SIDES, ...SIDES_AFTER]) {
    const rest = text.replace(pattern, "");
    if (rest !== text) return { side, rest: rest.trim() };
  }
  return { side: null, rest: text };
}

/** "400", "400-600 kcal" or "400 kcal to 600 kcal"; null when it is none of them. */
function figuresIn(
  text: string,
  units: ReadonlyMap<string, number>,
): { readonly from: number; readonly to: number | null } | null {
  const parts = text.split(/ ?(?:-| to ) ?/u);
  const read = parts.map((part) => figureIn(part, units));
  const [first, second] = read;
  if (read.length > 2 || first === undefined || first === null || second === null) return null;
  if (second === undefined) return { from: times(first.value, first.factor ?? 1), to: null };
  const factor = second.factor ?? first.factor ?? 1;
  return { from: times(first.value, first.factor ?? factor), to: times(second.value, factor) };
}

/** Without the dust that a division leaves in the last places. */
function times(value: number, factor: number): number {
  return Number((value * factor).toPrecision(12));
}

function figureIn(
  text: string,
  units: ReadonlyMap<string, number>,
): { readonly value: number; readonly factor: number | null } | null {
  const number = numberAtStart(text);
  if (!number.ok || number.value.to !== null) return null;
  const unit = number.value.rest.trim().replace(/\.$/u, "");
  const factor = units.get(unit);
  if (factor === undefined) return null;
  return { value: number.value.value, factor: unit === "" ? null : factor };
}
