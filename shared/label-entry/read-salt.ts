import type { LabelStyle } from "../label/types.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import { fold } from "../words/fold.ts";
import { excerpt } from "../words/problems.ts";
import type { LabelProblem } from "./problems.ts";
import { figureOf, inUnit, isNegative, type Printed, printedAtStart } from "./read-figure.ts";
import type { PackFigure } from "./types.ts";

interface Salt {
  readonly saltG: PackFigure | null;
  readonly sodiumMg: PackFigure | null;
}

/** Salt declared as 0 is up to 0.0125 g, sodium up to 5 mg (Commission guidance 2012; 21 CFR 101.9(c)(4)). */
const ZERO_SALT_G = 0.0125;
const ZERO_SODIUM_MG = 5;

/**
 * Salt or sodium as a pack prints it: "1.2 g" and "salt 1.2 g" are salt, "sodium 480 mg" and "480 mg
 * sodium" sodium, "salt 1.2 g / sodium 480 mg" both. Milligrams without a word may be either: refused.
 */
export function readSalt(text: string, style: LabelStyle): Outcome<Salt, LabelProblem> {
  const folded = fold(text.slice(0, 80));
  const pieces = folded.split(/[/;()]| and /u).map((piece) => piece.trim());
  const read = pieces.filter((piece) => piece !== "").map(readOne);
  const words = read.map((one) => (typeof one === "string" ? one : one.word));
  if (words.includes("below zero")) {
    return fail({ code: "figure below zero", field: "salt", text: excerpt(text) });
  }
  if (words.includes("odd") || read.length === 0 || new Set(words).size < words.length) {
    return fail({ code: "figure not understood", field: "salt", text: excerpt(text) });
  }
  if (words.includes("either")) return fail({ code: "salt or sodium", text: excerpt(text) });
  const found = (word: "salt" | "sodium") =>
    read.find((one) => typeof one !== "string" && one.word === word);
  const salt = found("salt");
  const sodium = found("sodium");
  return ok({
    saltG: typeof salt === "object" ? figureOf(salt.printed, 0, ZERO_SALT_G) : null,
    sodiumMg: typeof sodium === "object" ? sodiumOf(sodium.printed, style) : null,
  });
}

type One = { readonly word: "salt" | "sodium"; readonly printed: Printed };

function readOne(piece: string): One | "odd" | "either" | "below zero" {
  const word = /\b(salt|sodium)\b/u.exec(piece)?.[1];
  const bare = piece
    .replace(/\b(?:salt|sodium)\b/u, "")
    .replace(/^[ :=]+/u, "")
    .trim();
  if (isNegative(bare)) return "below zero";
  const printed = printedAtStart(bare);
  if (printed === null || printed.rest !== "") return "odd";
  const grams = ["", "g", "gram", "grams"].includes(printed.unit);
  if (!grams && printed.unit !== "mg") return "odd";
  if (word === undefined && !grams) return "either";
  if (word === "sodium") return { word, printed: inUnit(printed, grams ? 1000 : 1) };
  return { word: "salt", printed: inUnit(printed, grams ? 1 : 0.001) };
}

/** US labels round sodium to 5 mg up to 140 mg, and to 10 mg above (21 CFR 101.9(c)(4)). */
function sodiumOf(printed: Printed, style: LabelStyle): PackFigure {
  const usHalfStep = printed.value <= 140 ? 2.5 : 5;
  return figureOf(printed, style === "us" ? usHalfStep : 0, ZERO_SODIUM_MG);
}
