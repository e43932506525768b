import type { RecipeId } from "../../shared/ids.ts";
import type { Instant } from "../../shared/time.ts";
import { count } from "../../shared/words/plural.ts";
import type { Context } from "../kit/context.ts";

/** Who cooked a recipe in this time is counted among those whom a change of it concerns. */
const COOKED_WITHIN_DAYS = 14;

/** Since when a cooking counts. */
export function concernedSince(now: Instant): Instant {
  return now.subtract({ hours: COOKED_WITHIN_DAYS * 24 });
}

/** How many members a change of a recipe concerns, as sentences; and how many of them are told of it, if they are. */
export async function sayWhoHas(
  { stores, group, member, now }: Context,
  id: RecipeId,
  telling: "is told what changed" | "will be told" | null,
): Promise<string> {
  const having = await stores.recipes.whoHas(group.id, id, concernedSince(now));
  const { length } = having;
  const who =
    length === 0 ? "No member has" : `${count(length, "member")} ${length === 1 ? "has" : "have"}`;
  const has = `${who} portions of it or cooked it in the last ${COOKED_WITHIN_DAYS} days.`;
  const told = having.filter((one) => one.wantsRecipeNews && one.id !== member.id).length;
  if (told === 0 || telling === null) return has;
  const verb = told === 1 ? telling : telling.replace("is", "are");
  return `${has} ${told === 1 ? "One" : told} ${verb}.`;
}
