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
  return wordsOf(foldName(text));
}

/** The same of a name that `foldName` has folded. */
export function wordsOf(name: string): NameWords {
  const folded = name.includes("dry") ? name.replace(/\bpat(?:ted)? dry\b/gu, "") : name;
  const bounds = boundsOf(folded);
  const all: RawWord[] = [];
  for (const match of folded.matchAll(/[a-z]+/gu)) all.push(rawWord(match[0], match.index));
  const words = new Map<string, NameWord>();
  const states = new Set<FoodState>();
  const methods = new Set<CookMethod>();
  for (const one of all.slice(0, MAX_WORDS)) {
    if (one.isSaid && !words.has(one.word)) words.set(one.word, nameWord(one, bounds));
    if (one.state !== null) states.add(one.state);
    if (one.method !== null && !isJoint(one, bounds)) methods.add(one.method);
  }
  if (methods.size > 0) states.add("cooked");
  const nouns = nounsOf(folded.slice(0, bounds.headEnd), all);
  return { words: [...words.values()], nouns, states, methods, levels: levelsOf(folded) };
}

/** A "chuck roast" is a raw joint; "roast chuck" is not. */
function isJoint({ raw, at }: RawWord, { last }: Bounds): boolean {
  return raw === "roast" && at === last;
}

function boundsOf(folded: string): Bounds {
  const headEnd = /[,(;]/u.exec(folded)?.index ?? folded.length;
  const headText = folded.slice(0, headEnd);
  const aside =
    headEnd === folded.length
      ? null
      : / (?:in|with|for|from|into|until|to) /u.exec(folded.slice(headEnd));
  return {
    headEnd,
    last: /[a-z]+(?=[^a-z]*$)/u.exec(headText)?.index ?? -1,
    part: PART_OF.exec(headText)?.index ?? -1,
    salt: LITTLE_SALT.exec(folded)?.index ?? -1,
    asideAt: aside === null ? folded.length : headEnd + aside.index,
  };
}

/** A word as it stands in a name, and what it is by itself. */
interface RawWord {
  readonly raw: string;
  readonly at: number;
  /** In the singular and one spelling. */
  readonly word: string;
  /** No state and no filler. */
  readonly isSaid: boolean;
  readonly isManner: boolean;
  readonly state: FoodState | null;
  readonly method: CookMethod | null;
}

function rawWord(raw: string, at: number): RawWord {
  const word = oneSpelling(raw);
  const state = STATE_WORDS.get(raw) ?? STATE_WORDS.get(word) ?? null;
  return {
    raw,
    at,
    word,
    isSaid: state === null && !FILLER_WORDS.has(raw),
    isManner: isManner(raw, word),
    state,
    method: METHOD_WORDS.get(raw) ?? null,
  };
}

/** "Chicken skin" and "bacon fat" are no chicken and no bacon; "low fat" and "with skin" are handling. */
const PART_OF =
  /(?<=[a-z] )(?<!\b(?:with|and|no|less|low|lower|reduced|half|full|extra|visible|lean) )(?:skin|fat|bone|rind)s?$/u;

/** How salted a food is need not be known: `levelsOf` sees to it that no salty one is taken. */
const LITTLE_SALT = /(?<=\b(?:low|lower|reduced|less|no|added)[ -])(?:salt|sodium)\b/u;

interface Bounds {
  readonly headEnd: number;
  /** Where the head's last word begins. */
  readonly last: number;
  /** Where it begins if it names a part: "skin" of "chicken skin". */
  readonly part: number;
  /** Where "salt" begins of which there is little: "reduced-salt stock". */
  readonly salt: number;
  readonly asideAt: number;
}

function nameWord({ raw, at, word, isManner, method }: RawWord, bounds: Bounds): NameWord {
  const head = at < bounds.headEnd;
  const manner = method !== null || at === bounds.salt || (at !== bounds.part && isManner);
  return {
    word,
    head,
    manner: manner || (!head && TAIL_MANNER.has(raw)),
    aside: at > bounds.asideAt,
  };
}

function isManner(raw: string, word: string): boolean {
  if (MANNER_WORDS.has(raw) || MANNER_WORDS.has(word)) return true;
  if (raw.length < 5 || !raw.endsWith("ed") || raw.endsWith("eed")) return false;
  return !CHANGING_WORDS.has(raw);
}

/** The last word that tells what it is, before a comma, before "in" or "with", and before "of". */
function nounsOf(headText: string, words: readonly RawWord[]): ReadonlySet<string> {
  const what = / (?:in|with|for|from) /u.exec(headText)?.index ?? headText.length;
  const of = headText.indexOf(" of ");
  const ends = of < 0 || of > what ? [what] : [what, of];
  return new Set(ends.flatMap((end) => nounBefore(end, words)));
}

function nounBefore(end: number, words: readonly RawWord[]): readonly string[] {
  let manner: string | null = null;
  for (let i = words.length - 1; i >= 0; i -= 1) {
    const one = words[i];
    if (one === undefined || one.at >= end || one.state !== null || one.method !== null) continue;
    if (FILLER_WORDS.has(one.raw)) continue;
    if (!one.isManner) return [one.word];
    manner ??= one.word;
  }
  return manner === null ? [] : [manner];
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
  return keysOf(foldName(text));
}

/** The same of a name that `foldName` has folded. */
export function keysOf(folded: string): NameKeys {
  const words = folded.match(/[a-z]+|\d+/gu) ?? [];
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
