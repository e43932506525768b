import type { Context } from "../../commands/kit/context.ts";
import type { Reply } from "../../commands/kit/reply.ts";
import { sayUndelivered } from "../../commands/reminders/undelivered.ts";
import type { Log } from "../log.ts";

const DAYS = 14;
const AT_ONCE = 3;

/**
 * The answer with what could not reach the asker on top, told once. Only in answers that the asker
 * alone sees. The command has done its work by now, so whatever goes wrong here must not cost its answer.
 */
export async function withUndelivered(
  { stores, member, now }: Context,
  answer: Reply,
  log: Pick<Log, "error">,
): Promise<Reply> {
  if (answer.audience !== "private") return answer;
  try {
    const since = now.subtract({ hours: DAYS * 24 });
    const untold = await stores.undelivered.untold(member.id, since, AT_ONCE);
    if (untold.length === 0) return answer;
    await stores.undelivered.markTold(untold.map(({ id }) => id));
    return { ...answer, alerts: [...answer.alerts, ...sayUndelivered(untold, member, now)] };
  } catch (error) {
    log.error({ err: error }, "what could not be delivered could not be told either");
    return answer;
  }
}
