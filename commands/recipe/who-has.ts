import type { RecipeId } from "../../shared/ids.ts";
import { count } from "../../shared/words/plural.ts";
import type { Context } from "../kit/context.ts";

/** Who cooked a recipe in this time is counted among those whom a change of it concerns. */
const COOKED_WITHIN_DAYS = 14;

/** How many members a change of a recipe concerns, as a sentence. */
export async function sayWhoHas({ stores, group, now }: Context, id: RecipeId): Promise<string> {
  const since = now.subtract({ hours: COOKED_WITHIN_DAYS * 24 });
  const { length } = await stores.recipes.whoHas(group.id, id, since);
  const who =
    length === 0 ? "No member has" : `${count(length, "member")} ${length === 1 ? "has" : "have"}`;
  return `${who} portions of it or cooked it in the last ${COOKED_WITHIN_DAYS} days.`;
}
