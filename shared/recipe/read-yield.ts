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

const LABEL = /^(makes|serves|yields?|servings?|portions?)\b ?:? ?/iu;

/** One word for one thing: these all mean a portion. */
const PORTION_WORDS = new Set([
  "serving",
  "serve",
  "person",
  "people",
  "portion",
  "meal",
  "helping",
  "",
]);

/** Whether a line states the yield: "Makes 6 portions", "Serves 4", "Portions: 6". */
export function isYieldLine(text: string): boolean {
  const label = LABEL.exec(text);
  return (
    label !== null &&
    /^(?:about |approx\.? |approximately |~ ?)?[-−\d½]/iu.test(text.slice(label[0].length))
  );
}

/** Reads a yield line: "Makes 5 wraps", "Makes 6 portions, 2400 g cooked". */
export function readYield(text: string, line: number): Outcome<ReadYield, RecipeProblem> {
  const said = text.replace(LABEL, "").replace(/^(?:about|approx\.?|approximately|~) ?/iu, "");
  const number = readPortions(said, line);
  if (!number.ok) return number;
  const { portions, rest } = number.value;
  const after = /^ ?([\p{L}' -]{0,40}?) ?(?:[,;(] ?(.{1,60}))?\.?$/u.exec(rest);
  const word = after?.[1] ?? "";
  const cooked = after?.[2] === undefined ? null : cookedG(after[2]);
  const isCookedUnclear = after?.[2] !== undefined && cooked === null;
  if (after === null || unitLike(word) || isCookedUnclear) {
    return fail({ code: "yield not understood", line, text: excerpt(text) });
  }
  return ok({ portions, portionWord: portionWord(word), yieldG: cooked });
}

function readPortions(
  said: string,
  line: number,
): Outcome<{ readonly portions: number; readonly rest: string }, RecipeProblem> {
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
  if (to !== null) return fail({ code: "yield is a range", line });
  if (!Number.isInteger(value)) return fail({ code: "portions not whole", line, asked: value });
  return value < 1 || value > max ? outOfRange(value) : ok({ portions: value, rest });
}

/** "Makes 2 kg" tells a mass, not portions. */
function unitLike(word: string): boolean {
  return /^(?:k?g|kilos?|grams?|lbs?|pounds?|oz|ml|l|litres?|liters?)\b/iu.test(word);
}

function portionWord(said: string): string {
  const word = singular(said.trim().toLowerCase());
  return PORTION_WORDS.has(word) ? "portion" : word;
}

function cookedG(text: string): number | null {
  const read = readAmount(text.replace(/^(?:about|approx\.?|approximately|total|~) ?/iu, ""));
  if (!read.ok || read.value.amount.to !== null) return null;
  if (!/^(?:cooked|in all|total|in total|altogether)?\W*$/iu.test(read.value.rest)) return null;
  const each = massUnitG(read.value.amount.unit);
  return each === null ? null : read.value.amount.value * each;
}
