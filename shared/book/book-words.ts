import { SPELLINGS } from "../food/word-lists.ts";
import { foldWords } from "../words/fold.ts";
import { singular } from "../words/plural.ts";

/** No title or food has more, and the work must stay bounded whatever the text. */
const MAX_WORDS = 24;
const MAX_LETTERS = 30;
const MAX_CHARS = 400;

/** Words of a text as they are written, folded: letters and digits of any script. */
export function wordsIn(text: string): readonly string[] {
  return foldWords(text.slice(0, MAX_CHARS))
    .split(" ")
    .filter((word) => word !== "")
    .slice(0, MAX_WORDS)
    .map((word) => word.slice(0, MAX_LETTERS));
}

/** A word in the singular, and in the one spelling of words that have several. */
export function oneForm(word: string): string {
  const single = singular(word);
  return SPELLINGS.get(single) ?? SPELLINGS.get(word) ?? single;
}

/** All words of a text, as written and in their one form, each once. */
export function formsIn(text: string): ReadonlySet<string> {
  return new Set(wordsIn(text).flatMap((word) => [word, oneForm(word)]));
}
