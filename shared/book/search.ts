import { fold } from "../words/fold.ts";
import type { BookIndex } from "./book-index.ts";
import { formsIn, oneForm } from "./book-words.ts";
import { whatIsNotKnown } from "./fits.ts";
import { askedWords, type Mended, rateWords } from "./rate-words.ts";
import type { BookQuery, BookResult, FoundRecipe } from "./types.ts";
import { readInHandFoods, type Uses } from "./uses.ts";

/**
 * Searches a group's recipes. Everything asked must hold; a recipe of which something asked is not known
 * is listed apart. By words, the best fitting first; by foods in hand, first what uses the most of them, then
 * what is made of them for the greatest part (in tenths), then what needs the fewest others; of equals
 * by title. The same query on the same book always gives the same. At most `limit` of each list.
 */
export function searchBook(index: BookIndex, query: BookQuery, limit = 10): BookResult {
  const asked = askedWords(query.words);
  const rated = rateWords(index, asked, { isTyping: false, start: fold(query.words) });
  const hand = query.uses.length === 0 ? null : readInHandFoods(index, query.uses);
  const fitting = rated.places.flatMap((place): readonly Fitting[] => {
    const entry = index.entries[place];
    const notKnown = entry === undefined ? null : whatIsNotKnown(entry, query);
    const uses = notKnown === null ? null : (hand?.usesOf(place) ?? null);
    if (notKnown === null || uses?.count === 0) return [];
    return [{ place, notKnown, uses }];
  });
  const ranked = hand === null ? fitting : rankedByUse(fitting);
  const known = ranked.filter(({ notKnown }) => notKnown.length === 0);
  const unknown = ranked.filter(({ notKnown }) => notKnown.length > 0);
  const show = (list: readonly Fitting[]) =>
    list.slice(0, limit).flatMap((one) => shown(index, one, asked, rated.mended));
  return {
    found: show(known),
    foundCount: known.length,
    notKnown: show(unknown),
    notKnownCount: unknown.length,
    mended: rated.mended,
    unused: hand?.unused ?? [],
  };
}

interface Fitting {
  readonly place: number;
  readonly notKnown: FoundRecipe["notKnown"];
  readonly uses: Uses | null;
}

/** The sort is stable, so of equals the better fit by words, then by title, stays first. */
function rankedByUse(fitting: readonly Fitting[]): readonly Fitting[] {
  const tenths = ({ uses }: Fitting) => Math.round((uses?.share ?? 0) * 10);
  const count = ({ uses }: Fitting) => uses?.count ?? 0;
  const needs = ({ uses }: Fitting) => uses?.needs ?? 0;
  return fitting.toSorted(
    (a, b) => count(b) - count(a) || tenths(b) - tenths(a) || needs(a) - needs(b),
  );
}

function shown(
  index: BookIndex,
  { place, notKnown, uses }: Fitting,
  asked: readonly string[],
  mended: readonly Mended[],
): readonly FoundRecipe[] {
  const entry = index.entries[place];
  if (entry === undefined) return [];
  const words = asked.map((word) => mended.find(({ typed }) => typed === word)?.taken ?? word);
  const untitled = words.filter((word) => !hasWord(formsIn(entry.title), word));
  const tags = entry.tags.filter((tag) => untitled.some((word) => hasWord(formsIn(tag), word)));
  const tagged = formsIn(tags.join(" "));
  const rest = untitled.filter((word) => !hasWord(tagged, word));
  const foods = entry.foods.filter((_, at) => {
    const own = index.ingredients[index.uses[place]?.[at] ?? -1]?.words;
    return own !== undefined && rest.some((word) => hasWord(own, word));
  });
  return [
    {
      entry,
      tags,
      foods: [...new Set(foods.map(({ name }) => name))],
      uses: uses?.names ?? [],
      needs: uses?.needs ?? null,
      notKnown,
    },
  ];
}

function hasWord(own: ReadonlySet<string>, word: string): boolean {
  const form = oneForm(word);
  return own.has(word) || own.has(form) || [...own].some((one) => one.includes(word));
}
