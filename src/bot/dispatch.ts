import {
  type Action,
  type Command,
  type OtherOptions,
  type RawInput,
  Refusal,
  type Suggestion,
} from "../../commands/kit/command.ts";
import type { Context } from "../../commands/kit/context.ts";
import type { Group, Stores } from "../../commands/kit/ports.ts";
import { readPress } from "../../commands/kit/press.ts";
import { type Reply, reply, text } from "../../commands/kit/reply.ts";
import { type CauseId, causeId, type MemberId } from "../../shared/ids.ts";
import type { Clock } from "../clock.ts";
import type { Log } from "../log.ts";
import { inputFaults, spoken } from "./check-input.ts";
import type { Asked, Bot } from "./face.ts";
import type { BookOf } from "./group-books.ts";
import { markReply, readMark } from "./mark.ts";
import { isCoachOf, type Standing, standingByPress, standingInGroup } from "./who.ts";

export interface BotParts {
  /** Where requests come from: keeps the causes of two faces on one store apart. */
  readonly face: "discord" | "terminal";
  readonly commands: readonly Command[];
  readonly stores: Stores;
  /** The group of a member, for presses in direct messages. */
  readonly groupOf: (member: MemberId) => Promise<Group | null>;
  readonly bookOf: BookOf;
  readonly clock: Clock;
  readonly newId: () => string;
  readonly log: Log;
}

const CAUSE_MAX = 100;
const SUGGESTIONS_MAX = 25;
const SUGGESTION_TEXT_MAX = 100;

const STALE_BUTTON =
  "This button no longer leads anywhere. Type /stock to see what you have, with fresh buttons.";
/** One sentence for "somebody else's" and "no such thing": it must not tell which. */
const NOT_YOURS =
  "This button is not yours to press, or what it spoke of is gone. Type /stock in your group to see what you have.";

/** The bot behind every face: finds who asks, checks that they may, runs the command, and is the one place that catches. */
export function createBot(parts: BotParts): Bot {
  const byName = new Map(parts.commands.map((command) => [command.path.join(" "), command]));

  return {
    command: (asked, path, raw) =>
      guarded(parts, asked, path.join(" "), async () => {
        const command = byName.get(path.join(" "));
        if (command === undefined) throw new Refusal(unknownCommand(path));
        if (asked.groupId === "") {
          throw new Refusal(
            `${spoken(command)} works in your group's server. Type it in a channel there; only you will see the answer.`,
          );
        }
        return runCommand(parts, asked, command, raw);
      }),

    press: (asked, pressId, picked) =>
      guarded(parts, asked, pressId.split("~", 1)[0] ?? "", () => runPress(pressId, asked, picked)),

    complete: async (asked, path, option, typed, others = {}) => {
      try {
        const command = byName.get(path.join(" "));
        return command === undefined
          ? []
          : await suggest(parts, asked, command, { option, typed, others });
      } catch (error) {
        parts.log.warn({ err: error, command: path.join(" "), option }, "a completion failed");
        return [];
      }
    },
  };

  async function runPress(id: string, asked: Asked, picked: readonly string[]): Promise<Reply> {
    const press = readPress(id);
    const command = press === null ? undefined : byName.get(press.command);
    const action =
      press !== null && command !== undefined && Object.hasOwn(command.actions, press.action)
        ? command.actions[press.action]
        : undefined;
    if (press === null || command === undefined || action === undefined) {
      throw new Refusal(STALE_BUTTON);
    }
    if (asked.groupId === "") return pressDirect(parts, asked, command, action, press.args, picked);
    const standing = await standingInGroup(parts.stores, asked);
    return action(await contextFor(parts, asked, standing, command), [...press.args, ...picked]);
  }
}

async function runCommand(
  parts: BotParts,
  asked: Asked,
  command: Command,
  raw: RawInput,
): Promise<Reply> {
  // Who may ask comes first: the options of a coach's command are nobody else's business.
  const context = await contextFor(
    parts,
    asked,
    await standingInGroup(parts.stores, asked),
    command,
  );
  const faults = inputFaults(command, raw);
  if (faults.length > 0) throw new Refusal(faults);
  return command.run(context, raw);
}

/** A press in a direct message, where no group is told. */
async function pressDirect(
  parts: BotParts,
  asked: Asked,
  command: Command,
  action: Action,
  args: readonly string[],
  picked: readonly string[],
): Promise<Reply> {
  const press = readMark(args);
  const { stores, groupOf } = parts;
  const standing = await standingByPress(stores, groupOf, asked.actor.userId, press);
  if (standing === null) throw new Refusal(NOT_YOURS);
  const context = await contextFor(parts, asked, standing, command);
  return markReply(await action(context, [...press.args, ...picked]), standing.member.id);
}

/** Throws a `Refusal` when the asker may not use the command. */
async function contextFor(
  parts: BotParts,
  asked: Asked,
  standing: Standing,
  command: Command,
): Promise<Context> {
  const isCoach = isCoachOf(standing.group, asked.actor);
  if (command.who === "coach" && !isCoach) throw new Refusal(forTheCoach(command));
  return {
    now: parts.clock.now(),
    actor: asked.actor,
    ...standing,
    isCoach,
    causeId: causeOf(parts.face, asked.requestId),
    stores: parts.stores,
    foods: await parts.bookOf(standing.group),
    newId: parts.newId,
  };
}

function causeOf(face: string, requestId: string): CauseId {
  const cause = `${face}:${requestId}`;
  // Cutting it could make two causes one, and the second would be taken for done.
  if (cause.length > CAUSE_MAX) throw new Error(`request id does not fit: ${requestId.length}`);
  return causeId(cause);
}

async function suggest(
  parts: BotParts,
  asked: Asked,
  command: Command,
  at: { readonly option: string; readonly typed: string; readonly others: OtherOptions },
): Promise<readonly Suggestion[]> {
  const option = command.options.find(({ name }) => name === at.option);
  if (option?.complete === undefined || asked.groupId === "") return [];
  const standing = await standingInGroup(parts.stores, asked);
  if (command.who === "coach" && !isCoachOf(standing.group, asked.actor)) return [];
  const context = await contextFor(parts, asked, standing, command);
  const all = await option.complete(context, at.typed.slice(0, SUGGESTION_TEXT_MAX), at.others);
  return all
    .filter(({ value }) => fits(value))
    .slice(0, SUGGESTIONS_MAX)
    .map(shortened);
}

/** A value is never cut: half a name would find something else, or nothing. */
function fits(value: string): boolean {
  return value.length >= 1 && value.length <= SUGGESTION_TEXT_MAX;
}

function shortened({ label, value }: Suggestion): Suggestion {
  if (label === "") return { label: value, value };
  if (label.length <= SUGGESTION_TEXT_MAX) return { label, value };
  // `isWellFormed` is not in Node's types yet; a cut pair of surrogates is dropped by hand.
  const cut = label.slice(0, SUGGESTION_TEXT_MAX - 1).replace(/[\uD800-\uDBFF]$/u, "");
  return { label: `${cut}…`, value };
}

async function guarded(
  parts: BotParts,
  asked: Asked,
  what: string,
  work: () => Promise<Reply>,
): Promise<Reply> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof Refusal) return refused(error.sentences);
    // What was typed stays out of the log: it is the member's.
    const errorId = parts.newId().slice(0, 8);
    const { groupId, requestId, actor } = asked;
    parts.log.error(
      { err: error, errorId, what: what.slice(0, 60), groupId, requestId, userId: actor.userId },
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

function unknownCommand(path: readonly string[]): string {
  return `There is no command /${path.join(" ").slice(0, 60)}. Type /help for the list.`;
}

function forTheCoach(command: Command): string {
  return `${spoken(command)} is for the group's coach. Whoever manages the server can name the coach's role with /group setup.`;
}
