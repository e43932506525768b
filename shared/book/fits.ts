import type { Allergen } from "../food/types.ts";
import type { NutrientSum } from "../nutrition/types.ts";
import type { BookEntry, BookQuery, FigureRange, NotKnown } from "./types.ts";

type Answer = "yes" | "no" | "not known";

/**
 * Whether a recipe fits what is asked of its figures, freezing and allergens: null when it does not,
 * else what of it nobody knows (nothing, for one that is known to fit).
 */
export function whatIsNotKnown(entry: BookEntry, query: BookQuery): readonly NotKnown[] | null {
  if (query.freezes !== null && (entry.freezes === "well") !== query.freezes) return null;
  const answers: readonly (readonly [NotKnown, Answer])[] = [
    ["energy", inRange(entry.energyKcal[query.style], query.energyKcal)],
    ["protein", inRange(entry.proteinG, query.proteinG)],
    ["allergens", isFreeOf(entry, query.freeOf)],
  ];
  if (answers.some(([, answer]) => answer === "no")) return null;
  return answers.flatMap(([what, answer]) => (answer === "not known" ? [what] : []));
}

/** Compared as it is shown, in whole kcal or grams: who reads "40 g" has at least 40. */
function inRange(sum: NutrientSum, range: FigureRange | null): Answer {
  if (range === null) return "yes";
  const from = range.from ?? 0;
  const to = range.to ?? Number.POSITIVE_INFINITY;
  const shown = sum.atLeast ? Math.floor(sum.amount) : Math.round(sum.amount);
  if (shown > to) return "no";
  if (!sum.atLeast) return shown >= from ? "yes" : "no";
  // The true figure is that or more: enough for a lower bound, and never for an upper one.
  return shown >= from && range.to === null ? "yes" : "not known";
}

/**
 * Free of all of these: nothing in it contains or may hide one, and every food is known. What may
 * hide one, or has a food that nobody knows, is "not known" and never "free".
 */
function isFreeOf({ allergens }: BookEntry, freeOf: readonly Allergen[]): Answer {
  if (freeOf.length === 0) return "yes";
  const isAsked = ({ allergen }: { readonly allergen: Allergen }) => freeOf.includes(allergen);
  if (allergens.contains.some(isAsked)) return "no";
  return allergens.unknown.length > 0 || allergens.mayHide.some(isAsked) ? "not known" : "yes";
}
