import { setImmediate, setTimeout } from "node:timers/promises";
import type { RecipeBook } from "../../commands/kit/context.ts";
import type { Group, Recipes } from "../../commands/kit/ports.ts";
import { type BookIndex, bookIndexInSteps } from "../../shared/book/book-index.ts";
import type { FoodBook } from "../../shared/food/book.ts";

/** Recipes kept in memory over all groups, at some ten kilobytes each: those of the groups that asked last. */
const KEPT_RECIPES = 10_000;
/** A completion must be answered within three seconds, and what it falls back on takes some of them. */
const COMPLETION_WAIT_MS = 1_000;
/** Longest stretch of building before others have their turn. */
const STRETCH_MS = 10;

/** Finds the recipes of a group in memory. */
export type RecipesOf = (group: Group, foods: FoodBook) => RecipeBook;

interface Kept {
  readonly recipesVersion: number;
  readonly foods: FoodBook;
  readonly index: Promise<BookIndex>;
  /** The last that was finished, also while the next is being built. */
  done: BookIndex | null;
}

/**
 * Remembers the indexes of the groups that asked last. A group's version says whether an index still holds,
 * also when another process published or withdrew; it is built when somebody first asks, a stretch at
 * a time, and anew by what has changed only.
 */
export function recipeIndexes(
  recipes: Pick<Recipes, "all">,
  waitMs: number = COMPLETION_WAIT_MS,
): RecipesOf {
  const kept = new Map<string, Kept>();

  const indexOf = (group: Group, foods: FoodBook): Promise<BookIndex> => {
    const known = kept.get(group.id);
    kept.delete(group.id);
    const isGood =
      known !== undefined && known.foods === foods && known.recipesVersion >= group.recipesVersion;
    const entry = isGood ? known : begin(group, foods, known?.done ?? null);
    kept.set(group.id, entry);
    return entry.index;
  };

  const begin = (group: Group, foods: FoodBook, before: BookIndex | null): Kept => {
    const index = build(recipes, group, foods, before);
    const entry: Kept = { recipesVersion: group.recipesVersion, foods, index, done: before };
    index.then(
      (done) => {
        entry.done = done;
        dropOldest(kept);
      },
      () => {
        // Whoever waits is told; the next to ask tries again.
        if (kept.get(group.id) === entry) kept.delete(group.id);
      },
    );
    return entry;
  };

  return (group, foods) => ({
    whole: () => indexOf(group, foods),
    soon: () => inTime(indexOf(group, foods), waitMs),
  });
}

/** Versions only go up, so what is read now is never older than the group that asks. */
async function build(
  recipes: Pick<Recipes, "all">,
  group: Group,
  foods: FoodBook,
  before: BookIndex | null,
): Promise<BookIndex> {
  const steps = bookIndexInSteps(await recipes.all(group.id), foods, before);
  for (let since = performance.now(); ; ) {
    const step = steps.next();
    if (step.done === true) return step.value;
    if (performance.now() - since < STRETCH_MS) continue;
    await setImmediate();
    since = performance.now();
  }
}

async function inTime(index: Promise<BookIndex>, waitMs: number): Promise<BookIndex | null> {
  const stop = new AbortController();
  const late = setTimeout(waitMs, null, { signal: stop.signal }).catch(() => null);
  try {
    return await Promise.race([index, late]);
  } finally {
    stop.abort();
  }
}

/** Those that asked longest ago come first; the one that asked last stays, however big. */
function dropOldest(kept: Map<string, Kept>): void {
  let recipes = 0;
  for (const { done } of kept.values()) recipes += done?.entries.length ?? 0;
  for (const [group, { done }] of kept) {
    if (recipes <= KEPT_RECIPES || kept.size === 1) return;
    kept.delete(group);
    recipes -= done?.entries.length ?? 0;
  }
}
