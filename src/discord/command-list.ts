import {
  type APIApplicationCommandBasicOption,
  type APIApplicationCommandSubcommandOption,
  ApplicationCommandOptionType,
  ApplicationCommandType,
  ApplicationIntegrationType,
  ChannelType,
  InteractionContextType,
  type RESTPostAPIChatInputApplicationCommandsJSONBody,
} from "discord.js";
import type { Command, Option } from "../../commands/kit/command.ts";
import { cut } from "./escape.ts";

const DESCRIPTION_MAX = 100;

/**
 * The commands as the platform registers them: paths of two words become subcommands of the first.
 * Commands for the coach stay visible to all, because a subcommand cannot be hidden on its own and a
 * server's own settings could override it: the bot checks at every use.
 */
export function commandList(
  commands: readonly Command[],
  scope: "global" | "guild",
): RESTPostAPIChatInputApplicationCommandsJSONBody[] {
  const byName = new Map<string, Command[]>();
  for (const command of commands) {
    const [name] = command.path;
    byName.set(name, [...(byName.get(name) ?? []), command]);
  }
  return [...byName].map(([name, group]) => ({
    type: ApplicationCommandType.ChatInput,
    name,
    ...declaration(name, group),
    // Where a command works can be said of global ones only; those of one server work nowhere else.
    ...(scope === "guild" ? {} : GROUP_ONLY),
  }));
}

const GROUP_ONLY = {
  contexts: [InteractionContextType.Guild],
  integration_types: [ApplicationIntegrationType.GuildInstall],
};

function declaration(name: string, group: readonly Command[]) {
  const [only] = group;
  if (only !== undefined && group.length === 1 && only.path.length === 1) {
    return { description: only.description, options: optionList(only.options) };
  }
  const options = group.map(subcommand);
  const words = options.map((option) => option.name);
  if (new Set(words).size !== words.length) throw new Error(`/${name}: a word occurs twice`);
  return { description: cut(`${name}: ${words.join(", ")}`, DESCRIPTION_MAX), options };
}

function subcommand(command: Command): APIApplicationCommandSubcommandOption {
  const [first, second] = command.path;
  if (second === undefined) {
    throw new Error(`/${first} cannot be a command and hold subcommands at once`);
  }
  return {
    type: ApplicationCommandOptionType.Subcommand,
    name: second,
    description: command.description,
    options: optionList(command.options),
  };
}

/** Required ones first, as the platform asks; else in the order declared. */
function optionList(options: readonly Option[]): APIApplicationCommandBasicOption[] {
  const required = options.filter((option) => option.required);
  return [...required, ...options.filter((option) => !option.required)].map(plainOption);
}

function plainOption(option: Option): APIApplicationCommandBasicOption {
  const { name, description, required } = option;
  const base = { name, description, required };
  switch (option.kind) {
    case "file":
      return { ...base, type: ApplicationCommandOptionType.Attachment };
    case "role":
      return { ...base, type: ApplicationCommandOptionType.Role };
    case "member":
      return { ...base, type: ApplicationCommandOptionType.User };
    case "channel":
      return {
        ...base,
        type: ApplicationCommandOptionType.Channel,
        channel_types: [ChannelType.GuildText, ChannelType.GuildAnnouncement],
      };
    case "yes-no":
      return { ...base, type: ApplicationCommandOptionType.Boolean };
    case "text":
      return textOption(option);
  }
}

function textOption({ name, description, required, choices, complete }: Option) {
  const base = { name, description, required, type: ApplicationCommandOptionType.String } as const;
  // A closed list and completion exclude each other on the platform.
  if (choices !== undefined && choices.length > 0) {
    return { ...base, choices: choices.map((value) => ({ name: value, value })) };
  }
  return complete === undefined ? base : { ...base, autocomplete: true as const };
}
