import { type AllergenIn, allergensInRecipe } from "../allergen/find.ts";
import type { FoodBook } from "../food/book.ts";
import { resolveKeeping } from "../keeping/resolve.ts";
import type { KeepingTime } from "../keeping/types.ts";
import type { Recipe } from "./types.ts";

/** What of a new revision may hurt who goes by the one before. */
export type GraveChange =
  /** Allergens that it did not have, its swaps' included. */
  | {
      readonly code: "allergens";
      readonly of: "contains" | "may hide";
      readonly new: readonly AllergenIn[];
    }
  /** Foods of which nobody knows what is in them, as the coach wrote them. */
  | { readonly code: "unknown foods"; readonly foods: readonly string[] }
  /** As its dates are counted, days in the fridge. */
  | { readonly code: "keeps shorter"; readonly beforeDays: number; readonly afterDays: number }
  | {
      readonly code: "freezes worse";
      readonly before: KeepingTime["freezes"];
      readonly after: KeepingTime["freezes"];
      readonly reason: string;
    };

/** The changes to say first, the gravest first; empty when there are none. */
export function graveChanges(
  before: Recipe,
  after: Recipe,
  foods: FoodBook,
): readonly GraveChange[] {
  return [...allergenChanges(before, after, foods), ...keepingChanges(before, after, foods)];
}

function allergenChanges(before: Recipe, after: Recipe, foods: FoodBook): readonly GraveChange[] {
  const [had, has] = [foundIn(before, foods), foundIn(after, foods)];
  const known = new Set(had.contains.map(({ allergen }) => allergen));
  const contains = has.contains.filter(({ allergen }) => !known.has(allergen));
  const told = new Set(
    [...contains, ...had.contains, ...had.mayHide].map(({ allergen }) => allergen),
  );
  const mayHide = has.mayHide.filter(({ allergen }) => !told.has(allergen));
  const unknown = has.unknown.filter((food) => !had.unknown.includes(food));
  const found: GraveChange[] = [];
  if (contains.length > 0) found.push({ code: "allergens", of: "contains", new: contains });
  if (mayHide.length > 0) found.push({ code: "allergens", of: "may hide", new: mayHide });
  if (unknown.length > 0) found.push({ code: "unknown foods", foods: unknown });
  return found;
}

/** Of the recipe with its swaps: whoever takes one goes by the same card. */
function foundIn(recipe: Recipe, foods: FoodBook) {
  const found = allergensInRecipe(recipe, foods);
  return {
    contains: merged([...found.contains, ...found.inSwaps.contains]),
    mayHide: merged([...found.mayHide, ...found.inSwaps.mayHide]),
    unknown: [...new Set([...found.unknown, ...found.inSwaps.unknown])],
  };
}

function merged(list: readonly AllergenIn[]): readonly AllergenIn[] {
  const byName = new Map<AllergenIn["allergen"], readonly string[]>();
  for (const { allergen, foods } of list) {
    byName.set(allergen, [...new Set([...(byName.get(allergen) ?? []), ...foods])]);
  }
  return [...byName].map(([allergen, foods]) => ({ allergen, foods }));
}

const WORSE: Readonly<Record<KeepingTime["freezes"], number>> = { well: 0, poorly: 1, no: 2 };

function keepingChanges(before: Recipe, after: Recipe, foods: FoodBook): readonly GraveChange[] {
  const [had, has] = [resolveKeeping(before, foods, []), resolveKeeping(after, foods, [])];
  const found: GraveChange[] = [];
  if (has.fridgeDays < had.fridgeDays) {
    const [beforeDays, afterDays] = [had.fridgeDays, has.fridgeDays];
    found.push({ code: "keeps shorter", beforeDays, afterDays });
  }
  if (WORSE[has.freezes] > WORSE[had.freezes]) {
    const { reason } = has;
    found.push({ code: "freezes worse", before: had.freezes, after: has.freezes, reason });
  }
  return found;
}
