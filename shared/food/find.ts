import type { FoodBook } from "./book.ts";
import { hasOne, type Matched, rate, type Said, SURE_ENOUGH } from "./find-rate.ts";
import { foldName } from "./fold-name.ts";
import { type FoodIndex, type IndexedFood, indexesOf } from "./food-index.ts";
import { mendWords } from "./mend-words.ts";
import { keysOf, type NameKeys, type NameWord, type NameWords, wordsOf } from "./name-words.ts";
import { lettersIn, mayBeNear, slipsAllowed, slipsBetween } from "./near-word.ts";
import { OTHER_FOODS } from "./other-foods.ts";
import type { Food } from "./types.ts";
import { MANNER_WORDS } from "./word-lists.ts";

/** A food that a text may mean; `score` 0 to 1, 1 when every word fits. */
export interface FoundFood {
  readonly food: Food;
  readonly score: number;
}

const SLIP_FACTOR = 0.85;
/** For a name that is whole but for words of cut and size; it outweighs that fresh is meant. */
const PLAIN_BONUS = { fresh: 0.02, preserved: 0.05 } as const;
/** Above any match of words, so that a name of a book always means its own food. */
const EXACT = { written: 3, single: 2 } as const;

/**
 * Foods that a cook's words mean, best first; empty when none is sure enough. Words of cut, size and
 * handling are passed over; every other word must belong to the food, with at most two slips in a
 * long word. Raw is meant unless the text says cooked; a dried, canned or fresh food never stands in
 * for another of these when the text names one, nor a fat, salted or skin-on food for one that is
 * said not to be. A group's own food comes before the table's when both fit equally well; a whole name
 * of either always finds its food. Work is bounded whatever the text.
 */
export function findFood(book: FoodBook, text: string, limit = 5): readonly FoundFood[] {
  const { layers, tells } = indexesOf(book);
  const folded = foldName(text);
  const keys = keysOf(folded);
  const whole = limit === 1 ? wholeName(layers, keys) : null;
  if (whole !== null) return [{ food: whole.food, score: 1 }];
  const asked = mendWords(wordsOf(folded), (word) => isKnown(layers, word));
  const found: RatedFood[] = [];
  for (const [layer, index] of layers.entries()) {
    const rated = ratedIn(index, layers, asked, keys, tells, limit === 1);
    for (const [entry, score] of rated) {
      if (score >= SURE_ENOUGH) found.push({ entry, score, layer });
    }
  }
  return found
    .sort((a, b) => b.score - a.score || a.layer - b.layer || a.entry.order - b.entry.order)
    .slice(0, limit)
    .map(({ entry, score }) => ({ food: entry.food, score: Math.min(1, score) }));
}

/** Whether a text is a whole name of a food. */
export function isWholeName(book: FoodBook, text: string): boolean {
  return wholeName(indexesOf(book).layers, keysOf(foldName(text))) !== null;
}

interface RatedFood {
  readonly entry: IndexedFood;
  readonly score: number;
  readonly layer: number;
}

/** The food that a whole name means: whatever else fits, it comes first. */
function wholeName(layers: readonly FoodIndex[], keys: NameKeys): IndexedFood | null {
  const firstOf = (pick: (index: FoodIndex) => IndexedFood | undefined) => {
    for (const index of layers) {
      const entry = pick(index);
      if (entry !== undefined) return entry;
    }
    return null;
  };
  return (
    firstOf((index) => index.byWritten.get(keys.written)) ??
    firstOf((index) => index.bySingle.get(keys.single))
  );
}

/** How surely each food of a layer is meant; `onlyBest`: those that are surely not the first may be left out. */
function ratedIn(
  index: FoodIndex,
  layers: readonly FoodIndex[],
  asked: NameWords,
  keys: NameKeys,
  tells: (word: string) => number,
  onlyBest: boolean,
): ReadonlyMap<IndexedFood, number> {
  const plain = index.byWritten.get(keys.plain) ?? null;
  const own = index !== layers[layers.length - 1];
  const rated = new Map<IndexedFood, number>();
  const { said, found } = candidates(index, layers, asked);
  let least = SURE_ENOUGH;
  for (const entry of found) {
    const bonus = entry !== plain ? 0 : PLAIN_BONUS[entry.preserved ? "preserved" : "fresh"];
    const score = rate(asked, entry, said, { tells, own, least: least - bonus });
    if (score === null) continue;
    rated.set(entry, score + bonus);
    if (onlyBest) least = Math.max(least, score + bonus);
  }
  return withWholeNames(index, keys, rated);
}

function withWholeNames(
  index: FoodIndex,
  keys: NameKeys,
  rated: Map<IndexedFood, number>,
): ReadonlyMap<IndexedFood, number> {
  const single = index.bySingle.get(keys.single);
  if (single !== undefined) rated.set(single, EXACT.single);
  const written = index.byWritten.get(keys.written);
  if (written !== undefined) rated.set(written, EXACT.written);
  return rated;
}

interface Candidates {
  readonly said: Said;
  /** The foods that every word that decides fits. */
  readonly found: readonly IndexedFood[];
}

function candidates(index: FoodIndex, layers: readonly FoodIndex[], asked: NameWords): Candidates {
  const fits = new Map<string, number>();
  const decisive: Matched[] = [];
  for (const asks of asked.words) {
    const near = nearWords(index, layers, asks);
    for (const [known, quality] of near) fits.set(known, Math.max(quality, fits.get(known) ?? 0));
    // After a comma, words that no book has ever heard of are about preparation.
    if (!asks.manner && !asks.aside && (asks.head || near.size > 0 || isKnown(layers, asks.word))) {
      decisive.push(near);
    }
  }
  const found = foodsOf(index, rarest(index, decisive) ?? fits).filter((entry) =>
    decisive.every((near) => hasOne(entry.words, near)),
  );
  return { said: { fits, decisive }, found };
}

/** The word that the fewest foods have: who lacks it cannot be meant. */
function rarest(index: FoodIndex, decisive: readonly Matched[]): Matched | null {
  let rare: Matched | null = null;
  let fewest = Number.POSITIVE_INFINITY;
  for (const near of decisive) {
    let count = 0;
    for (const known of near.keys()) count += index.byWord.get(known)?.length ?? 0;
    if (count < fewest) [rare, fewest] = [near, count];
  }
  return rare;
}

function foodsOf(index: FoodIndex, near: Matched): readonly IndexedFood[] {
  const lists = [...near.keys()].map((known) => index.byWord.get(known) ?? []);
  const [only = [], ...others] = lists;
  return others.length === 0 ? only : [...new Set(lists.flat())];
}

function isKnown(layers: readonly FoodIndex[], word: string): boolean {
  return layers.some((index) => index.byWord.has(word));
}

/** The word itself when a book has it; else, for a word that decides, words a slip or two away. */
function nearWords(index: FoodIndex, indexes: readonly FoodIndex[], asks: NameWord): Matched {
  const { word, head } = asks;
  if (index.byWord.has(word)) return new Map([[word, 1]]);
  const near = new Map<string, number>();
  const most = mostSlips(indexes, asks);
  if (most === 0) return near;
  const own = lettersIn(word);
  for (const { written, word: known, letters } of index.byLetter.get(word[0] ?? "") ?? []) {
    const slips = mayBeNear(own, letters, most) ? slipsBetween(word, written, most) : null;
    // After a comma stands prose, and "rather" is no "rasher".
    if (slips === null || (!head && MANNER_WORDS.has(known))) continue;
    near.set(known, Math.max(SLIP_FACTOR ** slips, near.get(known) ?? 0));
  }
  return near;
}

function mostSlips(indexes: readonly FoodIndex[], { word, manner }: NameWord): number {
  // The table has the word: then it is no slip. (A group's own book may well hold slips.)
  const inTable = indexes[indexes.length - 1]?.byWord.has(word) ?? false;
  return manner || inTable || OTHER_FOODS.has(word) ? 0 : slipsAllowed(word);
}
