import { fold } from "../words/fold.ts";
import { COMPOUNDS, CUTS, MINCED_MEATS, PHRASES } from "./word-lists.ts";

/** Longer text is cut: no food has a longer name, and the work must stay bounded. */
const MAX_CHARS = 120;

/** "Gluten-free": a food of its own, and never the food that it is free of. "Free-range" is not meant. */
const FREE_FROM = /\b([a-z]{3,})(?<!fat|salt|sodium)[ -]free\b(?![ -](?:range|flowing))/gu;
const COMPOUND = new RegExp(`\\b(${COMPOUNDS.join("|")})(?=e?s?\\b)`, "gu");
const CUT_MEAT = new RegExp(`\\b(${CUTS}) meat\\b`, "gu");
const MEAT = new RegExp(`\\b(?:${MINCED_MEATS})\\b`, "u");
const MINCE_OF = new RegExp(`\\b(?:mince|minced|ground) (${MINCED_MEATS})\\b`, "gu");
/** What follows is of another food, or none: "plus extra for frying", "or use lard". */
const AFTERTHOUGHT = /(?:,| \() ?or .*$|\b(?:plus|such as|ideally|preferably)\b.*$/u;

/** A word that each of the phrases has: most names have none of them. */
const MAY_BE_PHRASE = /garbanzo|capsicum| in |smoked|water|juice/u;

/** A food's name as it is compared: folded, one wording for what is worded in several ways. */
export function foldName(text: string): string {
  const folded = fold(text.slice(0, MAX_CHARS))
    .replace(/'s?(?![a-z])/gu, "")
    .replaceAll("&", " and ")
    .replace(/(?<=\d),(?=\d)/gu, ".")
    .replace(AFTERTHOUGHT, "")
    .replace(COMPOUND, (words) => words.replace(" ", ""))
    // A weight; "gram flour" is none.
    .replace(/(?<=\d ?)gram(?:me)?s?\b/gu, "")
    .replace(/\b(?:corn|grain|grass)[ -]fed\b|\b(?:soft|medium|hard)[ -](?=boiled)/gu, "")
    .replace(CUT_MEAT, "$1")
    .replace(FREE_FROM, "$1free");
  const named = MAY_BE_PHRASE.test(folded)
    ? PHRASES.reduce((text, [other, ours]) => text.replace(other, ours), folded)
    : folded;
  if (!MEAT.test(named)) return named;
  return named.replace(MINCE_OF, "$1 mince").replace(/\b(?:ground|minced)\b/gu, "mince");
}
