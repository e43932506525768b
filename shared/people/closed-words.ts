import { slipsAllowed, slipsBetween } from "../food/near-word.ts";
import { foldWords } from "../words/fold.ts";
import { singular } from "../words/plural.ts";

/** A closed set of phrases that people may type, and what each means. */
export interface ClosedWords<Meaning> {
  /** Folded, every word in the singular, at most three words each. */
  readonly phrases: ReadonlyMap<string, Meaning>;
  /** Words that carry no meaning here: "and", "allergic", "to". */
  readonly fillers: ReadonlySet<string>;
}

/** One phrase as found in a text. */
export interface FoundPhrase<Meaning> {
  readonly meaning: Meaning;
  /** As typed, folded: "penuts". */
  readonly said: string;
  /** The phrase it was taken for: "peanut". */
  readonly phrase: string;
  /** True when it was taken for that phrase in spite of a slip in the spelling. */
  readonly isGuess: boolean;
}

export interface ReadWords<Meaning> {
  readonly found: readonly FoundPhrase<Meaning>[];
  /** Runs of words that mean nothing here, as typed. */
  readonly notUnderstood: readonly string[];
}

const MAX_CHARS = 300;
const LONGEST_PHRASE = 3;

/**
 * Reads a text as phrases of a closed set, the longest first, fillers passed over. A single word may
 * hold a slip or two when it is long enough and only one meaning is that near. Work is bounded
 * whatever the text: what stands behind the first 300 characters counts as not understood.
 */
export function readClosedWords<Meaning>(
  text: string,
  closed: ClosedWords<Meaning>,
): ReadWords<Meaning> {
  const words = wordsOf(text);
  const found: FoundPhrase<Meaning>[] = [];
  const strange: { at: number; words: string[] }[] = [];
  let at = 0;
  while (at < words.length) {
    const phrase = phraseAt(words, at, closed);
    if (phrase !== null) {
      found.push(phrase.found);
      at += phrase.length;
      continue;
    }
    const word = words[at] ?? "";
    if (!closed.fillers.has(word)) addStrange(strange, at, word);
    at += 1;
  }
  const cut = text.length > MAX_CHARS ? ["(and more)"] : [];
  const runs = strange.map((run) => run.words.join(" "));
  return { found, notUnderstood: [...runs, ...signsIn(text), ...cut] };
}

/** The folded words of a text, as typed. */
export function wordsOf(text: string): readonly string[] {
  return foldWords(text.slice(0, MAX_CHARS))
    .split(" ")
    .filter((word) => word !== "");
}

/** Pictures among the letters: they mean something to who typed them, and folding would drop them unread. */
export function signsIn(text: string): readonly string[] {
  return text.slice(0, MAX_CHARS).match(/\p{Extended_Pictographic}/gu) ?? [];
}

/** The words at `at` as one phrase, each in the singular; null when there are not so many. */
export function phraseOf(words: readonly string[], at: number, length: number): string | null {
  const slice = words.slice(at, at + length);
  return slice.length < length ? null : slice.map(singular).join(" ");
}

function phraseAt<Meaning>(
  words: readonly string[],
  at: number,
  closed: ClosedWords<Meaning>,
): { readonly found: FoundPhrase<Meaning>; readonly length: number } | null {
  for (let length = LONGEST_PHRASE; length >= 1; length -= 1) {
    const phrase = phraseOf(words, at, length);
    const meaning = phrase === null ? undefined : closed.phrases.get(phrase);
    if (phrase === null || meaning === undefined) continue;
    const said = words.slice(at, at + length).join(" ");
    return { found: { meaning, said, phrase, isGuess: false }, length };
  }
  const word = words[at] ?? "";
  const guess = closed.fillers.has(word) ? null : nearPhrase(word, closed.phrases);
  return guess === null ? null : { found: { ...guess, said: word, isGuess: true }, length: 1 };
}

/** The phrase of one word that a misspelt word is nearest to; null when none is, or two of other meaning. */
function nearPhrase<Meaning>(
  typed: string,
  phrases: ReadonlyMap<string, Meaning>,
): { readonly phrase: string; readonly meaning: Meaning } | null {
  const word = singular(typed);
  const most = slipsAllowed(word);
  if (most === 0) return null;
  let best: { phrase: string; meaning: Meaning; slips: number } | null = null;
  let isTie = false;
  for (const [phrase, meaning] of phrases) {
    const slips = phrase.includes(" ") ? null : slipsBetween(word, phrase, most);
    if (slips === null || (best !== null && slips > best.slips)) continue;
    isTie = best !== null && slips === best.slips && (isTie || best.meaning !== meaning);
    best = { phrase, meaning, slips };
  }
  return best === null || isTie ? null : best;
}

function addStrange(runs: { at: number; words: string[] }[], at: number, word: string): void {
  const last = runs.at(-1);
  if (last !== undefined && last.at + last.words.length === at) last.words.push(word);
  else runs.push({ at, words: [word] });
}
