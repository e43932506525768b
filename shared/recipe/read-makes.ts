import { readAmount } from "../quantity/read-amount.ts";
import { massUnitG, volumeUnitMl } from "../quantity/unit.ts";
import { fold } from "../words/fold.ts";

/** What is said of a part that makes more than the recipe uses. */
export interface ReadMakes {
  /** Grams it makes; null where only shares or volumes are said. */
  readonly madeG: number | null;
  /** Grams of it that the recipe uses, or the share of it; null where that is not said. */
  readonly used:
    | { readonly kind: "grams"; readonly grams: number }
    | { readonly kind: "share"; readonly share: number }
    | null;
}

export interface WithMakes {
  readonly text: string;
  readonly makes: ReadMakes | null;
}

/** From "makes" to the end of the bracket, or of the line. */
const CLAUSE =
  /(?: ?[,;–—-]| )? ?\(((?:it |this |which )?makes [^()]{3,100})\)|(?: ?[,;:–—]| -) ((?:it |this |which )?makes [^()]{3,100}?)(?=(?: ?\(optional\))? ?:?$)/iu;
/** "This makes more than you need: use half." on a line of its own. */
const LINE = /^\(?((?:(?:it|this|the \p{L}{2,30}) )?makes [^()]{3,100}?)[.)]*$/iu;

/** A heading without what it says of the part's yield: "Sauce (makes 300 g, 180 g used)". */
export function withoutMakes(heading: string): WithMakes {
  const match = CLAUSE.exec(heading);
  const makes = match === null ? null : makesIn(match[1] ?? match[2] ?? "");
  if (match === null || makes === null) return { text: heading, makes: null };
  const before = heading.slice(0, match.index);
  return { text: `${before}${heading.slice(match.index + match[0].length)}`.trim(), makes };
}

/** What a line of its own says of its part; null for any other line. */
export function makesLine(text: string): ReadMakes | null {
  const match = LINE.exec(text);
  return match === null ? null : makesIn(match[1] ?? "");
}

const MORE =
  /^makes (?:(?:a (?:bit|little) |rather |slightly )?more (?:of it )?than (?:you(?:['’]?ll)? |is |it |we )?(?:need(?:s|ed)?|used?|required?|will need)|extra|too much|plenty|spare)\b/u;
const TIMES: readonly (readonly [pattern: RegExp, share: number])[] = [
  [/^makes (?:double|twice)\b/u, 1 / 2],
  [/^makes (?:triple|three times)\b/u, 1 / 3],
];
const ABOUT = /^(?:about|approx\.?|approximately|around|roughly|~) ?/u;
const WORDED: readonly (readonly [pattern: RegExp, share: number])[] = [
  [/\bthree[- ]quarters\b|\b3\/4\b/u, 3 / 4],
  [/\btwo[- ]thirds\b|\b2\/3\b/u, 2 / 3],
  [/\bhalf\b|\b1\/2\b/u, 1 / 2],
  [/\b(?:a |one )third\b|\b1\/3\b/u, 1 / 3],
  [/\b(?:a |one )quarter\b|\b1\/4\b/u, 1 / 4],
];
const USED = /\b(?:used?|uses|using|need(?:ed|s)?|goes in|go in|takes?)\b/u;

function makesIn(said: string): ReadMakes | null {
  const text = fold(said).replace(/^(?:it|this|which|the [a-z]+) /u, "");
  const times = TIMES.find(([pattern]) => pattern.test(text));
  if (times !== undefined) return { madeG: null, used: { kind: "share", share: times[1] } };
  const more = MORE.exec(text);
  if (more !== null) return moreThanNeeded(text.slice(more[0].length));
  const made = measureAt(text.slice("makes ".length));
  // "Makes 12 pancakes" and "makes 300 g" alone say nothing of what is left over.
  if (made === null || !USED.test(made.rest)) return null;
  const used = usedIn(made.rest);
  return { madeG: made.grams, used: used?.kind === "measure" ? usedOf(used, made) : used };
}

/** Grams of grams, a share of two volumes; a volume of a mass tells nothing. */
function usedOf(used: Measure, made: Measure): ReadMakes["used"] {
  if (used.ml !== null && made.ml !== null) return { kind: "share", share: used.ml / made.ml };
  return used.grams === null || made.ml !== null ? null : { kind: "grams", grams: used.grams };
}

function moreThanNeeded(rest: string): ReadMakes {
  const used = USED.test(rest) ? usedIn(rest) : null;
  return { madeG: null, used: used?.kind === "measure" ? usedOf(used, NOT_SAID) : used };
}

interface Measure {
  readonly grams: number | null;
  readonly ml: number | null;
  readonly rest: string;
}

const NOT_SAID: Measure = { grams: null, ml: null, rest: "" };

/** A mass or a volume that a text starts with. */
function measureAt(text: string): Measure | null {
  const read = readAmount(text.replace(ABOUT, ""));
  if (!read.ok || read.value.amount.to !== null) return null;
  const { amount, rest } = read.value;
  const each = massUnitG(amount.unit);
  const eachMl = volumeUnitMl(amount.unit, "us");
  if (each === null && eachMl === null) return null;
  return {
    grams: each === null ? null : each * amount.value,
    ml: eachMl === null ? null : eachMl * amount.value,
    rest,
  };
}

type Used =
  | ({ readonly kind: "measure" } & Measure)
  | { readonly kind: "share"; readonly share: number };

/** "180 g used", "use half", "of which you need 180 g". */
function usedIn(text: string): Used | null {
  const percent = /\b(\d{1,2}) ?(?:%|per ?cent)/u.exec(text);
  if (percent !== null) return { kind: "share", share: Number(percent[1]) / 100 };
  const number = /\d[\d.,/]{0,8} ?[a-z]{1,12}\b/u.exec(text);
  const measure = number === null ? null : measureAt(number[0]);
  if (measure !== null) return { kind: "measure", ...measure };
  const worded = WORDED.find(([pattern]) => pattern.test(text));
  return worded === undefined ? null : { kind: "share", share: worded[1] };
}
