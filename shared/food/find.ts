import type { FoodBook } from "./book.ts";
import { type FoodIndex, type IndexedFood, type IndexedName, indexOf } from "./food-index.ts";
import { type NameWords, nameKeys, nameWords } from "./name-words.ts";
import { slipsAllowed, slipsBetween } from "./near-word.ts";
import type { Food } from "./types.ts";
import type { FoodState } from "./word-lists.ts";

/** A food that a text may mean; `score` 0 to 1, 1 when every word fits. */
export interface FoundFood {
  readonly food: Food;
  readonly score: number;
}

/** Below this a match is a guess: better an unmeasured line than a wrong figure. */
const SURE_ENOUGH = 0.65;
const SLIP_FACTOR = 0.85;

/**
 * Foods that a cook's words mean, best first; empty when none is sure enough. Words of cut, size and
 * handling are passed over; every other word must belong to the food, with at most two slips in a
 * long word. Raw is meant unless the text says cooked; a dried, canned or fresh food never stands in
 * for another of these when the text names one. Work is bounded whatever the text.
 */
export function findFood(book: FoodBook, text: string, limit = 5): readonly FoundFood[] {
  const index = indexOf(book);
  const asked = nameWords(text);
  const keys = nameKeys(text);
  const exact = index.byWritten.get(keys.written) ?? index.bySingle.get(keys.single) ?? null;
  const plain = index.byWritten.get(keys.plain) ?? null;
  const best = new Map<IndexedFood, number>();
  for (const [name, matched] of candidates(index, asked)) {
    const score = rate(index, asked, name, matched) + (name.entry === plain ? 0.02 : 0);
    if (score > (best.get(name.entry) ?? 0)) best.set(name.entry, score);
  }
  // Above all others, so that a name of the table always means its own food.
  if (exact !== null) best.set(exact, 2);
  return [...best]
    .filter(([, score]) => score >= SURE_ENOUGH)
    .sort(([a, scoreA], [b, scoreB]) => scoreB - scoreA || a.order - b.order)
    .slice(0, limit)
    .map(([entry, score]) => ({ food: entry.food, score: Math.min(1, score) }));
}

/** For each name that every decisive word fits: how well each of its words was matched. */
function candidates(index: FoodIndex, asked: NameWords): Map<IndexedName, Map<string, number>> {
  const found = new Map<IndexedName, Map<string, number>>();
  const decisive: ReadonlyMap<string, number>[] = [];
  for (const { word, head, manner } of asked.words) {
    const near = nearWords(index, word, manner);
    // After a comma, words the table has never heard of are about preparation.
    if (!manner && (head || near.size > 0)) decisive.push(near);
    for (const [known, quality] of near) noteMatch(index, found, known, quality);
  }
  for (const [name, matched] of found) {
    const fits = decisive.every((near) => [...near.keys()].some((known) => matched.has(known)));
    if (!fits) found.delete(name);
  }
  return found;
}

function noteMatch(
  index: FoodIndex,
  found: Map<IndexedName, Map<string, number>>,
  known: string,
  quality: number,
): void {
  for (const name of index.byWord.get(known) ?? []) {
    const matched = found.get(name) ?? new Map<string, number>();
    matched.set(known, Math.max(quality, matched.get(known) ?? 0));
    found.set(name, matched);
  }
}

/** The word itself when the table has it; else, for a word that decides, words a slip or two away. */
function nearWords(index: FoodIndex, word: string, manner: boolean): ReadonlyMap<string, number> {
  if (index.byWord.has(word)) return new Map([[word, 1]]);
  const most = slipsAllowed(word);
  const near = new Map<string, number>();
  if (manner || most === 0) return near;
  for (const known of index.byLetter.get(word[0] ?? "") ?? []) {
    const slips = slipsBetween(word, known, most);
    if (slips !== null) near.set(known, SLIP_FACTOR ** slips);
  }
  return near;
}

/** Share of what the name's head tells that was said, then corrected by everything else that was. */
function rate(
  index: FoodIndex,
  asked: NameWords,
  name: IndexedName,
  matched: ReadonlyMap<string, number>,
): number {
  const weight = (words: Iterable<string>, worth: (word: string) => number) =>
    [...words].reduce((sum, word) => sum + index.tells(word) * worth(word), 0);
  const all = weight(name.head, () => 1);
  const said = weight(name.head, (word) => matched.get(word) ?? 0);
  if (said === 0) return 0;
  // Words that need not be said count for the food that has them: "beef mince" is more than "beef".
  const alsoSaid = asked.words.filter(({ word, manner }) => manner && name.head.has(word)).length;
  const tailSaid = [...name.tail].filter((word) => matched.has(word)).length;
  const told = 0.03 * Math.min(4, alsoSaid + tailSaid) - 0.005 * (name.tail.size - tailSaid);
  return (said / all + told) * stateFactor(asked.states, name.entry) * fatFactor(asked, name.entry);
}

/** How far a food in another state than the one named may stand in for it. */
const STAND_IN: Readonly<Record<FoodState, number>> = {
  cooked: 0.5,
  dried: 0.5,
  canned: 0.8,
  fresh: 1,
};

function stateFactor(asked: ReadonlySet<FoodState>, entry: IndexedFood): number {
  const missing = [...asked].filter((state) => !entry.states.has(state));
  const unasked = [...entry.states].filter((state) => state !== "fresh" && !asked.has(state));
  const preserved = entry.states.has("dried") || entry.states.has("canned");
  return [
    ...missing.map((state) => STAND_IN[state]),
    ...unasked.map((state) => (state === "cooked" ? 0.9 : 0.97)),
    asked.has("fresh") && preserved ? 0.5 : 1,
  ].reduce((product, factor) => product * factor, 1);
}

function fatFactor(asked: NameWords, entry: IndexedFood): number {
  if (asked.fatPct === null || entry.fatPct === null) return 1;
  return 1 - Math.min(0.3, 0.02 * Math.abs(asked.fatPct - entry.fatPct));
}
