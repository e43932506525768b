import {
  type AutocompleteInteraction,
  type BaseInteraction,
  type ChatInputCommandInteraction,
  type Client,
  type CommandInteractionOption,
  Events,
  type Interaction,
  type MessageComponentInteraction,
  MessageFlags,
  type ModalSubmitInteraction,
} from "discord.js";
import type { OtherOptions, Suggestion } from "../../commands/kit/command.ts";
import { type Reply, reply } from "../../commands/kit/reply.ts";
import type { Bot, Opening } from "../bot/face.ts";
import { answerInTime, type Surface } from "./answer.ts";
import { faultOf, logFields } from "./api-fault.ts";
import type { Calls } from "./calls.ts";
import { cut, oneLine } from "./escape.ts";
import { readForm } from "./forms.ts";
import type { AdapterLog } from "./ports.ts";
import { askedBy, readOptions, typedCommand } from "./request.ts";
import { commandSurface, pressSurface, type Standing } from "./surfaces.ts";

export interface ListenParts {
  readonly bot: Bot;
  readonly calls: Calls;
  readonly log: AdapterLog;
  /** Origins from which attached files may be read. */
  readonly attachmentOrigins: readonly string[];
  /** Answer this server only; null for all. */
  readonly onlyGuild: string | null;
}

const CHOICES_MAX = 25;
const CHOICE_TEXT_MAX = 100;
/** Completions cannot be deferred; better none than one after the 3 s. */
const COMPLETE_WITHIN_MS = 2_200;
const SEEN_MAX = 2_000;

const OTHER_SERVER = reply("This bot serves another server. Ask whoever runs it to add yours.");
const NOT_HERE = reply("Type this in a channel of your group's server, not in a direct message.");

/** Answers the client's interactions with the bot. Returns how to wait for those under way. */
export function listen(client: Client, parts: ListenParts): { idle(): Promise<void> } {
  const underWay = new Set<Promise<void>>();
  const seen = new Set<string>();
  client.on(Events.InteractionCreate, (interaction) => {
    // The platform may deliver an event twice.
    if (seen.has(interaction.id)) return;
    remember(seen, interaction.id);
    const work = handle(interaction, parts).catch((error: unknown) => {
      parts.log.error(logFields(error), "an interaction could not be handled");
    });
    underWay.add(work);
    void work.finally(() => underWay.delete(work));
  });
  return {
    idle: async () => {
      await Promise.all(underWay);
    },
  };
}

function remember(seen: Set<string>, id: string): void {
  seen.add(id);
  if (seen.size <= SEEN_MAX) return;
  for (const oldest of seen) {
    seen.delete(oldest);
    return;
  }
}

async function handle(interaction: Interaction, parts: ListenParts): Promise<void> {
  if (interaction.isAutocomplete()) return complete(interaction, parts);
  if (interaction.isChatInputCommand()) return runCommand(interaction, parts);
  if (interaction.isModalSubmit()) return runSubmit(interaction, parts);
  if (interaction.isButton()) return runPress(interaction, [], parts);
  if (interaction.isStringSelectMenu()) return runPress(interaction, interaction.values, parts);
  parts.log.warn({ type: interaction.type }, "an interaction of a kind that we never offer");
}

async function runCommand(
  interaction: ChatInputCommandInteraction,
  parts: ListenParts,
): Promise<void> {
  const { bot, calls, log, attachmentOrigins } = parts;
  const { path, options } = typedCommand(interaction.commandName, interaction.options.data);
  const surface = commandSurface(calls, interaction);
  const given = options.map(({ name }) => name);
  const opening = { path, given, texts: textsOf(options) };
  if (interaction.guildId !== null && !isElsewhere(interaction, parts) && bot.opensForm(opening)) {
    return openForm(interaction, surface, opening, parts);
  }
  const work = async (): Promise<Reply> => {
    if (interaction.guildId === null) return NOT_HERE;
    if (isElsewhere(interaction, parts)) return OTHER_SERVER;
    const raw = await readOptions(options, attachmentOrigins);
    return raw.ok ? bot.command(askedBy(interaction), path, raw.value) : reply(raw.problem);
  };
  await answerInTime(surface, work, log);
}

/** A form must be the first answer and cannot be announced, so nothing is said before it is there. */
async function openForm(
  interaction: ChatInputCommandInteraction | MessageComponentInteraction,
  surface: Surface,
  opening: Opening,
  { bot, calls, log }: ListenParts,
): Promise<void> {
  const made = await bot.form(askedBy(interaction), opening);
  if (!("fields" in made)) return answerInTime(surface, async () => made, log);
  try {
    await calls.open(interaction, made);
  } catch (error) {
    // The asker sees that it failed and presses again; nothing was changed.
    log.warn({ fault: faultOf(error), form: made.title }, "a form could not be opened");
  }
}

async function runSubmit(interaction: ModalSubmitInteraction, parts: ListenParts): Promise<void> {
  const { bot, calls, log } = parts;
  const work = async (): Promise<Reply> =>
    isElsewhere(interaction, parts)
      ? OTHER_SERVER
      : bot.submit(askedBy(interaction), interaction.customId, readForm(interaction));
  const surface = interaction.isFromMessage()
    ? pressSurface(calls, interaction, standingOf(interaction))
    : commandSurface(calls, interaction);
  await answerInTime(surface, work, log);
}

async function runPress(
  interaction: MessageComponentInteraction,
  picked: readonly string[],
  parts: ListenParts,
): Promise<void> {
  const { bot, calls, log } = parts;
  const surface = pressSurface(calls, interaction, standingOf(interaction));
  const opening = { pressId: interaction.customId };
  if (!isElsewhere(interaction, parts) && bot.opensForm(opening)) {
    return openForm(interaction, surface, opening, parts);
  }
  const work = async (): Promise<Reply> =>
    isElsewhere(interaction, parts)
      ? OTHER_SERVER
      : bot.press(askedBy(interaction), interaction.customId, picked);
  await answerInTime(surface, work, log);
}

function isElsewhere({ guildId }: BaseInteraction, { onlyGuild }: ListenParts): boolean {
  return onlyGuild !== null && guildId !== null && guildId !== onlyGuild;
}

function standingOf({
  guildId,
  message,
}: Pick<MessageComponentInteraction, "guildId" | "message">): Standing {
  if (guildId === null) return "direct";
  return message.flags.has(MessageFlags.Ephemeral) ? "private" : "public";
}

async function complete(interaction: AutocompleteInteraction, parts: ListenParts): Promise<void> {
  const { bot, calls, log } = parts;
  const { path, options } = typedCommand(interaction.commandName, interaction.options.data);
  const focused = interaction.options.getFocused(true);
  const isOurs = interaction.guildId !== null && !isElsewhere(interaction, parts);
  try {
    const found = isOurs
      ? await inTime(
          bot.complete(
            askedBy(interaction),
            path,
            focused.name,
            String(focused.value),
            othersOf(options, focused.name),
          ),
        )
      : [];
    await calls.suggest(interaction, choicesOf(found));
  } catch (error) {
    // The member goes on typing; a completion that came too late is nobody's loss.
    log.warn({ fault: faultOf(error), option: focused.name }, "a completion could not be answered");
  }
}

/** The options filled in so far, but for the one being typed. */
function othersOf(options: readonly CommandInteractionOption[], focused: string): OtherOptions {
  return textsOf(options.filter(({ name }) => name !== focused));
}

function textsOf(options: readonly CommandInteractionOption[]): OtherOptions {
  const filled = options.filter(({ value }) => value !== undefined);
  return Object.fromEntries(filled.map(({ name, value }) => [name, String(value)]));
}

async function inTime(found: Promise<readonly Suggestion[]>): Promise<readonly Suggestion[]> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<readonly Suggestion[]>((resolve) => {
    timer = setTimeout(() => resolve([]), COMPLETE_WITHIN_MS);
  });
  try {
    return await Promise.race([found, late]);
  } catch {
    return [];
  } finally {
    clearTimeout(timer);
  }
}

/** What the platform takes as choices; a value is never cut, it would then name something else. */
function choicesOf(found: readonly Suggestion[]): { name: string; value: string }[] {
  return found
    .filter(({ value }) => value.trim() !== "" && value.length <= CHOICE_TEXT_MAX)
    .map(({ label, value }) => ({
      name: cut(oneLine(label) || oneLine(value) || "…", CHOICE_TEXT_MAX),
      value,
    }))
    .slice(0, CHOICES_MAX);
}
