import type { LabelStyle } from "../label/types.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import { readAmount } from "../quantity/read-amount.ts";
import type { Amount } from "../quantity/types.ts";
import { massUnitG, volumeUnitMl } from "../quantity/unit.ts";
import { fold } from "../words/fold.ts";
import { excerpt } from "../words/problems.ts";
import type { LabelProblem } from "./problems.ts";
import type { LabelBasis } from "./types.ts";

/** A serving outside of this is a slip; a spray of oil is a quarter of a gram. */
const LEAST = 0.2;
const MOST = 2000;

/**
 * What a label's figures are for: "100 g", "100 ml", "serving 30 g", "serving 250 ml", "2 tbsp (32 g)",
 * "3 crackers (30 g)", "240 ml (245 g)". Grams or millilitres are needed, as 21 CFR 101.9(b)(7) and
 * Regulation 1169/2011 Art. 33 have them on the pack; ounces and cups alone are refused. Where a volume
 * and its weight both stand there, the density follows.
 */
export function readPer(text: string, style: LabelStyle): Outcome<LabelBasis, LabelProblem> {
  const folded = fold(text.slice(0, 80)).replace(/^per /u, "");
  const bare = folded
    .replace(/^(?:(?:a|one|1) )?(?:serving|portion)(?: size)?(?: of)?(?: ?[:=])? ?/u, "")
    .replace(/^\(([^()]*)\)$/u, "$1");
  const read = readAmount(bare);
  if (!read.ok) return fail({ code: "per not understood", text: excerpt(text) });
  const sized = read.value.stated ?? read.value.amount;
  const metric = metricOf(sized);
  if (metric === null) {
    return fail({ code: "per without grams or millilitres", text: excerpt(text) });
  }
  const isAllRead =
    read.value.stated !== null || /^(?:\(.*\)|serving|portion)?$/u.test(read.value.rest);
  if (!isAllRead || sized.to !== null)
    return fail({ code: "per not understood", text: excerpt(text) });
  if (metric.amount < LEAST || metric.amount > MOST) {
    return fail({ code: "per out of range", least: LEAST, most: MOST });
  }
  const isServing = bare !== folded || metric.amount !== 100;
  return ok({
    ...metric,
    isServing,
    halfStep: isServing ? servingHalfStep(metric.amount) : 0,
    densityGPerMl: metric.unit === "g" ? densityIn(bare, metric.amount, style) : null,
  });
}

function metricOf({ value, unit }: Amount): Pick<LabelBasis, "amount" | "unit"> | null {
  if (unit === "g" || unit === "kg") return { amount: value * (massUnitG(unit) ?? 1), unit: "g" };
  if (unit === "ml" || unit === "cl" || unit === "l") {
    return { amount: value * (volumeUnitMl(unit, "label") ?? 1), unit: "ml" };
  }
  return null;
}

/**
 * A serving is stated to a whole gram or millilitre, to halves from 2 to 5, to tenths below 2 (21 CFR
 * 101.9(b)(7)(ii), from memory).
 */
function servingHalfStep(amount: number): number {
  if (amount > 5) return 0.5;
  return amount >= 2 ? 0.25 : 0.05;
}

/** Grams per millilitre of "2 tbsp (32 g)"; null where no volume stands before the brackets. */
function densityIn(bare: string, grams: number, style: LabelStyle): number | null {
  const outside = readAmount(bare.replace(/\([^()]*\)/gu, " "));
  const ml =
    outside.ok && outside.value.amount.to === null ? volumeMl(outside.value.amount, style) : null;
  return ml === null || !bare.includes("(") ? null : grams / ml;
}

/**
 * Millilitres of a volume as labels have it: spoons of 5 and 15 ml, a cup of 240 ml (21 CFR
 * 101.9(b)(5)(viii)), elsewhere the metric cup of 250 ml. Null for what is no volume.
 */
export function volumeMl({ value, unit }: Amount, style: LabelStyle): number | null {
  const oneMl = volumeUnitMl(unit, style === "us" ? "label" : "metric");
  return oneMl === null ? null : value * oneMl;
}
