import { readAmount } from "../quantity/read-amount.ts";
import { amountLast, isSwapLine } from "./read-ingredient.ts";
import { type KeepingClause, readKeeping } from "./read-keeping.ts";
import { isYieldLine } from "./read-yield.ts";

/** Where in the text we are; it decides what a line without a mark is. */
export type Section = "head" | "ingredients" | "steps" | "reheating" | "notes";

/** What a line of a recipe's text is. */
export type Kind =
  | { readonly kind: "blank" }
  | { readonly kind: "section"; readonly section: Section }
  | { readonly kind: "yield" }
  | { readonly kind: "tags"; readonly text: string }
  | { readonly kind: "part"; readonly name: string; readonly optional: boolean }
  | { readonly kind: "keeping"; readonly clauses: readonly KeepingClause[] }
  | { readonly kind: "reheat"; readonly text: string }
  | { readonly kind: "note"; readonly text: string }
  | { readonly kind: "ingredient"; readonly text: string }
  | { readonly kind: "swap"; readonly text: string }
  | { readonly kind: "step"; readonly text: string; readonly numbered: boolean }
  | { readonly kind: "plain"; readonly text: string };

const SECTION_WORDS: readonly (readonly [pattern: RegExp, section: Section])[] = [
  [/^ingredients?$/iu, "ingredients"],
  [/^(?:steps?|method|directions?|instructions?|how to cook|cooking)$/iu, "steps"],
  [/^(?:reheat|reheating|to reheat)$/iu, "reheating"],
  [/^(?:notes?|keeping|storage|tips?)$/iu, "notes"],
];
const BULLET = /^(?:[-*•‣·–—]|\+)(?: |(?=[\p{L}\d½¼¾⅓⅔]))/u;
const NUMBERED = /^(?:step )?(\d{1,2})[.):](?: |$)/iu;
const REHEAT = /^(?:reheat|reheating|to reheat)(?: ?: | ?:(?=\S)|, )/iu;
const NOTE = /^(?:notes?|tip) ?: ?/iu;
const TAGS = /^tags? ?: ?/iu;

/** Tells what a line is, from its own marks first, then from the section it stands in. */
export function classify(text: string, section: Section): Kind {
  if (text === "") return { kind: "blank" };
  const isBulleted = BULLET.test(text);
  const bare = text.replace(BULLET, "").trim();
  const marked =
    isBulleted && (section === "head" || section === "ingredients") ? null : labelled(bare);
  if (marked !== null) return marked;
  if (section === "head" || section === "ingredients")
    return ingredientKind(text, bare, isBulleted, section);
  if (section === "steps") return stepKind(bare, isBulleted);
  return NUMBERED.test(bare) && section === "notes"
    ? stepKind(bare, false)
    : { kind: "plain", text: bare };
}

/** Lines that say what they are, wherever they stand. */
function labelled(text: string): Kind | null {
  const heading = text.replace(/^#{1,6} ?/u, "").replace(/ ?:$/u, "");
  const section = SECTION_WORDS.find(([pattern]) => pattern.test(heading))?.[1];
  if (section !== undefined) return { kind: "section", section };
  if (TAGS.test(text)) return { kind: "tags", text: text.replace(TAGS, "") };
  if (isYieldLine(text)) return { kind: "yield" };
  if (REHEAT.test(text)) return { kind: "reheat", text: capital(text.replace(REHEAT, "")) };
  if (NOTE.test(text)) return { kind: "note", text: capital(text.replace(NOTE, "")) };
  const clauses = NUMBERED.test(text) ? null : readKeeping(text);
  return clauses === null ? null : { kind: "keeping", clauses };
}

function ingredientKind(text: string, bare: string, isBulleted: boolean, section: Section): Kind {
  if (isSwapLine(bare)) return { kind: "swap", text: bare };
  if (isBulleted) return { kind: "ingredient", text: bare };
  const heading = /^(?:#{1,6} ?(.{1,200}?) ?:?|(.{1,200}?) ?:(?: ?\(optional\))?)$/iu.exec(text);
  if (heading !== null) return partKind(text.replace(/^#{1,6} ?/u, ""));
  // A lone mark is an ingredient that was not written out, or a rule between blocks.
  if (/^[-*•]$/u.test(text)) return { kind: "ingredient", text: "" };
  if (/^[-–—*_=]{3,}$/u.test(text)) return { kind: "blank" };
  const isAmount = hasAmount(text) || /\bto taste\b/iu.test(text);
  return isAmount && section === "ingredients"
    ? { kind: "ingredient", text }
    : { kind: "plain", text };
}

function partKind(heading: string): Kind {
  const optional = /\(optional\)|\boptional\b/iu.test(heading);
  const name = heading
    .replace(/,? ?\(?\boptional\b\)?/iu, "")
    .replace(/ ?:/gu, "")
    .replace(/^for the (?=\S)/iu, "")
    .trim();
  return { kind: "part", name: capital(name), optional };
}

function hasAmount(text: string): boolean {
  if (/^\S{1,12} ?(?:minutes?|mins?|hours?)\b/iu.test(text)) return false;
  if (amountLast(text)?.ok === true) return true;
  const read = readAmount(text);
  // A wrong amount still is one: its fault must be told.
  return read.ok || (read.problem.code !== "no number" && read.problem.code !== "not a number");
}

function stepKind(bare: string, isBulleted: boolean): Kind {
  const numbered = NUMBERED.exec(bare);
  if (numbered !== null)
    return { kind: "step", text: bare.slice(numbered[0].length).trim(), numbered: true };
  return isBulleted ? { kind: "step", text: bare, numbered: true } : { kind: "plain", text: bare };
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
