import { roundGrams, roundTo } from "./round.ts";
import type { Amount, SpoonSet, Unit } from "./types.ts";
import { massUnitG, volumeUnitMl } from "./unit.ts";

const QUARTERS = ["", "¼", "½", "¾"];

/**
 * An amount written to suit the tools: whole grams from 10 g up and half grams below, kilograms where
 * two decimals say it exactly to 10 g, pounds with ounces to the quarter, spoons to the nearest
 * quarter, cups to the nearest quarter or third, pieces whole. An amount too small for its spoon moves to the next smaller one.
 */
export function writeAmount(amount: Amount, spoons: SpoonSet = "us"): string {
  if (amount.to === null) return writeOne(amount.value, amount.unit, spoons);
  const low = writeOne(amount.value, amount.unit, spoons);
  const high = writeOne(amount.to, amount.unit, spoons);
  if (low === high) return low;
  const unitOf = (text: string) => text.slice(text.lastIndexOf(" ") + 1);
  const isPlain = low.split(" ").length === 2 && unitOf(low) === unitOf(high);
  return isPlain ? `${low.slice(0, low.lastIndexOf(" "))}–${high}` : `${low}–${high}`;
}

/** Grams written for a kitchen scale: "7.5 g", "340 g", "1.2 kg", "1133 g". */
export function writeGrams(grams: number): string {
  const shown = roundGrams(grams);
  if (shown < 1000 || shown % 10 !== 0) return `${shown} g`;
  return `${shown / 1000} kg`;
}

function writeOne(value: number, unit: Unit, spoons: SpoonSet): string {
  switch (unit) {
    case "g":
    case "kg":
    case "mg":
      return writeMetricMass(value * (massUnitG(unit) ?? 1));
    case "oz":
      return writeOunces(value);
    case "lb":
      return writeOunces(value * 16);
    case "ml":
    case "cl":
    case "dl":
    case "l":
      return writeMillilitres(value * (volumeUnitMl(unit, spoons) ?? 1));
    case "piece":
      return writePieces(value);
    case "pinch":
      return writePinches(value);
    default:
      return writeSpoons(value, unit, spoons);
  }
}

function writeMetricMass(grams: number): string {
  // A scale that shows halves cannot weigh less; milligrams at least tell the truth.
  return grams < 0.25 ? `${Math.max(1, roundTo(grams * 1000, 1))} mg` : writeGrams(grams);
}

function writeMillilitres(ml: number): string {
  const shown = Math.max(0.5, roundGrams(ml));
  if (shown < 1000 || shown % 10 !== 0) return `${shown} ml`;
  return `${shown / 1000} l`;
}

/** Ounces to the quarter; from a pound up, pounds and ounces ("4 lb 5½ oz"). */
function writeOunces(ounces: number): string {
  const quarters = Math.max(1, roundTo(ounces * 4, 1));
  const pounds = Math.floor(quarters / 64);
  const rest = quarters - pounds * 64;
  const written = `${withQuarters(rest / 4)} oz`;
  if (pounds === 0) return written;
  return rest === 0 ? `${pounds} lb` : `${pounds} lb ${written}`;
}

function writePieces(value: number): string {
  // What the cook wrote as a fraction ("½ lemon") stays one; anything else goes to a whole.
  const isQuarter = Number.isInteger(roundTo(value * 4, 1e-6));
  return isQuarter || value < 0.875 ? withQuarters(Math.max(0.25, value)) : `${roundTo(value, 1)}`;
}

function writePinches(value: number): string {
  const shown = Math.max(1, roundTo(value, 1));
  return shown === 1 ? `a pinch` : `${shown} pinches`;
}

const NEXT_SMALLER: Readonly<
  Partial<Record<Unit, { readonly unit: Unit; readonly below: number }>>
> = {
  gallon: { unit: "quart", below: 0.5 },
  quart: { unit: "cup", below: 0.5 },
  pint: { unit: "cup", below: 0.5 },
  cup: { unit: "tbsp", below: 0.25 },
  "fl oz": { unit: "tbsp", below: 1 },
  tbsp: { unit: "tsp", below: 0.5 },
};

function writeSpoons(value: number, unit: Unit, spoons: SpoonSet): string {
  const smaller = NEXT_SMALLER[unit];
  if (smaller !== undefined && value < smaller.below) {
    const ml = value * (volumeUnitMl(unit, spoons) ?? 1);
    return writeSpoons(ml / (volumeUnitMl(smaller.unit, spoons) ?? 1), smaller.unit, spoons);
  }
  if (value < 1 / 16) return writePinches(1);
  const figure = value < 3 / 16 ? "⅛" : unit === "cup" ? withThirds(value) : withQuarters(value);
  const plural = unit === "cup" || unit === "pint" || unit === "quart" || unit === "gallon";
  return `${figure} ${unit}${plural && value >= 1.125 ? "s" : ""}`;
}

/** To the nearest quarter or third, whichever is nearer: a cup set has both ("⅔", "1¼"). */
function withThirds(value: number): string {
  const thirds = roundTo(value * 3, 1);
  const isThird =
    thirds % 3 !== 0 && Math.abs(value - thirds / 3) < Math.abs(value - roundTo(value * 4, 1) / 4);
  if (!isThird) return withQuarters(value);
  const whole = Math.floor(thirds / 3);
  return `${whole === 0 ? "" : whole}${thirds % 3 === 1 ? "⅓" : "⅔"}`;
}

/** To the nearest quarter: "¼", "1½", "3". */
function withQuarters(value: number): string {
  const quarters = roundTo(value * 4, 1);
  const whole = Math.floor(quarters / 4);
  const part = QUARTERS[quarters % 4] ?? "";
  return whole === 0 && part !== "" ? part : `${whole}${part}`;
}
