import { type Command, Refusal } from "../../commands/kit/command.ts";
import type { Context } from "../../commands/kit/context.ts";
import type { Group, Stores } from "../../commands/kit/ports.ts";
import { type Reply, reply, text } from "../../commands/kit/reply.ts";
import { type CauseId, causeId, type MemberId } from "../../shared/ids.ts";
import type { Clock } from "../clock.ts";
import type { Log } from "../log.ts";
import { spoken } from "./check-input.ts";
import type { Asked } from "./face.ts";
import type { BookOf } from "./group-books.ts";
import type { RecipesOf } from "./recipe-indexes.ts";
import { isCoachOf, type Standing } from "./who.ts";

export interface BotParts {
  /** Where requests come from: keeps the causes of two faces on one store apart. */
  readonly face: "discord" | "terminal";
  readonly commands: readonly Command[];
  readonly stores: Stores;
  /** The group of a member, for presses in direct messages. */
  readonly groupOf: (member: MemberId) => Promise<Group | null>;
  readonly bookOf: BookOf;
  readonly recipesOf: RecipesOf;
  readonly clock: Clock;
  readonly newId: () => string;
  readonly log: Log;
  /** Told what a request was about when it failed by a fault of the bot's own. */
  readonly onFailure?: (what: string) => void;
}

const CAUSE_MAX = 100;

/** Throws a `Refusal` when the asker may not use the command. */
export async function contextFor(
  parts: BotParts,
  asked: Asked,
  standing: Standing,
  command: Command,
): Promise<Context> {
  const isCoach = isCoachOf(standing.group, asked.actor);
  if (command.who === "coach" && !isCoach) throw new Refusal(forTheCoach(command));
  const foods = await parts.bookOf(standing.group);
  return {
    now: parts.clock.now(),
    actor: asked.actor,
    ...standing,
    isCoach,
    causeId: causeOf(parts.face, asked.requestId),
    stores: parts.stores,
    foods,
    recipeBook: parts.recipesOf(standing.group, foods),
    newId: parts.newId,
  };
}

function causeOf(face: string, requestId: string): CauseId {
  const cause = `${face}:${requestId}`;
  // Cutting it could make two causes one, and the second would be taken for done.
  if (cause.length > CAUSE_MAX) throw new Error(`request id does not fit: ${requestId.length}`);
  return causeId(cause);
}

/** Runs it, and is the one place that catches: a member's mistake becomes a sentence, the rest an apology with an id. */
export async function guarded<T>(
  parts: BotParts,
  asked: Asked,
  what: string,
  work: () => Promise<T>,
): Promise<T | Reply> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof Refusal) return refused(error.sentences);
    // What was typed stays out of the log: it is the member's.
    const errorId = parts.newId().slice(0, 8);
    parts.onFailure?.(what);
    parts.log.error(
      { err: error, errorId, what: what.slice(0, 60), groupId: asked.groupId },
      "a request failed",
    );
    return apology(errorId);
  }
}

function refused(sentences: readonly string[]): Reply {
  const [first, ...rest] = sentences;
  return reply(first ?? "That did not work.", rest.length > 0 ? { parts: [text(...rest)] } : {});
}

function apology(errorId: string): Reply {
  return reply("Something went wrong on our side, and your request may not have gone through.", {
    parts: [
      text(
        "Look at /stock before you try again.",
        `If it happens again, tell your coach this number: ${errorId}`,
      ),
    ],
  });
}

function forTheCoach(command: Command): string {
  return `${spoken(command)} is for the group's coach. Whoever manages the server can name the coach's role with /group setup.`;
}
