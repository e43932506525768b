import { type Action, type Command, type RawInput, Refusal } from "../../commands/kit/command.ts";
import { readPress } from "../../commands/kit/press.ts";
import type { Reply } from "../../commands/kit/reply.ts";
import { type BotParts, contextFor, guarded } from "./ask.ts";
import { inputFaults, inServerOnly } from "./check-input.ts";
import type { Asked, Bot } from "./face.ts";
import { createForms } from "./forms.ts";
import { markReply, readMark } from "./mark.ts";
import { recipeIndexes } from "./recipe-indexes.ts";
import { suggest } from "./suggest.ts";
import { withUndelivered } from "./undelivered.ts";
import { standingInGroup, standingOrRefuse } from "./who.ts";

const STALE_BUTTON =
  "This button no longer leads anywhere. Type /stock to see what you have, with fresh buttons.";

/** The bot behind every face: finds who asks, checks that they may, runs the command, and is the one place that catches. */
export function createBot(given: Omit<BotParts, "recipesOf">): Bot {
  const parts: BotParts = { ...given, recipesOf: recipeIndexes(given.stores.recipes) };
  const byName = new Map(parts.commands.map((command) => [command.path.join(" "), command]));

  return {
    ...createForms(parts, byName),

    command: (asked, path, raw) =>
      guarded(parts, asked, path.join(" "), async () => {
        const command = byName.get(path.join(" "));
        if (command === undefined) throw new Refusal(unknownCommand(path));
        if (asked.groupId === "") throw new Refusal(inServerOnly(command));
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
  return withUndelivered(context, await command.run(context, raw), parts.log);
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
  const standing = await standingOrRefuse(parts, asked, press);
  const context = await contextFor(parts, asked, standing, command);
  return markReply(await action(context, [...press.args, ...picked]), standing.member.id);
}

function unknownCommand(path: readonly string[]): string {
  return `There is no command /${path.join(" ").slice(0, 60)}. Type /help for the list.`;
}
