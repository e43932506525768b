import { foldName } from "./fold-name.ts";
import { levelsOf, type NameLevels } from "./name-levels.ts";
import type { CookMethod, FoodState } from "./word-lists.ts";
import {
  CHANGING_WORDS,
  FILLER_WORDS,
  MANNER_WORDS,
  METHOD_WORDS,
  SPELLINGS,
  STATE_WORDS,
  TAIL_MANNER,
} from "./word-lists.ts";

/** One word of a food's name. */
export interface NameWord {
  readonly word: string;
  /** Stands before the first comma: "chicken" and "thigh" of "chicken thigh, skinless, raw". */
  readonly head: boolean;
  /** Says how it is cut, measured or handled, not what it is. */
  readonly manner: boolean;
  /** Stands after a comma and "with" or "in": "water" of "cornflour, mixed with water". */
  readonly aside: boolean;
}

/** What a food's name says, taken apart. */
export interface NameWords {
  /** Every word but states and fillers, in order, each once. */
  readonly words: readonly NameWord[];
  /** What the name is a name of: "juice" of "lemon juice" and of "juice of a lemon". */
  readonly nouns: ReadonlySet<string>;
  readonly states: ReadonlySet<FoodState>;
  readonly methods: ReadonlySet<CookMethod>;
  readonly levels: NameLevels;
}

/** No food has a longer name, and the work must stay bounded. */
const MAX_WORDS = 14;

/** Takes a food's name, or what a cook typed for it, apart. Work is bounded whatever the text. */
export function nameWords(text: string): NameWords {
  const folded = foldName(text).replace(/\bpat(?:ted)? dry\b/gu, "");
  const headEnd = /[,(;]/u.exec(folded)?.index ?? folded.length;
  const headText = folded.slice(0, headEnd);
  const asideAt = / (?:in|with|for|from|into|until|to) /u.exec(folded.slice(headEnd));
  const bounds = {
    headEnd,
    last: /[a-z]+(?=[^a-z]*$)/u.exec(headText)?.index ?? -1,
    part: PART_OF.exec(headText)?.index ?? -1,
    asideAt: asideAt === null ? folded.length : headEnd + asideAt.index,
  };
  const read = [...folded.matchAll(/[a-z]+/gu)]
    .slice(0, MAX_WORDS)
    .map((match) => readWord(match[0], match.index, bounds));
  const words = new Map<string, NameWord>();
  for (const { word } of read) {
    if (word !== null && !words.has(word.word)) words.set(word.word, word);
  }
  const methods = read.flatMap(({ method }) => method ?? []);
  const states = read.flatMap(({ state }) => state ?? []);
  return {
    words: [...words.values()],
    nouns: nounsOf(headText),
    states: new Set(methods.length > 0 ? [...states, "cooked"] : states),
    methods: new Set(methods),
    levels: levelsOf(folded),
  };
}

interface ReadWord {
  /** Null for a state or a filler. */
  readonly word: NameWord | null;
  readonly state: FoodState | null;
  readonly method: CookMethod | null;
}

/** "Chicken skin" and "bacon fat" are no chicken and no bacon; "low fat" and "with skin" are handling. */
const PART_OF =
  /(?<=[a-z] )(?<!\b(?:with|and|no|less|low|lower|reduced|half|full|extra|visible|lean) )(?:skin|fat|bone|rind)s?$/u;

interface Bounds {
  readonly headEnd: number;
  /** Where the head's last word begins. */
  readonly last: number;
  /** Where it begins if it names a part: "skin" of "chicken skin". */
  readonly part: number;
  readonly asideAt: number;
}

function readWord(raw: string, at: number, bounds: Bounds): ReadWord {
  const word = oneSpelling(raw);
  const state = STATE_WORDS.get(raw) ?? STATE_WORDS.get(word) ?? null;
  // A "chuck roast" is a raw joint; "roast chuck" is not.
  const method = raw === "roast" && at === bounds.last ? null : (METHOD_WORDS.get(raw) ?? null);
  const said = state === null && !FILLER_WORDS.has(raw);
  const manner = METHOD_WORDS.has(raw) || (at !== bounds.part && isManner(raw, word));
  const head = at < bounds.headEnd;
  const nameWord = {
    word,
    head,
    manner: manner || (!head && TAIL_MANNER.has(raw)),
    aside: at > bounds.asideAt,
  };
  return { word: said ? nameWord : null, state, method };
}

function isManner(raw: string, word: string): boolean {
  if (MANNER_WORDS.has(raw) || MANNER_WORDS.has(word)) return true;
  if (raw.length < 5 || CHANGING_WORDS.has(raw)) return false;
  return /[^e]ed$/u.test(raw);
}

/** The last word that tells what it is, before a comma, before "in" or "with", and before "of". */
function nounsOf(headText: string): ReadonlySet<string> {
  const what = headText.split(/ (?:in|with|for|from) /u)[0] ?? "";
  const parts = [what, what.split(" of ")[0] ?? ""];
  return new Set(
    parts.flatMap((part) => {
      const telling = (part.match(/[a-z]+/gu) ?? []).filter(
        (raw) => !STATE_WORDS.has(raw) && !FILLER_WORDS.has(raw) && !METHOD_WORDS.has(raw),
      );
      const noun =
        telling.findLast((raw) => !isManner(raw, oneSpelling(raw))) ?? telling[telling.length - 1];
      return noun === undefined ? [] : [oneSpelling(noun)];
    }),
  );
}

/** A whole name as comparable texts, the strictest first. */
export interface NameKeys {
  /** As written but for capitals, accents and gaps: "peppers" is not "pepper". */
  readonly written: string;
  /** With every word in the singular and one spelling. */
  readonly single: string;
  /** As written, without words of cut and size: "diced peppers" is "peppers". */
  readonly plain: string;
}

export function nameKeys(text: string): NameKeys {
  const words = foldName(text).match(/[a-z]+|\d+/gu) ?? [];
  const plain = words.filter((word) => !FILLER_WORDS.has(word) && !isManner(word, word));
  return {
    written: words.join(""),
    single: words.map(oneSpelling).join(""),
    plain: plain.join(""),
  };
}

export function oneSpelling(word: string): string {
  const single = singular(word);
  return SPELLINGS.get(single) ?? SPELLINGS.get(word) ?? single;
}

/** A rough English singular: it need not be a word, only the same for both forms. */
function singular(word: string): string {
  if (word.length <= 3 || /(?:ss|us|is)$/u.test(word)) return word;
  if (word.endsWith("ies")) return `${word.slice(0, -3)}y`;
  if (/(?:oes|ches|shes|xes|sses)$/u.test(word)) return word.slice(0, -2);
  return word.endsWith("s") ? word.slice(0, -1) : word;
}
