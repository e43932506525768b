import { fail, type Outcome, ok } from "../outcome.ts";
import { excerpt, type NumberProblem } from "./problems.ts";

/** Nothing in a kitchen is more than this many of anything. */
export const NUMBER_MAX = 1_000_000;

/** A number, or a range with its upper end in `to`. */
export interface NumberOrRange {
  readonly value: number;
  readonly to: number | null;
}

const VULGAR: Readonly<Record<string, number>> = {
  "¼": 1 / 4,
  "½": 1 / 2,
  "¾": 3 / 4,
  "⅐": 1 / 7,
  "⅑": 1 / 9,
  "⅒": 1 / 10,
  "⅓": 1 / 3,
  "⅔": 2 / 3,
  "⅕": 1 / 5,
  "⅖": 2 / 5,
  "⅗": 3 / 5,
  "⅘": 4 / 5,
  "⅙": 1 / 6,
  "⅚": 5 / 6,
  "⅛": 1 / 8,
  "⅜": 3 / 8,
  "⅝": 5 / 8,
  "⅞": 7 / 8,
};
const GLYPHS = Object.keys(VULGAR).join("");

// Each pattern is anchored and its repeats are bounded and disjoint, so it runs in linear time.
const MIXED = /^(\d{1,7})(?: {1,3}(?:and |& ?|\+ ?)?|-)(\d{1,3}) ?[/⁄] ?(\d{1,3})(?![\d/⁄])/u;
const AND_A_HALF = /^(\d{1,7}) (?:and|&) a half\b/iu;
const FRACTION = /^(\d{1,3}) ?[/⁄] ?(\d{1,3})(?![\d/⁄])/u;
const GLYPH = new RegExp(`^(\\d{1,7})?(?: {1,3}|-)?([${GLYPHS}])`, "u");
const THOUSANDS = /^(\d{1,3})((?:,\d{3}){1,3})(?:\.(\d{1,9}))?(?![\d,.]\d)/u;
const DECIMAL = /^(\d{1,100})(?:[.,](\d{1,9}))?(?!\d)/u;
const BETWEEN = /^ {0,3}(?:-|–|—|to\b) {0,3}/u;

/**
 * Reads a whole text as a number the way people type it: "2", "2.5", "1,5", "1/2", "1 1/2", "½", "1½",
 * "3-4", "1 and a half". A comma before exactly three digits parts thousands ("1,500"), else it is a decimal comma.
 */
export function readNumber(text: string): Outcome<NumberOrRange, NumberProblem> {
  const trimmed = text.slice(0, 100).trim();
  if (trimmed === "") return fail({ code: "no number" });
  const start = numberAtStart(trimmed);
  if (!start.ok) return start;
  if (start.value.rest.trim() !== "") return fail({ code: "not a number", text: excerpt(text) });
  const { value, to } = start.value;
  return ok({ value, to });
}

/** Reads the number that a text starts with, and returns what follows it. */
export function numberAtStart(
  text: string,
): Outcome<NumberOrRange & { readonly rest: string }, NumberProblem> {
  const trimmed = text.trimStart();
  if (/^[-−–] ?[\d.,½¼¾]/u.test(trimmed)) {
    return fail({ code: "number negative", text: excerpt(trimmed) });
  }
  const first = single(trimmed);
  if (!first.ok) return first;
  const { value, rest } = first.value;
  const dash = BETWEEN.exec(rest);
  const second = dash === null ? null : single(rest.slice(dash[0].length));
  if (second === null || !second.ok) return ok({ value, to: null, rest });
  if (second.value.value <= value) {
    return fail({ code: "range backwards", from: value, to: second.value.value });
  }
  return ok({ value, to: second.value.value, rest: second.value.rest });
}

function single(text: string): Outcome<{ value: number; rest: string }, NumberProblem> {
  const found = mixed(text) ?? glyph(text) ?? decimal(text);
  if (found === null) {
    return fail(
      text === "" ? { code: "no number" } : { code: "not a number", text: excerpt(text) },
    );
  }
  if (found.value === Number.POSITIVE_INFINITY || Number.isNaN(found.value)) {
    return fail({ code: "divided by zero", text: excerpt(found.said) });
  }
  if (found.value > NUMBER_MAX) return fail({ code: "number too big", max: NUMBER_MAX });
  return ok({ value: found.value, rest: text.slice(found.said.length) });
}

interface Found {
  readonly value: number;
  readonly said: string;
}

function mixed(text: string): Found | null {
  const whole = MIXED.exec(text);
  if (whole !== null) {
    return { value: Number(whole[1]) + Number(whole[2]) / Number(whole[3]), said: whole[0] };
  }
  const half = AND_A_HALF.exec(text);
  if (half !== null) return { value: Number(half[1]) + 1 / 2, said: half[0] };
  const part = FRACTION.exec(text);
  return part === null ? null : { value: Number(part[1]) / Number(part[2]), said: part[0] };
}

function glyph(text: string): Found | null {
  const match = GLYPH.exec(text);
  if (match === null) return null;
  return { value: Number(match[1] ?? 0) + (VULGAR[match[2] ?? ""] ?? 0), said: match[0] };
}

function decimal(text: string): Found | null {
  const grouped = THOUSANDS.exec(text);
  if (grouped !== null && grouped[1] !== "0") {
    const whole = `${grouped[1]}${(grouped[2] ?? "").replaceAll(",", "")}`;
    return { value: Number(`${whole}.${grouped[3] ?? "0"}`), said: grouped[0] };
  }
  const leadingDot = /^[.,]\d{1,9}(?!\d)/u.exec(text);
  if (leadingDot !== null) {
    return { value: Number(`0.${leadingDot[0].slice(1)}`), said: leadingDot[0] };
  }
  const match = DECIMAL.exec(text);
  if (match === null) return null;
  // A hundred digits are far above NUMBER_MAX, and still a finite number.
  return { value: Number(`${match[1]}.${match[2] ?? "0"}`), said: match[0] };
}
