import { ALLERGEN_WORDS } from "../allergen/words.ts";
import { ALLERGENS, type Allergen } from "../food/types.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import { foldWords } from "../words/fold.ts";
import { singular } from "../words/plural.ts";
import { excerpt } from "../words/problems.ts";
import type { LabelProblem } from "./problems.ts";

/**
 * What a pack means by a word where a member means something else: on a pack peanuts are named apart from
 * nuts, and wheat is a cereal with gluten (Regulation (EU) No 1169/2011, Annex II, 1, 5 and 8).
 */
const ON_A_PACK: ReadonlyMap<string, readonly Allergen[]> = new Map([
  ["nut", ["tree nuts"]],
  ["wheat", ["wheat", "gluten"]],
]);

const NONE = new Set(["none", "no", "nothing", "nil"]);
/** Longer than all of them together with their brackets. */
const MAX_CHARS = 600;
const LEAD =
  /^\s*(?:contains|may(?: also)? contain|allergens?|traces of)?(?: traces of)?\s*:?\s*/iu;

/**
 * Allergens as a pack lists them: "milk, soy", "contains: wheat, eggs", "none"; in the order of
 * `ALLERGENS`. All of them are understood or none is. "Shellfish" is refused: it may be crustaceans or molluscs.
 */
export function readAllergens(text: string): Outcome<readonly Allergen[], LabelProblem> {
  const words = text
    .slice(0, MAX_CHARS)
    .replace(LEAD, "")
    .split(/[,;/&+()]|\band\b|\bor\b/iu)
    .map(foldWords)
    .filter((word) => word !== "");
  if (words.length === 0 || text.length > MAX_CHARS) {
    return fail({ code: "allergen not known", text: excerpt(text) });
  }
  if (words.some((word) => NONE.has(word))) {
    return words.length === 1 ? ok([]) : fail({ code: "none beside others" });
  }
  const found = new Set<Allergen>();
  for (const word of words) {
    const meant = meaningOf(word);
    if (!meant.ok) return meant;
    for (const allergen of meant.value) found.add(allergen);
  }
  return ok(ALLERGENS.filter((allergen) => found.has(allergen)));
}

function meaningOf(word: string): Outcome<readonly Allergen[], LabelProblem> {
  const phrase = word
    .replace(/ (?:lecithin|flour|powder|proteins?)$/u, "")
    .split(" ")
    .map(singular)
    .join(" ");
  const known = ALLERGEN_WORDS.get(phrase);
  const meant = ON_A_PACK.get(phrase) ?? known?.allergens;
  if (meant === undefined) return fail({ code: "allergen not known", text: excerpt(word) });
  return known?.note === "shellfish are two" || known?.note === "seafood is three"
    ? fail({ code: "allergen could be several", text: excerpt(word), choices: known.allergens })
    : ok(meant);
}
