import type { LotId } from "../ids.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import type { Lot } from "../stock/types.ts";

/**
 * Short codes of lots, to be typed off a box: four characters and one that checks them, "7K3QA". Where
 * the codes of two lots would be the same, both are longer.
 */

/**
 * 29 characters without look-alikes: no I and L beside 1, O beside 0, S beside 5, B beside 8, Z beside 2,
 * U beside V. A prime number of them, so that the check character finds every single wrong character
 * and every pair of neighbours exchanged (the weighted sum of ISO 2108, whose modulus 11 is prime too).
 */
const ALPHABET = "0123456789ACDEFGHJKMNPQRTVWXY";
const BASE = ALPHABET.length;
/** What was meant by a character that is not in the alphabet. */
const MEANT: Readonly<Record<string, string>> = {
  O: "0",
  I: "1",
  L: "1",
  Z: "2",
  S: "5",
  B: "8",
  U: "V",
};
const SHORT = 4;
const LONG = 12;
/** Longer ones take three twins in a row: what is longer and wrong is rather a word. */
const LIKELY = SHORT + 1 + 2;
const TYPED_MAX = 60;

/** What a code is made from. */
type CodedLot = Pick<Lot, "id">;

export type LotCodeProblem =
  /** Not the form of a code at all: it may be a name. */
  | { readonly code: "not a lot code" }
  | { readonly code: "lot code mistyped"; readonly typed: string }
  | { readonly code: "no lot of that code"; readonly typed: string }
  /** It was printed before a second lot came whose code begins alike. */
  | {
      readonly code: "several lots of that code";
      readonly typed: string;
      readonly lotIds: readonly LotId[];
    };

/** The codes of a member's lots, all different: each as short as it can be beside the others. */
export function lotCodes(lots: readonly CodedLot[]): ReadonlyMap<LotId, string> {
  const ids = [...new Set(lots.map(({ id }) => id))];
  const counts = new Map<string, number>();
  for (const id of ids) {
    for (const data of beginningsOf(id)) counts.set(data, (counts.get(data) ?? 0) + 1);
  }
  return new Map(
    ids.map((id) => {
      const all = beginningsOf(id);
      const data = all.find((one) => counts.get(one) === 1) ?? all.at(-1) ?? "";
      return [id, data + checkOf(data)] as const;
    }),
  );
}

/**
 * The lot that a code names, in any case, with o for 0 and the like, spaces and dashes ignored. A longer
 * code than a lot needs by now was printed while its twin was there, and still names it.
 */
export function lotByCode<One extends CodedLot>(
  typed: string,
  lots: readonly One[],
): Outcome<One, LotCodeProblem> {
  const read = readCode(typed);
  if (read === null) return fail({ code: "not a lot code" });
  const data = read.slice(0, -1);
  if (checkOf(data) !== read.slice(-1)) {
    return fail(
      read.length > LIKELY
        ? { code: "not a lot code" }
        : // As it was typed, so that it can be held beside the label.
          { code: "lot code mistyped", typed: typed.trim().toUpperCase() },
    );
  }
  const [found, ...others] = lots.filter(({ id }) => charactersOf(id).startsWith(data));
  if (found === undefined) return fail({ code: "no lot of that code", typed: read });
  const lotIds = [found, ...others].map(({ id }) => id);
  return others.length === 0
    ? ok(found)
    : fail({ code: "several lots of that code", typed: read, lotIds });
}

/** From four characters to all. */
function beginningsOf(id: LotId): readonly string[] {
  const all = charactersOf(id);
  return Array.from({ length: LONG - SHORT + 1 }, (_, more) => all.slice(0, SHORT + more));
}

/** The characters of the alphabet that were typed; null when it cannot be a code. */
function readCode(typed: string): string | null {
  if (typed.length > TYPED_MAX) return null;
  const plain = typed.normalize("NFKC").toUpperCase();
  const read = [...plain.replace(/[\s\p{Pd}.#]+/gu, "")].map((one) => MEANT[one] ?? one).join("");
  const isCode = [...read].every((one) => ALPHABET.includes(one));
  return isCode && read.length > SHORT && read.length <= LONG + 1 ? read : null;
}

/** Twelve characters that follow from the id alone. */
function charactersOf(id: LotId): string {
  return digitsOf(hash(id, 0x811c9dc5)) + digitsOf(hash(id, 0x5bd1e995));
}

/** Six digits of base 29, the lowest first: all that 32 bits give evenly. */
function digitsOf(bits: number): string {
  let rest = bits;
  let digits = "";
  for (let at = 0; at < LONG / 2; at += 1) {
    digits += ALPHABET[rest % BASE] ?? "";
    rest = Math.floor(rest / BASE);
  }
  return digits;
}

/** 32 bits of a text: FNV-1a, its bits mixed once more so that near ids lie far apart. */
function hash(text: string, seed: number): number {
  let bits = seed;
  for (const one of text) bits = Math.imul(bits ^ (one.codePointAt(0) ?? 0), 0x01000193);
  bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
  return (bits ^ (bits >>> 16)) >>> 0;
}

/** Makes the sum of all characters, each times its place, the checking one last, a multiple of 29. */
function checkOf(data: string): string {
  const places = data.length + 1;
  const sum = [...data].reduce((all, one, at) => all + ALPHABET.indexOf(one) * (places - at), 0);
  return ALPHABET[(BASE - (sum % BASE)) % BASE] ?? "";
}
