import { fold } from "../words/fold.ts";
import type { FoodState } from "./word-lists.ts";
import { FILLER_WORDS, MANNER_WORDS, SPELLINGS, STATE_WORDS } from "./word-lists.ts";

/** One word of a food's name. */
export interface NameWord {
  readonly word: string;
  /** Stands before the first comma: "chicken" and "thigh" of "chicken thigh, skinless, raw". */
  readonly head: boolean;
  /** Says how it is cut or handled, not what it is. */
  readonly manner: boolean;
}

/** What a food's name says, taken apart. */
export interface NameWords {
  /** Every word but states and fillers, in order, each once. */
  readonly words: readonly NameWord[];
  readonly states: ReadonlySet<FoodState>;
  /** "5 % fat" -> 5; "95 % lean" -> 5; null when nothing is said. */
  readonly fatPct: number | null;
}

/** Longer text is cut: no food has a longer name, and the work must stay bounded. */
const MAX_CHARS = 120;
const MAX_WORDS = 14;

/** Takes a food's name, or what a cook typed for it, apart. Work is bounded whatever the text. */
export function nameWords(text: string): NameWords {
  const folded = foldName(text).replace(/\bpat(?:ted)? dry\b/gu, "");
  const words = new Map<string, NameWord>();
  const states = new Set<FoodState>();
  const comma = folded.indexOf(",");
  for (const match of [...folded.matchAll(/[a-z]+/gu)].slice(0, MAX_WORDS)) {
    const raw = match[0];
    const word = oneSpelling(raw);
    const state = STATE_WORDS.get(raw) ?? STATE_WORDS.get(word);
    const head = comma < 0 || match.index < comma;
    if (state !== undefined) states.add(state);
    else if (!FILLER_WORDS.has(raw) && !words.has(word)) {
      words.set(word, { word, head, manner: MANNER_WORDS.has(raw) || MANNER_WORDS.has(word) });
    }
  }
  return { words: [...words.values()], states, fatPct: readFatPct(folded) };
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
  const plain = words.filter((word) => !FILLER_WORDS.has(word) && !MANNER_WORDS.has(word));
  return {
    written: words.join(""),
    single: words.map(oneSpelling).join(""),
    plain: plain.join(""),
  };
}

function oneSpelling(word: string): string {
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

/** "5% fat", "95% lean", "85/15", "fat free": per cent of fat, null when nothing is said. */
function readFatPct(folded: string): number | null {
  const lean = /(\d{2}) ?(?:%|per ?cent) ?lean/u.exec(folded);
  if (lean !== null) return 100 - Number(lean[1]);
  const pair = /\b(\d{2}) ?\/ ?(\d{1,2})\b/u.exec(folded);
  if (pair !== null && Number(pair[1]) + Number(pair[2]) === 100) return Number(pair[2]);
  const share = /(\d{1,2}(?:\.\d)?) ?(?:%|per ?cent)/u.exec(folded);
  if (share !== null) return Number(share[1]);
  return /\b(?:fat.free|non.?fat)\b/u.test(folded) ? 0 : null;
}

function foldName(text: string): string {
  return fold(text.slice(0, MAX_CHARS)).replace(/'s?\b/gu, "");
}
