import type { Group, GroupFoods } from "../../commands/kit/ports.ts";
import { type FoodBook, withOwnFoods } from "../../shared/food/book.ts";

/** Books kept in memory: a group's foods are read once, until they change. */
const KEPT = 500;

/** Finds the book of a group: the table, with the foods its coach typed in before it. */
export type BookOf = (group: Group) => Promise<FoodBook>;

/**
 * Remembers the books of the groups that asked last. A group's version says whether a book still holds,
 * also when another process changed the foods.
 */
export function groupBooks(table: FoodBook, foods: GroupFoods): BookOf {
  const kept = new Map<string, { readonly version: number; readonly book: FoodBook }>();
  return async (group) => {
    if (group.foodsVersion === 0) return table;
    const known = kept.get(group.id);
    kept.delete(group.id);
    const entry =
      known?.version === group.foodsVersion
        ? known
        : {
            version: group.foodsVersion,
            book: withOwnFoods(table, await foods.list(group.id)),
          };
    kept.set(group.id, entry);
    for (const oldest of kept.keys()) {
      if (kept.size <= KEPT) break;
      kept.delete(oldest);
    }
    return entry.book;
  };
}
