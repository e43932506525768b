import { fail, type Outcome, ok } from "../outcome.ts";
import { singular } from "../words/plural.ts";
import { excerpt } from "../words/problems.ts";
import { NUMBER_MAX, numberAtStart } from "../words/read-number.ts";
import type { AmountProblem } from "./problems.ts";
import type { Amount, Unit } from "./types.ts";
import { massUnitG, volumeUnitMl } from "./unit.ts";
import { isContainer, unitAtStart } from "./unit-words.ts";

/** A tonne: more than any group cooks. */
export const AMOUNT_MAX_G = 1_000_000;

/** An amount at the start of a line, and what follows it. */
export interface ReadAmount {
  readonly amount: Amount;
  /**
   * A measure in brackets that tells what the amount weighs or holds in all ("1 large egg (50 g)",
   * "2 eggs (50 g each)"); it goes before anything a table says. Null where nothing is stated.
   */
  readonly stated: Amount | null;
  /** The rest of the line, without the brackets. */
  readonly rest: string;
}

/**
 * Reads the amount a text starts with: "900 g", "1 lb 8 oz" (summed, in pounds), "2 x 400 g",
 * "1½ tbsp", "3-4 cloves" (no unit: pieces), "a pinch", "half a lemon". A measure in brackets wins over
 * spoons, cups and containers ("1 1/2 cups (360 ml)", "2 cans (400 g each)"); beside pieces it is
 * returned as `stated`, so that whole foods stay whole.
 */
export function readAmount(text: string): Outcome<ReadAmount, AmountProblem> {
  const plain = readPlain(text.trimStart().slice(0, 1000));
  if (!plain.ok) return plain;
  const found = withBrackets(plain.value.amount, plain.value.rest);
  const sized = found.stated ?? found.amount;
  if (sized.value === 0) return fail({ code: "amount is zero" });
  return isTooBig(found.amount) || isTooBig(sized)
    ? fail({ code: "amount too big", maxG: AMOUNT_MAX_G })
    : ok(found);
}

type Plain = Outcome<{ readonly amount: Amount; readonly rest: string }, AmountProblem>;

function readPlain(text: string): Plain {
  const worded = readWorded(text);
  if (worded !== null) return ok(worded);
  const number = numberAtStart(text);
  if (!number.ok) return number;
  const times = /^ {0,3}[x×*] {0,3}(?=[\d½¼¾])/iu.exec(number.value.rest);
  if (times !== null && number.value.to === null) {
    const each = readPlain(number.value.rest.slice(times[0].length));
    return each.ok
      ? ok({ ...each.value, amount: multiply(each.value.amount, number.value.value) })
      : each;
  }
  const { value, to, rest } = number.value;
  // "5% fat yoghurt" and "2-inch sticks" start with a number that is no amount.
  if (/^ ?(?:%|[-–]\p{L})/u.test(rest)) return fail({ code: "not a number", text: excerpt(text) });
  const unit = unitAtStart(rest);
  if (unit === null) return ok({ amount: { value, to, unit: "piece" }, rest });
  const read = withSmallerUnit({ value, to, unit: unit.unit }, unit.rest);
  return ok({ amount: read.amount, rest: withoutSecondScale(read.rest) });
}

/** "100 g / 3.5 oz butter": the first of two scales counts. */
function withoutSecondScale(rest: string): string {
  const slash = /^ ?\/ ?/u.exec(rest);
  const number = slash === null ? null : numberAtStart(rest.slice(slash[0].length));
  const unit = number?.ok ? unitAtStart(number.value.rest) : null;
  return unit === null ? rest : unit.rest;
}

const NUMBER_WORDS: Readonly<Record<string, number>> = {
  half: 0.5,
  a: 1,
  an: 1,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
};

/** "a pinch of salt", "an ounce", "half a lemon", "half a cup", "two bananas". */
function readWorded(text: string): { amount: Amount; rest: string } | null {
  const match = /^(half|an?|one|two|three|four|five|six) (?:(?<=half )an? )?(?=\p{L})/iu.exec(text);
  if (match === null) return null;
  const word = (match[1] ?? "").toLowerCase();
  const after = text.slice(match[0].length);
  const unit = unitAtStart(after);
  const value = NUMBER_WORDS[word] ?? 1;
  if (unit !== null) return { amount: { value, to: null, unit: unit.unit }, rest: unit.rest };
  // "A little oil" is no number, "half a lemon" is.
  const isCount = word !== "a" && word !== "an";
  return isCount ? { amount: { value, to: null, unit: "piece" }, rest: ` ${after}` } : null;
}

const SMALLER: Readonly<Partial<Record<Unit, { readonly unit: Unit; readonly perLarge: number }>>> =
  {
    lb: { unit: "oz", perLarge: 16 },
    kg: { unit: "g", perLarge: 1000 },
    l: { unit: "ml", perLarge: 1000 },
    tbsp: { unit: "tsp", perLarge: 3 },
    // Of US and label cups; of a metric cup it would be 16 2/3, which moves a spoonful by a millilitre.
    cup: { unit: "tbsp", perLarge: 16 },
  };

/** "1 lb 8 oz" is 1.5 lb, "2 tbsp 2 tsp" and "2 tbsp plus 2 tsp" are 2 2/3 tbsp. */
function withSmallerUnit(amount: Amount, rest: string): { amount: Amount; rest: string } {
  const smaller = SMALLER[amount.unit];
  if (smaller === undefined || amount.to !== null) return { amount, rest };
  const number = numberAtStart(rest.replace(/^ ?(?:,|and |plus |&|\+)/u, ""));
  if (!number.ok || number.value.to !== null) return { amount, rest };
  const unit = unitAtStart(number.value.rest);
  if (unit?.unit !== smaller.unit || number.value.value >= smaller.perLarge)
    return { amount, rest };
  const value = amount.value + number.value.value / smaller.perLarge;
  return { amount: { ...amount, value }, rest: unit.rest };
}

const BRACKETS = /\((?:about |approx\.? |approximately |ca\.? |~ ?)?([^()]{1,40}?)(,? ?each)?\)/iu;

function withBrackets(amount: Amount, rest: string): ReadAmount {
  const match = BRACKETS.exec(rest);
  const inside = match === null ? null : measureIn(match[1] ?? "");
  const plain = { amount, stated: null, rest: rest.trim() };
  if (match === null || inside === null || massUnitG(amount.unit) !== null) return plain;
  const without = `${rest.slice(0, match.index)}${rest.slice(match.index + match[0].length)}`;
  const cleaned = without.replace(/\s+/gu, " ").replace(/ ,/gu, ",").trim();
  // "2 (400 g) cans": brackets right after the number tell what each holds.
  const isEach = match[2] !== undefined || rest.slice(0, match.index).trim() === "";
  const each = amount.unit === "piece" && isEach;
  const stated = each ? multiplyBy(inside, amount) : inside;
  const container = containerAtStart(cleaned);
  if (amount.unit !== "piece") return { amount: stated, stated: null, rest: cleaned };
  return container === null
    ? { amount, stated, rest: cleaned }
    : { amount: stated, stated: null, rest: container };
}

/** A measure and nothing else: "400 g", "14 oz", "360 ml". */
function measureIn(text: string): Amount | null {
  const read = readPlain(text);
  if (!read.ok || read.value.rest.trim() !== "") return null;
  const { unit } = read.value.amount;
  return massUnitG(unit) === null && volumeUnitMl(unit, "us") === null ? null : read.value.amount;
}

/** What follows "cans of"; null when the text does not start with a container. */
function containerAtStart(text: string): string | null {
  const match = /^(\p{L}{1,12})(?: of)?(?: |$)/iu.exec(text);
  if (match === null || !isContainer(singular((match[1] ?? "").toLowerCase()))) return null;
  // That it is canned decides which food it is.
  const canned = /^(?:can|tin)/iu.test(text) ? "canned " : "";
  return `${canned}${text.slice(match[0].length)}`;
}

function multiply(amount: Amount, by: number): Amount {
  return { ...amount, value: amount.value * by, to: amount.to === null ? null : amount.to * by };
}

/** Each of a number or a range of things: "2-3 fillets (150 g each)". */
function multiplyBy(each: Amount, times: Amount): Amount {
  if (times.to === null) return multiply(each, times.value);
  const most = each.to ?? each.value;
  return { unit: each.unit, value: each.value * times.value, to: most * times.to };
}

function isTooBig(amount: Amount): boolean {
  const most = amount.to ?? amount.value;
  const each = massUnitG(amount.unit) ?? volumeUnitMl(amount.unit, "us") ?? 1;
  return !Number.isFinite(most) || most > NUMBER_MAX || most * each > AMOUNT_MAX_G;
}
