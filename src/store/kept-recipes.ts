import type { PublishedRecipe } from "../../commands/kit/ports.ts";
import type { Recipe } from "../../shared/recipe/types.ts";
import { type RevisionRow, toPublished } from "./rows.ts";

/** Revisions kept read, at some twenty kilobytes each: those that were asked for last. */
const KEPT = 500;

/**
 * A published recipe as `toPublished` gives it, its document read once: a revision never changes, and a
 * group cooks few recipes at a time. What follows from a recipe alone is remembered by the object it is, so
 * that is found again as well. The text stands beside it, so that no other database's is taken for it.
 */
export function keptRecipes(most: number = KEPT): (row: RevisionRow) => PublishedRecipe {
  const kept = new Map<string, { readonly document: string; readonly recipe: Recipe }>();
  return (row) => {
    const known = kept.get(row.id);
    kept.delete(row.id);
    const published =
      known?.document === row.document ? toPublished(row, known.recipe) : toPublished(row);
    kept.set(row.id, { document: row.document, recipe: published.recipe });
    for (const oldest of kept.keys()) {
      if (kept.size <= most) break;
      kept.delete(oldest);
    }
    return published;
  };
}
