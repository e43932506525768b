import {
  ApplicationCommandOptionType,
  type BaseInteraction,
  type CommandInteractionOption,
  PermissionFlagsBits,
} from "discord.js";
import type { AttachedFile, RawInput } from "../../commands/kit/command.ts";
import type { Actor } from "../../commands/kit/context.ts";
import { fail, type Outcome, ok } from "../../shared/outcome.ts";
import type { Asked } from "../bot/face.ts";
import { download } from "./attachment.ts";

/**
 * Who asks, where. In a direct message there is no group: both group fields are then "", and the bot
 * takes the group from what the press acts on.
 */
export function askedBy(interaction: BaseInteraction): Asked {
  const { guildId } = interaction;
  return {
    groupId: guildId ?? "",
    groupName: guildId === null ? "" : (interaction.guild?.name ?? "This group"),
    actor: actorOf(interaction),
    requestId: interaction.id,
  };
}

function actorOf(interaction: BaseInteraction): Actor {
  const { member, user, guildId } = interaction;
  const base = { userId: user.id, isManager: isManager(interaction) };
  if (member === null) return { ...base, name: user.displayName, roleIds: [] };
  // Of a server that is not in the cache the member comes raw.
  const isRaw = Array.isArray(member.roles);
  const roleIds = isRaw ? member.roles : [...member.roles.cache.keys()];
  const nick = "displayName" in member ? member.displayName : member.nick;
  return {
    ...base,
    name: nick ?? user.displayName,
    // The role of everybody bears the server's id; as a coach role it would make everybody coach.
    roleIds: roleIds.filter((id) => id !== guildId),
  };
}

function isManager(interaction: BaseInteraction): boolean {
  return interaction.memberPermissions?.has(PermissionFlagsBits.ManageGuild) ?? false;
}

export interface Typed {
  /** One or two words. */
  readonly path: readonly string[];
  readonly options: readonly CommandInteractionOption[];
}

/** Finds the subcommand, if there is one. */
export function typedCommand(name: string, data: readonly CommandInteractionOption[]): Typed {
  const [first] = data;
  return first?.type === ApplicationCommandOptionType.Subcommand
    ? { path: [name, first.name], options: first.options ?? [] }
    : { path: [name], options: data };
}

/** The options as the bot takes them, attachments read. The problem is a sentence for the member. */
export async function readOptions(
  options: readonly CommandInteractionOption[],
  origins: readonly string[],
): Promise<Outcome<RawInput, string>> {
  const raw: [string, string | AttachedFile][] = [];
  for (const option of options) {
    if (option.attachment === undefined) {
      raw.push([option.name, textOf(option.value)]);
      continue;
    }
    const file = await download(option.attachment, origins);
    if (!file.ok) return fail(file.problem);
    raw.push([option.name, file.value]);
  }
  return ok(Object.fromEntries(raw));
}

function textOf(value: string | number | boolean | undefined): string {
  if (typeof value === "boolean") return value ? "yes" : "no";
  return value === undefined ? "" : String(value);
}
