import type { Stock } from "../../shared/stock/types.ts";
import { count } from "../../shared/words/plural.ts";
import type { Context } from "../kit/context.ts";
import type { PublishedRecipe } from "../kit/ports.ts";
import { portionsOf, type Shown } from "../kit/say-lot.ts";

/** So many members are looked at and named; more are counted. */
const NAMED = 20;

/** Who has portions that were logged on the coach's word for this revision, a line each. */
export async function sayHolders(
  { stores, group, now }: Context,
  { id, revisionId }: PublishedRecipe,
): Promise<readonly string[]> {
  // Whoever has portions; who cooked it in days to come is nobody.
  const members = await stores.recipes.whoHas(group.id, id, now.add({ hours: 1 }));
  const lines: string[] = [];
  for (const { id: memberId, name } of members.slice(0, NAMED)) {
    const held = heldOf(await stores.stocks.load(memberId), revisionId);
    if (held.length > 0) lines.push(`${name}: ${held.join(", ")}`);
  }
  const more = members.length - NAMED;
  if (more > 0) lines.push(`and up to ${count(more, "more member")}.`);
  return lines.length === 0 ? ["Nobody has any now."] : lines;
}

function heldOf({ lots, batches }: Stock, revisionId: string): readonly string[] {
  const shown: readonly Shown[] = lots.flatMap((lot) => {
    const batch = batches.find((one) => one.id === lot.batchId);
    return batch?.revisionId === revisionId && batch.keeping.longer !== null
      ? [{ lot, batch }]
      : [];
  });
  return shown.map((one) => `${portionsOf(one)} (${one.lot.place})`);
}
