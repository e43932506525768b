import type { NameWord, NameWords } from "./name-words.ts";
import { OTHER_FOODS } from "./other-foods.ts";

type Known = (word: string) => boolean;

/** Mends words that were written in two ("mange tout") or run together ("peanutbutter"). */
export function mendWords(asked: NameWords, known: Known): NameWords {
  const words: NameWord[] = [];
  const nouns = new Set(asked.nouns);
  let skip = false;
  for (const [i, word] of asked.words.entries()) {
    const next = asked.words[i + 1];
    const parts: readonly string[] = skip ? [] : mended(word, next, known);
    skip = !skip && next !== undefined && parts[0] === word.word + next.word;
    if (parts[0] === word.word) {
      words.push(word);
      continue;
    }
    words.push(...parts.map((part) => ({ ...word, word: part, manner: false })));
    const old = skip ? next?.word : word.word;
    const last = parts[parts.length - 1];
    if (old !== undefined && last !== undefined && nouns.delete(old)) nouns.add(last);
  }
  return { ...asked, words, nouns };
}

function mended(word: NameWord, next: NameWord | undefined, known: Known): readonly string[] {
  if (next !== undefined) {
    const joined = word.word + next.word;
    if (known(joined) && !(known(word.word) && known(next.word))) return [joined];
  }
  if (known(word.word) || word.manner || OTHER_FOODS.has(word.word)) return [word.word];
  return split(word.word, known) ?? [word.word];
}

/** No half of a word that was run together is shorter: short words are everywhere. */
const SHORTEST_PART = 3;
const LONGEST_WORD = 30;

function split(word: string, known: Known): readonly string[] | null {
  for (let at = SHORTEST_PART; at <= Math.min(word.length, LONGEST_WORD) - SHORTEST_PART; at += 1) {
    const parts = [word.slice(0, at), word.slice(at)];
    if (parts.every(known)) return parts;
  }
  return null;
}
