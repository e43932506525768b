import { givesFatOf, levelFactor, methodFactor, NOT_THIS, stateFactor } from "./find-factors.ts";
import type { IndexedFood, IndexedName } from "./food-index.ts";
import type { NameWords } from "./name-words.ts";
import { FAT_WORDS } from "./word-lists.ts";

/** Below this a match is a guess: better an unmeasured line than a wrong figure. */
export const SURE_ENOUGH = 0.67;

/** Words of a book, and how well each fits what was asked: 1 when it is the word itself. */
export type Matched = ReadonlyMap<string, number>;

/** What was asked, in words of the book. */
export interface Said {
  /** How well each word of the book fits any of the words asked. */
  readonly fits: Matched;
  /** For each word that decides, the words of the book that it may be. */
  readonly decisive: readonly Matched[];
}

/** What a rating goes by besides what was asked. */
interface RateMeans {
  /** How much a word tells: rare words tell more. */
  readonly tells: (word: string) => number;
  /** For foods that a group typed in. */
  readonly own: boolean;
  /** A food that surely comes out below this need not be rated. */
  readonly least: number;
}

/** A name fits by its share (at most 1) and what more of it was said. */
const NAME_FIT_MAX = 1 + 0.03 * 4;

/**
 * How surely a food is meant, about 0 to 1: how well its best name fits, less what speaks against it.
 * Null for one that is surely below `least`.
 */
export function rate(
  asked: NameWords,
  entry: IndexedFood,
  said: Said,
  { tells, own, least }: RateMeans,
): number | null {
  const against =
    nounFactor(asked, entry, said.decisive) *
    stateFactor(asked, entry) *
    methodFactor(asked.methods, entry) *
    levelFactor(asked, entry) *
    (entry.words.has("frozen") && said.fits.has("frozen") ? 1.04 : 1);
  if (against * NAME_FIT_MAX < least) return null;
  const gaveFat = givesFatOf(asked, entry);
  let best = own ? ownFit(entry, said) : 0;
  for (const name of entry.names) {
    const fit = rateName({ asked, gaveFat }, name, said, tells);
    best = Math.max(best, fit === 0 ? 0 : fit * unsaidFactor(asked, entry, name));
  }
  return best * against;
}

function isWithin<T>(some: ReadonlySet<T>, all: ReadonlySet<T>): boolean {
  for (const one of some) if (!all.has(one)) return false;
  return true;
}

/** For a state that the name has and the cook did not say. Raw and fresh are meant when nothing is. */
function unsaidFactor({ states }: NameWords, entry: IndexedFood, name: IndexedName): number {
  const isSaid = isWithin(name.states, states);
  // A cooked food is at most an afterthought to its raw form, unless it has a name that says neither.
  if (entry.food.state === "cooked" && !states.has("cooked") && !isSaid) {
    return entry.hasRaw && !states.has("fresh") ? 0.9 : NOT_THIS;
  }
  // Pulses and grains are bought dry; "plums" are no prunes.
  const driedToEat = entry.food.state === "ready" && name.states.has("dried");
  return driedToEat && !states.has("dried") ? NOT_THIS : 1;
}

/** Enough to be found, too little to come before a food of the table that fits. */
const OWN_FIT = 0.8;

/**
 * A pack's long name is seldom said in full: two of its words, with nothing that is not its own, will
 * do where the table has nothing better.
 */
function ownFit({ words }: IndexedFood, { fits, decisive }: Said): number {
  if (decisive.length < 2) return 0;
  const qualities = [...fits].filter(([word]) => words.has(word)).map(([, quality]) => quality);
  return OWN_FIT * Math.min(1, ...qualities);
}

/** Whether any of the words that one may be is among these. */
export function hasOne(words: ReadonlySet<string>, near: Matched): boolean {
  for (const word of near.keys()) if (words.has(word)) return true;
  return false;
}

/** Share of what the name's head tells that was said, then corrected by everything else that was. */
function rateName(
  { asked, gaveFat }: { readonly asked: NameWords; readonly gaveFat: boolean },
  name: IndexedName,
  { fits, decisive }: Said,
  tells: (word: string) => number,
): number {
  const head = toldBy(name.head, fits, tells, gaveFat ? fatIsSaid : notSaid);
  if (head.said === 0) return 0;
  // Words of the tail count only when they are said.
  const tail = toldBy(name.tail, fits, tells, leftOut);
  const extra = alsoSaid(asked, name) + tail.words;
  const told = 0.03 * Math.min(4, extra) - 0.005 * (name.tail.size - tail.words);
  const fit = (head.said + tail.said) / (head.all + tail.all) + told;
  return fit * 0.96 ** elsewhere(name, decisive);
}

/** How well a word fits that was not said: not at all, or null where it need not be said. */
type Unsaid = (word: string) => number | null;
const notSaid: Unsaid = () => 0;
const leftOut: Unsaid = () => null;
const fatIsSaid: Unsaid = (word) => (FAT_WORDS.has(word) ? 1 : 0);

interface Told {
  readonly all: number;
  readonly said: number;
  readonly words: number;
}

/** What these words tell, how much of that was said, and how many of them count. */
function toldBy(
  words: ReadonlySet<string>,
  fits: Matched,
  tells: (word: string) => number,
  unsaid: Unsaid,
): Told {
  let all = 0;
  let said = 0;
  let counted = 0;
  for (const word of words) {
    const quality = fits.get(word) ?? unsaid(word);
    if (quality === null) continue;
    const weight = tells(word);
    counted += 1;
    all += weight;
    said += weight * quality;
  }
  return { all, said, words: counted };
}

/** Words that need not be said count for the food that has them: "beef mince" is more than "beef". */
function alsoSaid(asked: NameWords, { head }: IndexedName): number {
  let count = 0;
  for (const { word, manner } of asked.words) if (manner && head.has(word)) count += 1;
  return count;
}

/** How many deciding words are not this name's own, but another name's of the same food. */
function elsewhere({ head, tail }: IndexedName, decisive: readonly Matched[]): number {
  let count = 0;
  for (const near of decisive) if (!hasOne(head, near) && !hasOne(tail, near)) count += 1;
  return count;
}

/** "Rice pudding" is no "pudding rice": what is named must be what the food is. */
function nounFactor(asked: NameWords, entry: IndexedFood, decisive: readonly Matched[]): number {
  if (asked.nouns.size === 0) return 1;
  for (const noun of asked.nouns) if (entry.nouns.has(noun)) return 1;
  // A noun with a slip is among the near words; a noun of cut or size need not be the food's.
  const slipped = asked.words.some(
    ({ word, manner }) => asked.nouns.has(word) && (manner || !entry.words.has(word)),
  );
  return slipped && decisive.some((near) => hasOne(entry.nouns, near)) ? 1 : NOT_THIS;
}
