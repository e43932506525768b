import { slipsAllowed, slipsBetween } from "../food/near-word.ts";
import { type BookIndex, type BookWord, FIELDS, lettersOf } from "./book-index.ts";
import { oneForm, wordsIn } from "./book-words.ts";

/** No search needs more; the rest is not read. */
const MAX_ASKED = 8;
/** Shorter beginnings are in far too many words to tell anything but of a title. */
const SHORTEST = { otherBeginning: 2, titleInside: 2, otherInside: 3 } as const;

/** How well a word of the book fits the word asked: the higher, the better. 0 is not at all. */
const QUALITY = {
  whole: { title: 10, tag: 8, food: 7 },
  beginning: { title: 9, tag: 6, food: 5 },
  inside: { title: 4, tag: 3, food: 3 },
  slips: { title: 2, tag: 1, food: 1 },
} as const;
type Fit = keyof typeof QUALITY;

const UNSAID: ReadonlySet<string> = new Set("a an and for in of or recipe the with".split(" "));

/** A word that nothing has, and the nearest that something has. */
export interface Mended {
  readonly typed: string;
  readonly taken: string;
}

export interface RatedWords {
  /** Places of the entries that have all the words, best first. */
  readonly places: readonly number[];
  readonly mended: readonly Mended[];
}

/** Words asked for: of an empty text none, and of "the with" these two. */
export function askedWords(text: string): readonly string[] {
  const words = [...new Set(wordsIn(text))];
  const telling = words.filter((word) => !UNSAID.has(oneForm(word)));
  return (telling.length > 0 ? telling : words).slice(0, MAX_ASKED);
}

/**
 * Entries that have every word asked in title, tags or foods, in any order and number: whole words before
 * beginnings, before middles; a word that nothing has is taken for those a slip or two away. Of
 * equals that whose title begins with the text comes first, then by title.
 */
export function rateWords(
  index: BookIndex,
  asked: readonly string[],
  options: { readonly isTyping: boolean; readonly start: string },
): RatedWords {
  const size = index.entries.length;
  const worst = new Uint8Array(size).fill(255);
  const sum = new Uint16Array(size);
  const mended: Mended[] = [];
  for (const word of asked) {
    const rated = rateWord(index, word, options.isTyping);
    if (rated.taken !== null) mended.push({ typed: word, taken: rated.taken });
    for (let place = 0; place < size; place += 1) {
      const quality = rated.quality[place] ?? 0;
      worst[place] = Math.min(worst[place] ?? 0, quality);
      sum[place] = (sum[place] ?? 0) + quality;
    }
  }
  const places: number[] = [];
  for (let place = 0; place < size; place += 1) if ((worst[place] ?? 0) > 0) places.push(place);
  const score = places.map((place) => {
    const starts = options.start !== "" && index.titles[place]?.startsWith(options.start) === true;
    // The sum of eight words is at most 80.
    return (starts ? 100_000 : 0) + (worst[place] ?? 0) * 100 + (sum[place] ?? 0);
  });
  const order = places.map((_, at) => at);
  order.sort((a, b) => (score[b] ?? 0) - (score[a] ?? 0) || a - b);
  return { places: order.map((at) => places[at] ?? 0), mended };
}

interface RatedWord {
  /** By place. */
  readonly quality: Uint8Array;
  /** The word it was taken for where there was a slip. */
  readonly taken: string | null;
}

function rateWord(index: BookIndex, asked: string, isTyping: boolean): RatedWord {
  const quality = new Uint8Array(index.entries.length);
  const form = oneForm(asked);
  let any = false;
  for (const word of index.words) {
    const fit = fitOf(word.word, asked, form);
    if (fit !== null) any = note(quality, word, fit, asked.length) || any;
  }
  if (any) return { quality, taken: null };
  const near = nearWords(index, asked, isTyping);
  for (const word of near) note(quality, word, "slips", asked.length);
  return { quality, taken: near[0]?.word ?? null };
}

function fitOf(word: string, asked: string, form: string): Fit | null {
  if (word === asked || word === form) return "whole";
  if (word.startsWith(asked)) return "beginning";
  return asked.length >= SHORTEST.titleInside && word.includes(asked) ? "inside" : null;
}

/** Marks the entries that have the word; false when it is too short to tell of any. */
function note(quality: Uint8Array, word: BookWord, fit: Fit, letters: number): boolean {
  let any = false;
  for (const field of FIELDS) {
    if (field !== "title" && isTooShort(fit, letters)) continue;
    const places = word.in[field];
    const worth = QUALITY[fit][field];
    any ||= places.length > 0;
    for (const place of places) if ((quality[place] ?? 0) < worth) quality[place] = worth;
  }
  return any;
}

function isTooShort(fit: Fit, letters: number): boolean {
  if (fit === "beginning") return letters < SHORTEST.otherBeginning;
  return fit === "inside" && letters < SHORTEST.otherInside;
}

/** Words of the book with the fewest slips from the one asked, or from its beginning while it is being typed. */
function nearWords(index: BookIndex, asked: string, isTyping: boolean): readonly BookWord[] {
  const most = slipsAllowed(asked);
  if (most === 0) return [];
  const letters = lettersOf(asked);
  let fewest = most;
  let near: BookWord[] = [];
  for (const word of index.words) {
    if (bitsIn(letters & ~word.letters) > most) continue;
    const slips = slipsTo(asked, word.word, fewest, isTyping);
    if (slips === null) continue;
    if (slips < fewest) near = [];
    fewest = slips;
    near.push(word);
  }
  return near;
}

function slipsTo(asked: string, word: string, most: number, isTyping: boolean): number | null {
  const whole = slipsBetween(asked, word, most);
  if (!isTyping || word.length <= asked.length) return whole;
  const tried = [-1, 0, 1].map((more) =>
    slipsBetween(asked, word.slice(0, asked.length + more), most),
  );
  return [whole, ...tried].reduce((a, b) => (a === null || (b !== null && b < a) ? b : a));
}

function bitsIn(bits: number): number {
  let left = bits;
  let count = 0;
  while (left !== 0) {
    left &= left - 1;
    count += 1;
  }
  return count;
}
