import { whatChanged } from "../../shared/recipe/what-changed.ts";
import { isBefore } from "../../shared/time.ts";
import type { Context } from "../kit/context.ts";
import type { PublishedRecipe } from "../kit/ports.ts";
import { sayChanges } from "./say-change.ts";

/** More revisions than these in one member's stock are looked at no further. */
const LOOKED_AT = 10;

/**
 * In words, what changed in a recipe since the revision of the member's newest batch of it that is still
 * in stock; empty when there is none, or it is of this very revision.
 */
export async function changesSince(
  { stores, group, member, foods }: Context,
  published: PublishedRecipe,
): Promise<readonly string[]> {
  const { batches } = await stores.stocks.load(member.id);
  const newestFirst = [...batches].sort((a, b) => (isBefore(a.cookedAt, b.cookedAt) ? 1 : -1));
  const revisions = [...new Set(newestFirst.map(({ revisionId }) => revisionId))];
  for (const id of revisions.slice(0, LOOKED_AT)) {
    if (id === published.revisionId) return [];
    const cooked = await stores.recipes.revision(group.id, id);
    if (cooked?.id !== published.id) continue;
    return sayChanges(whatChanged(cooked.recipe, published.recipe), foods);
  }
  return [];
}
