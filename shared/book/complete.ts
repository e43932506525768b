import { fold } from "../words/fold.ts";
import type { BookIndex } from "./book-index.ts";
import { wordsIn } from "./book-words.ts";
import { askedWords, rateWords } from "./rate-words.ts";
import type { BookEntry } from "./types.ts";

/**
 * Recipes that may be meant by what has been typed so far: title beginning with it, then those that have
 * all its words at the beginning of words, then in the middle, in title, tags or foods; a word that
 * nothing has is taken for the nearest. Of equals by title; all of them by title for nothing typed.
 */
export function completeRecipes(
  index: BookIndex,
  typed: string,
  limit: number,
): readonly BookEntry[] {
  const asked = askedWords(typed);
  const { places } = rateWords(index, asked, { isTyping: true, start: fold(typed) });
  return places.slice(0, limit).flatMap((place) => index.entries[place] ?? []);
}

/** Foods of the book's recipes by what has been typed of a name: those of the most recipes first. */
export function completeFoods(index: BookIndex, typed: string, limit: number): readonly string[] {
  const asked = wordsIn(typed);
  const fitting = index.ingredients.filter(({ name }) => {
    const own = wordsIn(name);
    return asked.every((word) => own.some((one) => one.startsWith(word)));
  });
  const byName = new Map<string, number>();
  for (const { name, recipes } of fitting) {
    const key = fold(name);
    byName.set(key, (byName.get(key) ?? 0) + recipes);
  }
  return [...byName]
    .sort(([a, many], [b, more]) => more - many || (a < b ? -1 : 1))
    .slice(0, limit)
    .map(([name]) => name);
}
