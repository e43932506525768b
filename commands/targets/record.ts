import { causeId, targetId } from "../../shared/ids.ts";
import type { DecidedDays } from "../../shared/target/decide.ts";
import type { TargetRule } from "../../shared/target/types.ts";
import type { Context } from "../kit/context.ts";
import type { Whose } from "./whose.ts";

/**
 * Writes what was decided, and returns the member's decisions with it. One request may make several; the
 * cause of each follows from what it is about, so that the same request twice finds them all.
 */
export async function record(
  context: Context,
  whose: Whose,
  days: readonly DecidedDays[],
): Promise<readonly TargetRule[]> {
  const { stores, member, now, newId } = context;
  for (const { from, weekdays, figures } of days) {
    const rule: TargetRule = {
      id: targetId(newId()),
      memberId: whose.member.id,
      from,
      weekdays,
      figures,
      setBy: member.id,
      setAt: now,
    };
    await stores.targets.add(rule, causeId(`${context.causeId}#${weekdays.join("")}@${from}`));
  }
  return stores.targets.list(whose.member.id);
}
