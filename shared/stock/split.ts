import { fail, type Outcome, ok } from "../outcome.ts";
import { fold } from "../words/fold.ts";
import { isHalves } from "../words/halves.ts";
import { excerpt } from "../words/problems.ts";
import { numberAtStart } from "../words/read-number.ts";

/** Where a part of a batch went right after cooking; `portions` null for all the rest. */
export interface SplitPart {
  readonly place: "fridge" | "freezer" | "eaten";
  readonly portions: number | null;
}

/** A batch split: what is neither frozen nor eaten at once went into the fridge. */
export interface BatchSplit {
  readonly froze: number;
  readonly ate: number;
}

export type SplitProblem =
  | { readonly code: "split unclear"; readonly text: string }
  | { readonly code: "split has two rests" }
  | { readonly code: "split is another number"; readonly split: number; readonly cooked: number };

const PARTS_MAX = 20;
/** Commas and "and" part the pieces, but not "1,5" nor "1 and a half". */
const BETWEEN = /[;+\n]|,(?!\d)|(?<!\d),|\band\b(?! a half)/u;
const TIMES =
  /^ ?(?:x|×|\*|(?:boxes|box|bags|bag|tubs|tub|containers|container|trays|tray|jars|jar) of) ?/u;
const FILLER =
  /^ ?(?:portions?|boxes|box|bags?|tubs?|containers?|trays?|jars?)?(?: each)?:? ?(?:straight )?(?:in(?:to)?|to)? ?(?:the )?/u;
const REST = /^(?:the )?(?:rest|remaining|others?|all)\b(?: of it)?/u;
const PLACES: ReadonlyMap<string, SplitPart["place"]> = new Map([
  ["fridge", "fridge"],
  ["refrigerator", "fridge"],
  ["chilled", "fridge"],
  ["freezer", "freezer"],
  ["frozen", "freezer"],
  ["freeze", "freezer"],
  ["eaten", "eaten"],
  ["ate", "eaten"],
  ["eaten now", "eaten"],
]);

/**
 * Reads where a batch went, the way it is said beside the stove: "3 fridge, 5 freezer", "2 x 2 in the
 * fridge, 4 frozen", "1½ eaten, rest freezer". Containers are multiplied out; they are not kept.
 */
export function readSplit(text: string): Outcome<readonly SplitPart[], SplitProblem> {
  const pieces = fold(text.slice(0, 200))
    .split(BETWEEN)
    .map((piece) => piece.trim())
    .filter((piece) => piece !== "");
  const unclear = fail({ code: "split unclear" as const, text: excerpt(text) });
  if (pieces.length === 0 || pieces.length > PARTS_MAX) return unclear;
  const parts = pieces.map(readPart);
  const known = parts.filter((part) => part !== null);
  if (known.length < parts.length) return unclear;
  const rests = known.filter(({ portions }) => portions === null);
  return rests.length > 1 ? fail({ code: "split has two rests" }) : ok(known);
}

function readPart(piece: string): SplitPart | null {
  const rest = REST.exec(piece);
  const count =
    rest === null ? readCount(piece) : { portions: null, after: piece.slice(rest[0].length) };
  if (count === null) return null;
  const filler = FILLER.exec(count.after)?.[0] ?? "";
  const place = PLACES.get(count.after.slice(filler.length).trim());
  return place === undefined ? null : { place, portions: count.portions };
}

/** "3", "1½", "2 x 2", "2 boxes of 3", and what follows. */
function readCount(piece: string): { readonly portions: number; readonly after: string } | null {
  const first = single(piece);
  if (first === null) return null;
  const times = TIMES.exec(first.after);
  const second = times === null ? null : single(first.after.slice(times[0].length));
  if (times !== null && (second === null || !Number.isInteger(first.portions))) return null;
  const portions = first.portions * (second?.portions ?? 1);
  return isHalves(portions) ? { portions, after: (second ?? first).after } : null;
}

function single(text: string): { readonly portions: number; readonly after: string } | null {
  const read = numberAtStart(text);
  return read.ok && read.value.to === null
    ? { portions: read.value.value, after: read.value.rest }
    : null;
}

/** How many portions a split is of; null when it speaks of a rest. */
export function portionsInSplit(parts: readonly SplitPart[]): number | null {
  return parts.reduce<number | null>(
    (sum, { portions }) => (sum === null || portions === null ? null : sum + portions),
    0,
  );
}

/** Holds a split against the portions cooked; the rest, where there is one, may be none. */
export function splitOf(
  parts: readonly SplitPart[],
  cooked: number,
): Outcome<BatchSplit, SplitProblem> {
  const named = parts.reduce((sum, { portions }) => sum + (portions ?? 0), 0);
  const hasRest = parts.some(({ portions }) => portions === null);
  if (hasRest ? named > cooked : named !== cooked) {
    return fail({ code: "split is another number", split: named, cooked });
  }
  const at = (place: SplitPart["place"]): number =>
    parts.reduce(
      (sum, part) => sum + (part.place === place ? (part.portions ?? cooked - named) : 0),
      0,
    );
  return ok({ froze: at("freezer"), ate: at("eaten") });
}
