import type { PublishedRecipe } from "../../commands/kit/ports.ts";
import type { GroupId } from "../../shared/ids.ts";
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
  const kept = lastAsked<{ readonly document: string; readonly recipe: Recipe }>(most);
  return (row) => {
    const known = kept.get(row.id);
    const published =
      known?.document === row.document ? toPublished(row, known.recipe) : toPublished(row);
    kept.set(row.id, { document: row.document, recipe: published.recipe });
    return published;
  };
}

type Find = (
  groupId: GroupId,
  idOrTitle: string,
  recipesVersion?: number,
) => Promise<PublishedRecipe | null>;

/**
 * `find`, which is not asked again for what it found before as of the same version of the group's recipes:
 * every publication, withdrawal and word on keeping makes another version.
 */
export function keptFinds(
  find: (groupId: GroupId, idOrTitle: string) => Promise<PublishedRecipe | null>,
  most: number = KEPT,
): Find {
  const kept = lastAsked<PublishedRecipe>(most);
  return async (groupId, idOrTitle, recipesVersion) => {
    if (recipesVersion === undefined) return find(groupId, idOrTitle);
    const key = JSON.stringify([groupId, recipesVersion, idOrTitle]);
    const found = kept.get(key) ?? (await find(groupId, idOrTitle));
    if (found !== null) kept.set(key, found);
    return found;
  };
}

/** Keeps so many values: those that were put last. */
function lastAsked<Value>(most: number) {
  const kept = new Map<string, Value>();
  return {
    get: (key: string): Value | undefined => kept.get(key),
    set: (key: string, value: Value): void => {
      kept.delete(key);
      kept.set(key, value);
      for (const oldest of kept.keys()) {
        if (kept.size <= most) break;
        kept.delete(oldest);
      }
    },
  };
}
