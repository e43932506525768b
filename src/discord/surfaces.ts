import type { Reply } from "../../commands/kit/reply.ts";
import { reply } from "../../commands/kit/reply.ts";
import type { Surface } from "./answer.ts";
import { faultOf } from "./api-fault.ts";
import type { Answerable, Calls } from "./calls.ts";

export interface AnswerableNow extends Answerable {
  readonly createdTimestamp: number;
}

/** Where the pressed message stands. */
export type Standing =
  /** Between the bot and one member. */
  | "direct"
  /** In a channel, seen by its asker alone. */
  | "private"
  /** In a channel, seen by all. */
  | "public";

const SHOWN_BELOW = reply("Shown to the channel below.");

/**
 * How a slash command is answered. A slow answer is announced privately; one that turns out to be for
 * the whole channel then follows as a message of its own, because privacy is fixed by the first answer.
 */
export function commandSurface(calls: Calls, to: AnswerableNow): Surface {
  return {
    ageMs: () => Date.now() - to.createdTimestamp,
    first: (answer) => calls.say(to, answer, answer.audience === "private"),
    defer: () => calls.defer(to),
    later: async (answer) => {
      if (answer.audience === "private") return editSafely(calls, to, answer);
      await editSafely(calls, to, SHOWN_BELOW);
      await calls.follow(to, answer, false);
    },
    repair: (answer) => calls.edit(to, answer),
  };
}

/**
 * How a press is answered. The pressed message becomes the new reply, so that no stale buttons stay
 * behind, except where that would change who sees it: a private reply to a press on a public message
 * (it may be somebody else's: only the bot knows) comes as a private message, and a reply to be shown,
 * pressed on a private message, as a public one.
 */
export function pressSurface(calls: Calls, to: AnswerableNow, standing: Standing): Surface {
  const replaces = ({ audience }: Reply) =>
    standing === "direct" || (standing === "private") === (audience === "private");
  return {
    ageMs: () => Date.now() - to.createdTimestamp,
    first: (answer) =>
      replaces(answer)
        ? calls.update(to, answer)
        : calls.say(to, answer, answer.audience === "private"),
    defer: () => calls.deferUpdate(to),
    later: (answer) =>
      replaces(answer)
        ? editSafely(calls, to, answer)
        : calls.follow(to, answer, answer.audience === "private"),
    repair: (answer) => calls.edit(to, answer),
  };
}

/** An edit may be repeated when nobody knows whether it arrived: twice the same is once. */
async function editSafely(calls: Calls, to: Answerable, answer: Reply): Promise<void> {
  try {
    await calls.edit(to, answer);
  } catch (error) {
    if (faultOf(error).kind !== "unknown") throw error;
    await calls.edit(to, answer);
  }
}
