import type { LabelStyle } from "../label/types.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import { readAmount } from "../quantity/read-amount.ts";
import type { Amount } from "../quantity/types.ts";
import { massUnitG } from "../quantity/unit.ts";
import { unitAtStart } from "../quantity/unit-words.ts";
import { fold } from "../words/fold.ts";
import { singular } from "../words/plural.ts";
import { excerpt } from "../words/problems.ts";
import type { LabelProblem } from "./problems.ts";
import { printedAtStart } from "./read-figure.ts";
import { volumeMl } from "./read-per.ts";
import type { LabelBasis } from "./types.ts";

/** No food weighs more than this: honey has 1.4 g/ml, table salt 1.2 g/ml. */
const DENSITY_MOST = 2;
const DENSITY_LEAST = 0.01;
/** The most that one of anything weighs, and the longest word for it. */
const ONE_MOST_G = 5000;

const EQUALS = /^(.{1,40}?) ?(?:=|:| is | are | weighs? ) ?(.{1,20})$/u;

/** Grams per millilitre from "1 tbsp = 15 g", "100 ml = 103 g", "1.03 g/ml" or "1.03". */
export function readDensity(text: string, style: LabelStyle): Outcome<number, LabelProblem> {
  const folded = fold(text.slice(0, 60));
  const density = densityOf(folded, style);
  if (density === null) return fail({ code: "density not understood", text: excerpt(text) });
  return density < DENSITY_LEAST || density > DENSITY_MOST
    ? fail({ code: "density impossible", gPerMl: density, most: DENSITY_MOST })
    : ok(density);
}

function densityOf(folded: string, style: LabelStyle): number | null {
  const sides = EQUALS.exec(folded);
  if (sides === null) return plainDensity(folded);
  const both = [sides[1] ?? "", sides[2] ?? ""].map(wholeAmount).filter((side) => side !== null);
  const grams = both.map(massG).find((g) => g !== null) ?? null;
  const ml = both.map((side) => volumeMl(side, style)).find((v) => v !== null) ?? null;
  return grams === null || ml === null || ml === 0 ? null : grams / ml;
}

/** "1.03", "1.03 g/ml", "1.03 g per ml", "1.03 kg/l". */
function plainDensity(folded: string): number | null {
  const printed = printedAtStart(folded);
  if (printed === null || printed.isBelow) return null;
  const unit = `${printed.unit}${printed.rest.replace(/ /gu, "")}`;
  return ["", "g/ml", "gperml", "kg/l", "kgperl"].includes(unit) ? printed.value : null;
}

/** What one weighs: "1 slice = 35 g", "2 slices = 70 g", "slice 35 g". */
export function readOneWeight(
  text: string,
): Outcome<{ readonly word: string; readonly grams: number }, LabelProblem> {
  const match =
    /^(?:(\d{1,3}|an?|one) )?([a-z][a-z '-]{0,19}?) ?(?:=|:| is | are | weighs? | )? ?(\d.{0,12})$/u.exec(
      fold(text.slice(0, 60)),
    );
  const count = /^\d/u.test(match?.[1] ?? "") ? Number(match?.[1]) : 1;
  const weight = match === null ? null : wholeAmount(match[3] ?? "");
  const grams = weight === null || weight.unit === "piece" ? null : massG(weight);
  const word = singular((match?.[2] ?? "").trim());
  // A spoon is no piece: that is what the density is for.
  const isPiece = word !== "" && unitAtStart(word) === null;
  return isPiece && grams !== null && count > 0 && grams > 0 && grams / count <= ONE_MOST_G
    ? ok({ word, grams: grams / count })
    : fail({ code: "one not understood", text: excerpt(text) });
}

/**
 * Grams of alcohol in the basis from "12.5 % vol" or "10 g". Ethanol has 0.789 g/ml at 20 °C (CRC Handbook
 * of Chemistry and Physics).
 */
export function readAlcohol(
  text: string,
  basis: LabelBasis,
  densityGPerMl: number | null,
): Outcome<number, LabelProblem> {
  const printed = printedAtStart(fold(text.slice(0, 40)));
  if (printed === null) return notAlcohol(text);
  if (printed.unit === "g" && printed.rest === "") return ok(printed.value);
  const isShare =
    printed.unit === "%" && /^(?:(?:alc\.? ?)?vol\.?|abv|alc\.?)?$/u.test(printed.rest);
  if (!isShare || printed.value > 100) return notAlcohol(text);
  const ml = basis.unit === "ml" ? basis.amount : divided(basis.amount, densityGPerMl);
  return ml === null
    ? fail({ code: "alcohol needs density" })
    : ok((ml * 0.789 * printed.value) / 100);
}

function notAlcohol(text: string): Outcome<never, LabelProblem> {
  return fail({ code: "figure not understood", field: "alcohol", text: excerpt(text) });
}

function divided(amount: number, by: number | null): number | null {
  return by === null ? null : amount / by;
}

/** An amount and nothing else. */
function wholeAmount(text: string): Amount | null {
  const read = readAmount(text);
  if (!read.ok || read.value.rest !== "" || read.value.amount.to !== null) return null;
  return read.value.stated ?? read.value.amount;
}

function massG({ value, unit }: Amount): number | null {
  const oneG = massUnitG(unit);
  return oneG === null ? null : value * oneG;
}
