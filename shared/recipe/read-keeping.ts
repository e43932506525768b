import { lengthsOf } from "./keeping-lengths.ts";
import type { StatedKeeping } from "./types.ts";

/** One statement about keeping, and the part it speaks of ("" for the whole). */
export interface KeepingClause {
  readonly about: string;
  readonly keeping: StatedKeeping;
  /** A length that no food keeps, or a freezer time under a month. */
  readonly outOfRange: boolean;
}

const FRIDGE_DAYS_MAX = 60;
const FREEZER_MONTHS_MAX = 24;

export const NOTHING_STATED: StatedKeeping = {
  fridgeDays: null,
  freezerMonths: null,
  freezes: null,
  reason: "",
};

const VERB =
  /\b(?:keeps?|lasts?|freezes?|(?<!not )suitable for (?:home )?freezing|freezer[- ]friendly|freezable|best (?:eaten |used )?within|consume within|(?:does|do) ?n[o'’]t (?:freeze|keep)|(?:does|do) not (?:freeze|keep)|can ?not be frozen|can't be frozen|can be frozen|not (?:suitable )?for (?:home )?freezing|eat (?:it |them )?(?:within|the same day|on the same day)|use within|good for)\b|^(?:in the )?(?:fridge|refrigerator|freezer)\b/iu;
/** "Store in the fridge for up to 3 days": an order, but no step that goes on. */
const STORE =
  /^(?:store|refrigerate|chill|keep (?:chilled|refrigerated|cold|in)|box up)\b(?!.{0,200}\b(?:before|until|then|overnight|hours?)\b).{0,100}\b(?:for|up to|within|max(?:imum)?)\b.{0,20}\b(?:days?|weeks?|months?)\b/iu;
/** "Fridge: 3 days", "In the freezer 2 months". */
const PLACE = /^(?:in the )?(?:fridge|refrigerator|freezer)\b/iu;
/** "Up to one week in the fridge", "3 days chilled", with no verb at all. */
const BARE =
  /^(?:for |about |at most |max(?:imum|\.)? )?(?:up to )?(?:\d{1,2}|an?|one|two|three|four|five|six|seven)(?: ?(?:-|–|to|or) ?(?:\d{1,2}|one|two|three|four|five|six|seven))? (?:days?|weeks?|months?) (?:in (?:the|a) )?(?:fridge|freezer|refrigerator|chilled|refrigerated|frozen|if (?:chilled|frozen|refrigerated))\b.{0,40}$/iu;
/** "Lime sauce: up to one week in the fridge". */
const NAMED = /^(\p{L}[^:]{0,59}?) ?: (.{3,80})$/u;
const NOT_FROZEN =
  /\b(?:(?:does|do) not freeze|(?:does|do)n['’]t freeze|can ?not be frozen|can't be frozen|not (?:suitable )?for (?:home )?freezing)\b(?: well)?/iu;
const FROZEN_BADLY = /\bfreezes? (?:badly|poorly)\b|\b(?:does|do) not freeze well\b/iu;
const FROZEN_WELL =
  /\bfreezes?\b|\b(?:suitable for (?:home )?freezing|freezer[- ]friendly|freezable|can be frozen)\b/iu;
const SAME_DAY = /\b(?:same day|(?:does|do) not keep|(?:does|do)n['’]t keep)\b/iu;
const REASON = /(?: ?: | ?[–—] | - |, because |,? as | because | \()(.{1,200})$/iu;

/**
 * Reads sentences about keeping: "Keeps 3 days in the fridge, freezes 3 months.", "Lime sauce keeps up
 * to one week", "Freezes badly: the sauce splits". Null when the line is not about keeping. Of a range
 * the lower end counts.
 */
export function readKeeping(text: string): readonly KeepingClause[] | null {
  const clauses = text
    .replace(/^(?:keeping|storage|to store|store|make ahead) ?: ?/iu, "")
    .split(/(?<=[.;!]) /u)
    .flatMap(clausesOf)
    .map(readClause);
  const known = clauses.filter((clause) => clause !== null);
  return known.length > 0 && known.length === clauses.length ? known : null;
}

/** Cuts a sentence before each new statement; what holds no verb belongs to the one before. */
function clausesOf(sentence: string): readonly string[] {
  const pieces: string[] = [];
  for (const piece of sentence.split(/(, (?:and |but )?| and | but | ?[/|] |,? or (?=freez))/u)) {
    const last = pieces.at(-1);
    const startsNew =
      last === undefined || (isStatement(piece, last) && readClause(piece) !== null);
    if (startsNew) pieces.push(piece);
    else pieces[pieces.length - 1] = `${last}${piece}`;
  }
  return pieces
    .map((piece) => piece.replace(/(?:,| and| but| or|[.;!/|\s])+$/u, "").trim())
    .filter((piece) => piece !== "");
}

/** Whether a piece states something itself; "3 months frozen" and "freezer 3 months" only beside others like it. */
function isStatement(piece: string, last: string): boolean {
  const isPlaced = (one: string) => BARE.test(one) || PLACE.test(one);
  if (isPlaced(piece)) return isPlaced(last);
  return [piece, last].every((one) => VERB.test(one) || STORE.test(one) || BARE.test(one));
}

function readClause(clause: string): KeepingClause | null {
  const about = aboutOf(clause);
  if (about === null) return null;
  const { fridgeDays: days, freezerMonths } = lengthsOf(clause);
  const fridgeDays = SAME_DAY.test(clause) ? 0 : days;
  const freezes = freezingOf(clause) ?? (freezerMonths === null ? null : "well");
  if (fridgeDays === null && freezes === null) return null;
  const reason = freezes === "poorly" || freezes === "no" ? reasonOf(clause) : "";
  return {
    about,
    keeping: { fridgeDays, freezerMonths, freezes, reason },
    outOfRange: isOutOfRange(fridgeDays, freezerMonths),
  };
}

/** What a statement speaks of, "" for the whole; null when it is none about keeping. */
function aboutOf(clause: string): string | null {
  const named = NAMED.exec(clause);
  if (named !== null && BARE.test(named[2] ?? "")) return subject(named[1] ?? "");
  if (STORE.test(clause) || BARE.test(clause)) return "";
  const verb = VERB.exec(clause);
  return verb === null ? null : subject(clause.slice(0, verb.index));
}

function isOutOfRange(fridgeDays: number | null, freezerMonths: number | null): boolean {
  const months = freezerMonths ?? 1;
  return (fridgeDays ?? 0) > FRIDGE_DAYS_MAX || months > FREEZER_MONTHS_MAX || months < 1;
}

const WHOLE = new Set([
  "",
  "it",
  "this",
  "the whole",
  "whole",
  "everything",
  "all",
  "all of it",
  "the dish",
  "dish",
  "leftovers",
  "any leftovers",
  "shelf life",
  "keeping time",
  "these",
  "meals",
  "portions",
  "the portions",
  "boxes",
  "the boxes",
  "the meal",
  "cooked",
  "they",
]);

/** The part before the verb: at most six words, else the line is about something else. */
function subject(before: string): string | null {
  const said = before
    .replace(/^(?:and|but|also|then) /iu, "")
    .replace(/[\s:,-]+$/u, "")
    .replace(/\b(?:will|should|can|may)(?: (?:happily|then|also|all))?$/iu, "")
    .trim();
  if (WHOLE.has(said.toLowerCase())) return "";
  if (said.length > 60 || said.split(" ").length > 6 || /[.:;!?]/u.test(said)) return null;
  return said.replace(/^the /iu, "");
}

function freezingOf(clause: string): StatedKeeping["freezes"] {
  if (FROZEN_BADLY.test(clause)) return "poorly";
  if (NOT_FROZEN.test(clause)) return "no";
  const says = FROZEN_WELL.exec(clause);
  if (says === null) return null;
  const hasMonths = lengthsOf(clause).freezerMonths !== null;
  return hasMonths ||
    /\bfreezes(?: very| really)? well\b|\bfreezes\.?$|\b(?:suitable for (?:home )?freezing|freezer[- ]friendly|freezable|can be frozen)\b/iu.test(
      clause,
    )
    ? "well"
    : null;
}

function reasonOf(clause: string): string {
  const said = FROZEN_BADLY.exec(clause) ?? NOT_FROZEN.exec(clause);
  const after = said === null ? "" : clause.slice(said.index + said[0].length);
  return (REASON.exec(after)?.[1] ?? "").replace(/[).\s]+$/u, "").trim();
}
