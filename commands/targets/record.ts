import { causeId, targetId } from "../../shared/ids.ts";
import type { DecidedDays } from "../../shared/target/decide.ts";
import type { TargetRule } from "../../shared/target/types.ts";
import { type Instant, isBefore } from "../../shared/time.ts";
import type { Context } from "../kit/context.ts";
import type { Whose } from "./whose.ts";

/**
 * Writes what was decided after `before`, and returns the member's decisions with it. One request may make several; the
 * cause of each follows from what it is about, so that the same request twice finds them all.
 */
export async function record(
  context: Context,
  whose: Whose,
  before: readonly TargetRule[],
  days: readonly DecidedDays[],
): Promise<readonly TargetRule[]> {
  const { stores, member, newId } = context;
  const setAt = afterAll(before, context.now);
  for (const { from, weekdays, figures } of days) {
    const rule: TargetRule = {
      id: targetId(newId()),
      memberId: whose.member.id,
      from,
      weekdays,
      figures,
      setBy: member.id,
      setAt,
    };
    await stores.targets.add(rule, causeId(`${context.causeId}#${weekdays.join("")}@${from}`));
  }
  return stores.targets.list(whose.member.id);
}

/** The order taken must not hang on a clock that stood still or was set back. */
function afterAll(before: readonly TargetRule[], now: Instant): Instant {
  const last = before.at(-1)?.setAt;
  return last === undefined || isBefore(last, now) ? now : last.add({ milliseconds: 1 });
}
