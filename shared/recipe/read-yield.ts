import { fail, type Outcome, ok } from "../outcome.ts";
import { readAmount } from "../quantity/read-amount.ts";
import { massUnitG } from "../quantity/unit.ts";
import { singular } from "../words/plural.ts";
import { excerpt } from "../words/problems.ts";
import { numberAtStart } from "../words/read-number.ts";
import { RECIPE_LIMITS, type RecipeProblem } from "./problems.ts";

/** What a recipe makes. */
export interface ReadYield {
  readonly portions: number;
  readonly portionWord: string;
  readonly yieldG: number | null;
}

/** As read: of "serves 4-6" `portions` is 4 and `to` 6. */
export interface ReadYieldLine extends ReadYield {
  readonly to: number | null;
}

const LABEL =
  /^(?:(?:makes|serves|feeds|yields?|servings?|portions?|quantity|enough for|(?:recipe )?for)\b|number of (?:portions|servings))[ :]*(?:(?:enough )?for )?/iu;
/** "Serves four": as far as people write it in words. */
const WORDS = "one two three four five six seven eight nine ten eleven twelve".split(" ");
const WORDED = new RegExp(`^(${WORDS.join("|")})\\b`, "iu");
const ABOUT = /^(?:about|approx\.?|approximately|around|roughly|~) ?/iu;
/** What portions are called, where no "makes" stands before them. */
const BARE =
  /^(\d{1,3})(?: ?(?:-|–|to) ?\d{1,3})? (?:[\p{L}'’-]{1,20} ){0,2}(?:portions?|servings?|serves|meals?|lunch(?:es)?|dinners?|wraps?|burritos?|bowls?|box(?:es)?|pots?|jars?|tubs?|muffins?|bars?|bites?|burgers?|patt(?:y|ies)|fritters?|pancakes?|waffles?|cookies?|squares?|sandwich(?:es)?|skewers?|tacos?|quesadillas?|people|persons?|adults)\.?$/iu;

/** One word for one thing: these all mean a portion. */
const PORTION_WORDS = new Set([
  "serving",
  "serve",
  "person",
  "people",
  "adult",
  "main",
  "portion",
  "meal",
  "helping",
  "",
]);

/** Whether a line states the yield: "Makes 6 portions", "Serves 4", "Portions: 6", "For 4 people". */
export function isYieldLine(text: string): boolean {
  const label = LABEL.exec(text);
  if (label === null) return false;
  const after = figures(text.slice(label[0].length));
  // "For 2 hours" and "for 200 g" are no yield.
  if (/^(?:recipe )?for\b/iu.test(text)) return bareYield(after);
  return /^[-−\d½]/u.test(after);
}

/** Whether a text is a number of portions by itself: "5 wraps", "6 portions". */
export function bareYield(text: string): boolean {
  return BARE.test(figures(text.replace(LABEL, "")));
}

function figures(text: string): string {
  const said = text.replace(ABOUT, "");
  return said.replace(WORDED, (word) => `${WORDS.indexOf(word.toLowerCase()) + 1}`);
}

/**
 * Reads a yield line: "Makes 5 wraps", "Makes 6 portions, 2400 g cooked", "Makes 6 portions (400 g
 * each)", "Serves 4-6", which is taken for the lower of the two.
 */
export function readYield(text: string, line: number): Outcome<ReadYieldLine, RecipeProblem> {
  const said = figures(text.replace(LABEL, ""));
  const number = readPortions(said, line);
  if (!number.ok) return number;
  const { portions, to, rest } = number.value;
  const after = /^ ?([\p{L}'’ -]{0,40}?) ?(?:[,;(] ?(.{1,60}))?\.?$/u.exec(rest);
  const word = (after?.[1] ?? "").replace(/ (?:as|with|for) .*$/iu, "");
  const more = after?.[2] ?? null;
  const cooked = more === null ? null : cookedG(more, portions);
  const isUnclear = more !== null && cooked === null && /\d ?(?:k?g|lb|oz)\b/iu.test(more);
  if (after === null || unitLike(word) || isUnclear) {
    return fail({ code: "yield not understood", line, text: excerpt(text) });
  }
  return ok({ portions, to, portionWord: portionWord(word), yieldG: cooked });
}

function readPortions(
  said: string,
  line: number,
): Outcome<
  { readonly portions: number; readonly to: number | null; readonly rest: string },
  RecipeProblem
> {
  const max = RECIPE_LIMITS.portions;
  const outOfRange = (asked: number) =>
    fail({ code: "portions out of range" as const, line, asked, max });
  const number = numberAtStart(said);
  if (!number.ok) {
    if (number.problem.code === "number negative") return outOfRange(-1);
    if (number.problem.code === "number too big") return outOfRange(number.problem.max);
    return fail({ code: "yield not understood", line, text: excerpt(said) });
  }
  const { value, to, rest } = number.value;
  if (!Number.isInteger(value)) return fail({ code: "portions not whole", line, asked: value });
  return value < 1 || value > max ? outOfRange(value) : ok({ portions: value, to, rest });
}

/** "Makes 2 kg" tells a mass, not portions. */
function unitLike(word: string): boolean {
  return /^(?:k?g|kilos?|grams?|lbs?|pounds?|oz|ml|l|litres?|liters?)\b/iu.test(word);
}

function portionWord(said: string): string {
  const word = singular(said.trim().toLowerCase());
  return PORTION_WORDS.has(word) ? "portion" : word;
}

function cookedG(text: string, portions: number): number | null {
  const read = readAmount(text.replace(/\)$/u, "").replace(/^(?:total|~) ?/iu, ""));
  if (!read.ok || read.value.amount.to !== null) return null;
  const { amount, rest } = read.value;
  const each = massUnitG(amount.unit);
  if (each === null) return null;
  // Of portions, "400 g each" is cooked weight as well: that is how they are boxed.
  if (/^(?:cooked )?(?:each|per (?:portion|serving|box))(?: cooked)?\W*$/iu.test(rest)) {
    return amount.value * each * portions;
  }
  return /^(?:cooked|in all|total|in total|altogether)?\W*$/iu.test(rest)
    ? amount.value * each
    : null;
}
