import { writeHalves } from "./halves.ts";

/** Words of the kitchen that a rule would get wrong. */
const IRREGULAR: Readonly<Record<string, string>> = {
  loaf: "loaves",
  half: "halves",
  leaf: "leaves",
  knife: "knives",
  person: "people",
  tomato: "tomatoes",
  potato: "potatoes",
};

const ONE_OF_IRREGULAR: ReadonlyMap<string, string> = new Map(
  Object.entries(IRREGULAR).map(([one, many]) => [many, one]),
);

/** "1 portion", "½ portion", "1½ hours", "2 boxes". At most two decimals; 1 and ½ are singular, all else plural. */
export function count(n: number, word: string): string {
  const shown = Math.round(n * 100) / 100;
  return `${writeHalves(n)} ${shown === 1 || shown === 0.5 ? word : plural(word)}`;
}

/** The plural of an English word or of the last word of several ("filled wrap"). */
export function plural(word: string): string {
  const cut = word.lastIndexOf(" ") + 1;
  return word.slice(0, cut) + pluralOfOne(word.slice(cut));
}

function pluralOfOne(word: string): string {
  const known = IRREGULAR[word.toLowerCase()];
  if (known !== undefined) return known;
  if (/[^aeiou]y$/iu.test(word)) return `${word.slice(0, -1)}ies`;
  if (/(?:s|x|z|ch|sh)$/iu.test(word)) return `${word}es`;
  return `${word}s`;
}

/** The singular of an English word or of the last word of several; the word itself when it is one. */
export function singular(word: string): string {
  const cut = word.lastIndexOf(" ") + 1;
  return word.slice(0, cut) + singularOfOne(word.slice(cut));
}

function singularOfOne(word: string): string {
  const lower = word.toLowerCase();
  const known = ONE_OF_IRREGULAR.get(lower);
  if (known !== undefined) return known;
  if (lower.length <= 3 || /(?:ss|us|is)$/u.test(lower)) return word;
  if (lower.endsWith("ies")) return lower.length <= 4 ? word.slice(0, -1) : `${word.slice(0, -3)}y`;
  if (/(?:s|x|z|ch|sh)es$/u.test(lower)) return word.slice(0, -2);
  return lower.endsWith("s") ? word.slice(0, -1) : word;
}
