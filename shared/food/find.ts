import type { FoodBook } from "./book.ts";
import { type Matched, rate, SURE_ENOUGH } from "./find-rate.ts";
import { type FoodIndex, type IndexedFood, indexesOf } from "./food-index.ts";
import { mendWords } from "./mend-words.ts";
import { type NameKeys, type NameWord, type NameWords, nameKeys, nameWords } from "./name-words.ts";
import { slipsAllowed, slipsBetween } from "./near-word.ts";
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
  const indexes = indexesOf(book);
  const asked = mendWords(nameWords(text), (word) => isKnown(indexes, word));
  const keys = nameKeys(text);
  const tells = tellsIn(indexes);
  const found = indexes.flatMap((index, layer) =>
    [...ratedIn(index, indexes, asked, keys, tells)]
      .filter(([, score]) => score >= SURE_ENOUGH)
      .map(([entry, score]) => ({ entry, score, layer })),
  );
  return found
    .sort((a, b) => b.score - a.score || a.layer - b.layer || a.entry.order - b.entry.order)
    .slice(0, limit)
    .map(({ entry, score }) => ({ food: entry.food, score: Math.min(1, score) }));
}

/** How much a word tells in all the books together: rare words tell more. */
function tellsIn(indexes: readonly FoodIndex[]): (word: string) => number {
  const size = indexes.reduce((sum, index) => sum + index.size, 0);
  return (word) => {
    const foods = indexes.reduce((sum, index) => sum + (index.byWord.get(word)?.length ?? 0), 0);
    return Math.log(1 + size / Math.max(1, foods));
  };
}

function ratedIn(
  index: FoodIndex,
  indexes: readonly FoodIndex[],
  asked: NameWords,
  keys: NameKeys,
  tells: (word: string) => number,
): ReadonlyMap<IndexedFood, number> {
  const plain = index.byWritten.get(keys.plain) ?? null;
  const own = index !== indexes[indexes.length - 1];
  const rated = new Map<IndexedFood, number>();
  const { decisive, found } = candidates(index, indexes, asked);
  for (const [entry, matched] of found) {
    const bonus = PLAIN_BONUS[entry.preserved ? "preserved" : "fresh"];
    const score = rate(asked, entry, matched, decisive, tells, own);
    rated.set(entry, score + (entry === plain ? bonus : 0));
  }
  const single = index.bySingle.get(keys.single);
  if (single !== undefined) rated.set(single, EXACT.single);
  const written = index.byWritten.get(keys.written);
  if (written !== undefined) rated.set(written, EXACT.written);
  return rated;
}

interface Candidates {
  /** For each word that decides, the words of the book that it may be. */
  readonly decisive: readonly Matched[];
  /** The foods that every one of them fits. */
  readonly found: ReadonlyMap<IndexedFood, Matched>;
}

function candidates(index: FoodIndex, indexes: readonly FoodIndex[], asked: NameWords): Candidates {
  const matches = new Map<IndexedFood, Map<string, number>>();
  const decisive: Matched[] = [];
  for (const asks of asked.words) {
    const near = nearWords(index, indexes, asks);
    // After a comma, words that no book has ever heard of are about preparation.
    if (
      !asks.manner &&
      !asks.aside &&
      (asks.head || near.size > 0 || isKnown(indexes, asks.word))
    ) {
      decisive.push(near);
    }
    for (const [known, quality] of near) noteMatch(index, matches, known, quality);
  }
  const found = [...matches].filter(([entry]) =>
    decisive.every((near) => [...near.keys()].some((known) => entry.words.has(known))),
  );
  return { decisive, found: new Map(found) };
}

function noteMatch(
  index: FoodIndex,
  matches: Map<IndexedFood, Map<string, number>>,
  known: string,
  quality: number,
): void {
  for (const entry of index.byWord.get(known) ?? []) {
    const matched = matches.get(entry) ?? new Map<string, number>();
    matched.set(known, Math.max(quality, matched.get(known) ?? 0));
    matches.set(entry, matched);
  }
}

function isKnown(indexes: readonly FoodIndex[], word: string): boolean {
  return indexes.some((index) => index.byWord.has(word));
}

/** The word itself when a book has it; else, for a word that decides, words a slip or two away. */
function nearWords(index: FoodIndex, indexes: readonly FoodIndex[], asks: NameWord): Matched {
  const { word, head } = asks;
  if (index.byWord.has(word)) return new Map([[word, 1]]);
  const near = new Map<string, number>();
  const most = mostSlips(indexes, asks);
  if (most === 0) return near;
  for (const [written, known] of index.byLetter.get(word[0] ?? "") ?? []) {
    const slips = slipsBetween(word, written, most);
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
