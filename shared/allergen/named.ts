import type { Allergen } from "../food/types.ts";
import { phraseOf, wordsOf } from "../people/closed-words.ts";
import { singular } from "../words/plural.ts";
import { ALLERGEN_WORDS } from "./words.ts";

/** Names that hold the word of an allergen and are none: "oyster mushrooms" are mushrooms. */
const INNOCENT: ReadonlySet<string> = new Set([
  "butter bean",
  "butter lettuce",
  "butter nut",
  "butter pickle",
  "cream cracker",
  "cream of tartar",
  "crab apple",
  "egg plant",
  "ginger beer",
  "oyster mushroom",
  "oyster plant",
  "root beer",
  "tiger nut",
  "milk thistle",
]);

const DAIRY: ReadonlySet<string> = new Set(
  "milk cream butter yogurt yoghurt cheese kefir".split(" "),
);
/** "Oat milk", "cocoa butter": made of the plant before it. */
const PLANT: ReadonlySet<string> = new Set(
  "almond apple cashew cocoa coconut hazelnut hemp nut oat pea peanut pistachio plant pumpkin rice sesame shea soy soya sunflower vegan walnut".split(
    " ",
  ),
);
const ANIMAL: ReadonlySet<Allergen> = new Set(["milk", "egg", "fish", "crustaceans", "molluscs"]);

/** Beginnings of all the words that may matter; most foods have none of them and need no closer look. */
const MAY_MATTER = new RegExp(
  [...new Set([...ALLERGEN_WORDS.keys()].map((phrase) => stemOf(phrase)))].join("|"),
  "iu",
);

function stemOf(phrase: string): string {
  return (phrase.split(" ")[0] ?? phrase).replace(/y$/u, "");
}

/**
 * Allergens that a food's own name gives away, whatever the table says: "sesame bagel" where the table
 * has a plain one, "cashew spread" where it has none. Nothing is concluded from a name that is silent.
 */
export function namedIn(foodText: string): readonly Allergen[] {
  const isPlain = /^[ -~]*$/u.test(foodText);
  if (isPlain && !MAY_MATTER.test(foodText)) return [];
  const said = foodText
    .replace(/\b(?:free (?:from|of)|without)\b.{0,200}/giu, "")
    .replace(/\b(?:non|no)[ -]\w{1,30}/giu, "");
  const words = wordsOf(said);
  const named = new Set<Allergen>();
  let at = 0;
  while (at < words.length) {
    const { length, allergens } = nameAt(words, at);
    for (const allergen of allergens) named.add(allergen);
    at += length;
  }
  const isVegan = words.includes("vegan");
  return [...named].filter((one) => !isVegan || !ANIMAL.has(one));
}

interface Named {
  /** How many words it takes up. */
  readonly length: number;
  readonly allergens: readonly Allergen[];
}

function nameAt(words: readonly string[], at: number): Named {
  for (let length = 3; length >= 1; length -= 1) {
    const phrase = phraseOf(words, at, length);
    if (phrase === null) continue;
    if (INNOCENT.has(phrase)) return { length, allergens: [] };
    const meaning = ALLERGEN_WORDS.get(phrase);
    if (meaning === undefined) continue;
    const isOther = isPlantDairy(words, at, phrase) || isSetAside(words[at + length] ?? "");
    return { length, allergens: isOther ? [] : meaning.allergens };
  }
  return { length: 1, allergens: [] };
}

function isPlantDairy(words: readonly string[], at: number, phrase: string): boolean {
  return DAIRY.has(phrase) && PLANT.has(singular(words[at - 1] ?? ""));
}

/** "Gluten-free", "walnut-sized": the word before is not in the food. */
function isSetAside(next: string): boolean {
  return next === "free" || next === "size" || next === "sized";
}
