import type { StatedKeeping } from "./types.ts";

const COUNT_WORDS = "a an one two three four five six seven eight nine ten eleven twelve".split(
  " ",
);
const COUNT = `\\d{1,4}|${COUNT_WORDS.join("|")}`;
const LENGTH = new RegExp(
  `\\b(${COUNT})(?: ?(?:-|–|to|or) ?(?:${COUNT}))?[ -]?(hours?|days?|weeks?|months?|years?)\\b|\\b(overnight)\\b`,
  "giu",
);

/**
 * The fridge days and freezer months a statement names, the lower end of a range. Each length goes to
 * the place named after it, else before it, else to the fridge.
 */
export function lengthsOf(clause: string): Pick<StatedKeeping, "fridgeDays" | "freezerMonths"> {
  const found = [...clause.matchAll(LENGTH)];
  // "In the fridge for 3 days, in the freezer for 2 months": each place stands before its length.
  const isBefore = placeBeforeEach(clause, found);
  let fridgeDays: number | null = null;
  let freezerMonths: number | null = null;
  found.forEach((match, index) => {
    const end = match.index + match[0].length;
    const last = found[index - 1];
    const before = clause.slice(last === undefined ? 0 : last.index + last[0].length, match.index);
    const after = clause.slice(end, found[index + 1]?.index);
    const [behind, ahead] = [placeIn(after), placeIn(before, "last")];
    const place = (isBefore ? (ahead ?? behind) : (behind ?? ahead)) ?? "fridge";
    if (place === "fridge") fridgeDays = least(fridgeDays, daysOf(match));
    // "Freeze flat for 2 hours" is a step, not a keeping time.
    else if (!/^h/iu.test(match[2] ?? "")) freezerMonths = least(freezerMonths, monthsOf(match));
  });
  return { fridgeDays, freezerMonths };
}

function placeBeforeEach(clause: string, found: readonly RegExpExecArray[]): boolean {
  const last = found.at(-1);
  if (last === undefined || found.length < 2) return false;
  const isAfterLast = placeIn(clause.slice(last.index + last[0].length)) !== null;
  return !isAfterLast && placeIn(clause.slice(0, found[0]?.index)) !== null;
}

const PLACES = /\b(?:(freez|frozen)|fridge|refrigerat|chill)/giu;

/** The place named first in a text, or last; null when it names none. */
function placeIn(text: string, which: "first" | "last" = "first"): "fridge" | "freezer" | null {
  const named = [...text.matchAll(PLACES)];
  const one = which === "first" ? named[0] : named.at(-1);
  if (one === undefined) return null;
  return one[1] === undefined ? "fridge" : "freezer";
}

function least(a: number | null, b: number): number {
  return a === null ? b : Math.min(a, b);
}

function countOf(match: RegExpExecArray): number {
  const word = (match[1] ?? "one").toLowerCase();
  const at = COUNT_WORDS.indexOf(word);
  // "a" and "an" come before "one" in the list.
  return at === -1 ? Number(word) : Math.max(1, at - 1);
}

const DAYS_OF: Readonly<Record<string, number>> = { h: 1 / 24, d: 1, w: 7, m: 30, y: 365 };
const MONTHS_OF: Readonly<Record<string, number>> = { h: 0, d: 1 / 30, w: 1 / 4, m: 1, y: 12 };

/** Whole days, rounded down: 36 hours are one day. */
function daysOf(match: RegExpExecArray): number {
  if (match[3] !== undefined) return 1;
  return Math.floor(countOf(match) * (DAYS_OF[(match[2] ?? "d").slice(0, 1).toLowerCase()] ?? 1));
}

/** Whole months, rounded down; four weeks count as one. */
function monthsOf(match: RegExpExecArray): number {
  if (match[3] !== undefined) return 0;
  return Math.floor(countOf(match) * (MONTHS_OF[(match[2] ?? "m").slice(0, 1).toLowerCase()] ?? 1));
}
