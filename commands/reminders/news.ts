import type { ReminderRow } from "../../shared/reminder/types.ts";
import { writePress } from "../kit/press.ts";
import type { Button } from "../kit/reply.ts";

/** What a member is told of a recipe that they have: what may hurt first, then what changed. */
export function sayNews({ kind, about: { title, news } }: ReminderRow): string {
  const { grave = [], changes = [] } = news ?? {};
  if (kind === "recipe withdrawn") {
    return `Your coach withdrew ${title}: it is not in the book any more. What you cooked of it keeps its dates; ask your coach before you eat it if you wonder why.`;
  }
  const mind = grave.length === 0 ? "" : ` Mind: it ${grave.join("; it ")}.`;
  const what = changes.length === 0 ? "" : ` Changed: ${changes.join("; ")}.`;
  return `${title} has a new revision.${mind}${what} What you cooked before keeps the dates and figures of its own.`;
}

/** The way to the card; the reminder's id says whose it is where the platform tells no group. */
export function newsButtons(
  { id, about: { news } }: ReminderRow,
  tagged: string,
): readonly Button[] {
  if (news === null || news === undefined) return [];
  const press = writePress("recipe card", "news", id, news.recipeId);
  return [{ id: press, label: `See the card${tagged}`.slice(0, 34), weight: "plain" }];
}
