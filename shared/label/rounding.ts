import type { BoundedAmount } from "./types.ts";

/** What a label says of amounts in one band of a regulation's rounding table. */
type Band = {
  /** The band holds amounts below this, or up to and including it; the last band holds the rest. */
  readonly below?: number;
  readonly through?: number;
} & (
  | { readonly say: "zero" }
  | { readonly say: "less than"; readonly limit: number }
  | { readonly say: "nearest"; readonly step: number }
);

/** Rounding of one nutrient: bands in ascending order, the last one open. */
export interface RoundingRule {
  readonly unit: "kcal" | "kJ" | "g" | "mg";
  readonly bands: readonly Band[];
}

export interface Declared {
  /** With its unit: "12 g", "less than 1 g", "at least 230 kcal", "not known". */
  readonly text: string;
  /** The number printed; null where none is ("less than 1 g", "not known"). */
  readonly amount: number | null;
}

const NOT_KNOWN: Declared = { text: "not known", amount: null };

/**
 * An amount as the rule prints it; the tie goes up (common practice, no published source). A lower bound
 * is rounded down and an upper bound up, for a bound that was rounded the other way would not hold.
 */
export function declare(rule: RoundingRule, { amount, bound }: BoundedAmount): Declared {
  const band = bandOf(rule, amount);
  if (band === undefined) return NOT_KNOWN;
  if (bound === "at least") return declareLower(rule, band, amount);
  if (bound === "up to") return declareUpper(rule, band, amount);
  if (band.say === "less than") {
    return { text: `less than ${band.limit} ${rule.unit}`, amount: null };
  }
  const printed = band.say === "zero" ? 0 : roundTo(amount, band.step, "nearest");
  return { text: `${printed} ${rule.unit}`, amount: printed };
}

/** A lower bound that shows as nothing says nothing. */
function declareLower({ unit }: RoundingRule, band: Band, amount: number): Declared {
  const printed = band.say === "nearest" ? roundTo(amount, band.step, "down") : 0;
  return printed === 0 ? NOT_KNOWN : { text: `at least ${printed} ${unit}`, amount: printed };
}

function declareUpper({ unit }: RoundingRule, band: Band, amount: number): Declared {
  if (amount === 0) return { text: `0 ${unit}`, amount: 0 };
  const printed = upperOf(band, amount);
  return { text: `up to ${printed} ${unit}`, amount: printed };
}

function bandOf({ bands }: RoundingRule, amount: number): Band | undefined {
  const exact = tidy(amount);
  return bands.find(
    ({ below, through }) =>
      exact < (below ?? Number.POSITIVE_INFINITY) && exact <= (through ?? Number.POSITIVE_INFINITY),
  );
}

/** What small amounts are rounded up to when nothing may be rounded away. */
function upperOf(band: Band, amount: number): number {
  if (band.say === "nearest") return roundTo(amount, band.step, "up");
  return band.say === "less than" ? band.limit : (band.below ?? band.through ?? amount);
}

function roundTo(amount: number, step: number, toward: "nearest" | "down" | "up"): number {
  const steps = tidy(amount / step);
  const whole = { nearest: Math.round, down: Math.floor, up: Math.ceil }[toward](steps);
  return tidy(whole * step);
}

/** Binary fractions leave dust in the last places, which must not push an amount over a boundary. */
function tidy(value: number): number {
  return Number(value.toPrecision(12));
}
