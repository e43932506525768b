import { createHash } from "node:crypto";
import { type REST, Routes } from "discord.js";
import type { Command } from "../../commands/kit/command.ts";
import { commandList } from "./command-list.ts";
import type { AdapterSettings } from "./ports.ts";

export interface PublishParts {
  readonly rest: REST;
  readonly applicationId: string;
  /** Registers in this server only; null for everywhere. */
  readonly guildId: string | null;
  readonly commands: readonly Command[];
  readonly settings: AdapterSettings;
}

/**
 * Registers the commands, replacing whatever the application had, but only when the list is another
 * than the one registered last. The hash is kept after the platform has taken the list, so a failure
 * is repeated at the next start.
 * @throws what the REST manager throws.
 */
export async function publishCommands(parts: PublishParts): Promise<"registered" | "unchanged"> {
  const { rest, applicationId, guildId, commands, settings } = parts;
  const body = commandList(commands, guildId === null ? "global" : "guild");
  const hash = createHash("sha256").update(JSON.stringify(body)).digest("hex");
  const key = `discord.commands.${applicationId}.${guildId ?? "global"}`;
  if ((await settings.get(key)) === hash) return "unchanged";
  const route =
    guildId === null
      ? Routes.applicationCommands(applicationId)
      : Routes.applicationGuildCommands(applicationId, guildId);
  await rest.put(route, { body });
  await settings.set(key, hash);
  return "registered";
}
