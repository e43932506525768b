import { fail, type Outcome, ok } from "../outcome.ts";
import { singular } from "../words/plural.ts";
import { excerpt } from "../words/problems.ts";
import { NUMBER_MAX, type NumberOrRange, numberAtStart } from "../words/read-number.ts";
import type { AmountProblem } from "./problems.ts";
import { withSmallerUnit } from "./smaller-unit.ts";
import type { Amount, Unit } from "./types.ts";
import { massUnitG, volumeUnitMl } from "./unit.ts";
import { isBundle, isContainer, unitAtStart } from "./unit-words.ts";

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
  const plain = readPlain(text.slice(0, 1000).trimStart().replace(ABOUT, ""));
  if (!plain.ok) return plain;
  const found = withBrackets(plain.value.amount, plain.value.rest);
  const sized = found.stated ?? found.amount;
  if (sized.value === 0) return fail({ code: "amount is zero" });
  return isTooBig(found.amount) || isTooBig(sized)
    ? fail({ code: "amount too big", maxG: AMOUNT_MAX_G })
    : ok(found);
}

/** "About 300 g", "approx. 2 kg": no more exact, and the same figure. */
const ABOUT =
  /^(?:about|approx\.?|approximately|around|roughly|circa|ca\.|c\.|~) ?(?=[\d½¼¾⅓⅔⅛]|half |an? |one |two |three )/iu;

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
  const { rest } = number.value;
  const pack = /^-\p{L}/u.test(rest) ? packUnit(rest) : null;
  if (pack !== null && isMeasure(pack.unit) && containerAtStart(pack.rest.trimStart()) !== null) {
    const { value, to } = number.value;
    return ok({ amount: { value, to, unit: pack.unit }, rest: pack.rest });
  }
  // "5% fat yoghurt", "2-inch sticks" and "5 cm ginger" start with a number that is no amount.
  return /^ ?(?:%|[-–]\p{L}|(?:cm|mm|inch|inches)\b|["″])/iu.test(rest)
    ? fail({ code: "not a number", text: excerpt(text) })
    : ok(withUnit(number.value));
}

/** What a number counts or measures, by what follows it. */
function withUnit({ value, to, rest }: NumberOrRange & { readonly rest: string }): {
  readonly amount: Amount;
  readonly rest: string;
} {
  const dessert = DESSERTSPOON.exec(rest);
  if (dessert !== null) {
    const amount = multiply({ value, to, unit: "tsp" }, 2);
    return { amount, rest: rest.slice(dessert[0].length) };
  }
  const unit = spoonAtStart(rest) ?? unitAtStart(rest);
  if (unit === null) {
    const packs = to === null && Number.isInteger(value) ? readPacks(rest, value) : null;
    return packs ?? { amount: { value, to, unit: "piece" }, rest };
  }
  const read = withSmallerUnit({ value, to, unit: unit.unit }, unit.rest);
  return { amount: read.amount, rest: withoutSecondScale(read.rest) };
}

/** Two teaspoons, 10 ml: common practice, no published source. */
const DESSERTSPOON =
  /^ {0,3}(?:(?:heaped|heaping|level|rounded) )?(?:dsp|dessert ?spoons?(?:fuls?)?)\.?(?![\p{L}\d])/iu;
const SPOONFUL =
  /^ {0,3}(?:heaped|heaping|level|scant|rounded|generous|good|full|large|big|small|little) (?=\p{L})/iu;

/** "1 heaped tsp", "a good pinch": how full a spoon is does not change what it is. */
function spoonAtStart(rest: string): { readonly unit: Unit; readonly rest: string } | null {
  const size = SPOONFUL.exec(rest);
  const unit = size === null ? null : unitAtStart(rest.slice(size[0].length));
  return unit !== null && massUnitG(unit.unit) === null ? unit : null;
}

/** "2 400 g tins", "one 400 g tin": so many of what holds that much; null when no measure follows. */
function readPacks(rest: string, times: number): { amount: Amount; rest: string } | null {
  if (!/^ {0,3}\d/u.test(rest)) return null;
  const each = numberAtStart(rest);
  const unit = each.ok && each.value.to === null ? packUnit(each.value.rest) : null;
  if (!each.ok || unit === null || !isMeasure(unit.unit)) return null;
  const amount = { value: each.value.value * times, to: null, unit: unit.unit };
  return { amount, rest: unit.rest };
}

/** The unit of what a pack holds: "400 g tins", and "15-oz cans". */
function packUnit(rest: string): { readonly unit: Unit; readonly rest: string } | null {
  return unitAtStart(rest.replace(/^-(?=\p{L})/u, ""));
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
  quarter: 0.25,
  a: 1,
  an: 1,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  twelve: 12,
  "a dozen": 12,
  "half a dozen": 6,
  "a couple of": 2,
};
const WORDED =
  /^(half a dozen|a dozen|a couple of|half|quarter|an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve) (?:(?<=(?:half|quarter) )(?:of )?an? )?(?=[\p{L}\d])/iu;

/** "a pinch of salt", "an ounce", "half a lemon", "half a cup", "two bananas". */
function readWorded(text: string): { amount: Amount; rest: string } | null {
  const match = WORDED.exec(text);
  if (match === null) return null;
  const word = (match[1] ?? "").toLowerCase();
  const after = text.slice(match[0].length);
  const unit = spoonAtStart(after) ?? unitAtStart(after);
  const value = NUMBER_WORDS[word] ?? 1;
  if (/^\d/u.test(after)) return readPacks(after, value);
  if (unit !== null) return { amount: { value, to: null, unit: unit.unit }, rest: unit.rest };
  // "A little oil" is no number, "half a lemon" is.
  const isCount = word !== "a" && word !== "an";
  return isCount ? { amount: { value, to: null, unit: "piece" }, rest: ` ${after}` } : null;
}

const BRACKETS =
  /\((each )?(?:weighing )?(?:about |approx\.? |approximately |around |ca\.? |~ ?)?([^()]{1,40}?)(,? ?each)?\)/iu;
/** "2 scoops of it, 60 g" and "4 fillets, about 140 g each": the same without brackets. */
const OPEN_TOTAL =
  /^([^(),]{2,80}), ((?:about |approx\.? |approximately |around |ca\.? |~ ?)?[\d½¼¾][\d.,/½¼¾ ]{0,8}\p{L}{1,12}(?: in (?:all|total)| total)?)$/iu;
const OPEN_EACH =
  /,? (?:weighing )?((?:about |approx\.? |approximately |around |ca\.? |~ ?)?[\d½¼¾][^(),]{0,20}?) each(?=$|[,;])/iu;

function withBrackets(amount: Amount, said: string): ReadAmount {
  const rest =
    amount.unit === "piece"
      ? said.replace(OPEN_EACH, " ($1 each)").replace(OPEN_TOTAL, "$1 ($2)")
      : said;
  const match = BRACKETS.exec(rest);
  const inside = match === null ? null : measureIn(match[2] ?? "");
  const plain = { amount, stated: null, rest: rest.trim() };
  if (match === null || inside === null || massUnitG(amount.unit) !== null) return plain;
  const without = `${rest.slice(0, match.index)}${rest.slice(match.index + match[0].length)}`;
  const cleaned = without.replace(/\s+/gu, " ").replace(/ ,/gu, ",").trim();
  // "2 (400 g) cans": brackets right after the number tell what each holds.
  const isEach =
    match[1] !== undefined || match[3] !== undefined || rest.slice(0, match.index).trim() === "";
  const each = amount.unit === "piece" && isEach;
  const stated = each ? multiplyBy(inside, amount) : inside;
  const container = containerAtStart(cleaned);
  if (amount.unit !== "piece") return { amount: stated, stated: null, rest: cleaned };
  return container === null
    ? { amount, stated, rest: cleaned }
    : { amount: stated, stated: null, rest: container };
}

/** What a weight in brackets may say of itself. That of a cooked food is not the one that goes in. */
const OF_WEIGHT =
  /^(?: (?:net|dry|raw|uncooked|peeled|drained|shelled|podded|pitted|stoned|boned|trimmed|prepared|prepped|florets|flesh|in all|in total|total|altogether|weight|when|once)){0,3}$/iu;

/** A measure and at most what it is the weight of: "400 g", "14 oz", "360 ml", "240 g drained weight". */
function measureIn(text: string): Amount | null {
  const read = readPlain(text);
  if (!read.ok || !OF_WEIGHT.test(read.value.rest.trimEnd().replace(/^(?=\p{L})/u, " ")))
    return null;
  return isMeasure(read.value.amount.unit) ? read.value.amount : null;
}

function isMeasure(unit: Unit): boolean {
  return massUnitG(unit) !== null || volumeUnitMl(unit, "us") !== null;
}

/** What follows "cans of" or "head of"; null when the text does not start with a container or a bundle. */
function containerAtStart(text: string): string | null {
  const match = /^(?:(?:large|small|medium|big) )?(\p{L}{1,12})(?: of)?(?: |$)/iu.exec(text);
  const word = singular((match?.[1] ?? "").toLowerCase());
  if (match === null || !(isContainer(word) || isBundle(word))) return null;
  // That it is canned decides which food it is.
  const canned = word === "can" || word === "tin" ? "canned " : "";
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
