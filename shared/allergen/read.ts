import { ALLERGENS, type Allergen } from "../food/types.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import { type FoundPhrase, readClosedWords, signsIn, wordsOf } from "../people/closed-words.ts";
import { ALLERGEN_WORDS, type AllergenWord, type WordNote } from "./words.ts";

/** Something to say back about a word that was taken for more, or for another thing, than it says. */
export interface AllergenRemark {
  readonly note: WordNote | "spelling";
  /** As typed. */
  readonly said: string;
  /** What it was taken for. */
  readonly allergens: readonly Allergen[];
}

export interface StatedAllergens {
  /** In the order of `ALLERGENS`; empty when the member says that there is none. */
  readonly allergens: readonly Allergen[];
  readonly remarks: readonly AllergenRemark[];
}

/** What can be wrong with allergens as typed. */
export type AllergenProblem = {
  readonly code: "allergen not understood";
  readonly texts: readonly string[];
};

const FILLERS: ReadonlySet<string> = new Set(
  "a all allergen allergens allergic allergies allergy also am an and any are avoid avoids both contains containing cow cows disease eat for free from goat goats has have i im in intolerance intolerances intolerant intolerances is it kind kinds my no of or please plus product products protein sensitive sensitivity sheep the to us we with".split(
    " ",
  ),
);

const NONE: ReadonlySet<string> = new Set([
  "none",
  "no",
  "nothing",
  "nil",
  "none known",
  "nothing known",
  "no allergy",
  "no allergies",
  "no allergens",
  "no known allergies",
]);

/**
 * Reads what a member types for what they avoid: "nuts and milk", "dairy", "coeliac", "none". All of it
 * is understood or none of it is: half a list would leave somebody unwarned. A word of two meanings is
 * taken for both ("nuts", "shellfish"), and a remark says so.
 */
export function readAllergens(text: string): Outcome<StatedAllergens, AllergenProblem> {
  if (signsIn(text).length === 0 && NONE.has(wordsOf(text).join(" ")))
    return ok({ allergens: [], remarks: [] });
  const { found, notUnderstood } = readClosedWords(text, {
    phrases: ALLERGEN_WORDS,
    fillers: FILLERS,
  });
  if (notUnderstood.length > 0) {
    return fail({ code: "allergen not understood", texts: notUnderstood });
  }
  if (found.length === 0) {
    return fail({ code: "allergen not understood", texts: [text.trim().slice(0, 40)] });
  }
  const stated = new Set(found.flatMap(({ meaning }) => meaning.allergens));
  return ok({
    allergens: ALLERGENS.filter((one) => stated.has(one)),
    remarks: remarksOn(found).filter((remark) => isNews(remark, stated)),
  });
}

function remarksOn(found: readonly FoundPhrase<AllergenWord>[]): readonly AllergenRemark[] {
  const remarks = found.flatMap(({ meaning, said, isGuess }): readonly AllergenRemark[] => {
    const { allergens, note } = meaning;
    return [
      ...(isGuess ? [{ note: "spelling" as const, said, allergens }] : []),
      ...(note === null ? [] : [{ note, said, allergens }]),
    ];
  });
  return remarks.filter(
    (one, at) =>
      remarks.findIndex(({ note, said }) => note === one.note && said === one.said) === at,
  );
}

/** "Wheat alone" is no news to one who named gluten too, nor "tree nuts alone" to one who named peanut. */
function isNews({ note }: AllergenRemark, stated: ReadonlySet<Allergen>): boolean {
  if (note === "wheat alone") return !stated.has("gluten");
  return note !== "tree nuts alone" || !stated.has("peanut");
}
