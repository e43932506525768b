import {
  Client,
  DiscordjsError,
  DiscordjsErrorCodes,
  Events,
  GatewayIntentBits,
  Status,
} from "discord.js";
import type { Command } from "../../commands/kit/command.ts";
import { fail, type Outcome, ok } from "../../shared/outcome.ts";
import type { Bot } from "../bot/face.ts";
import type { Messenger } from "../jobs/ports.ts";
import { faultOf, logFields } from "./api-fault.ts";
import { PLATFORM_ORIGINS } from "./attachment.ts";
import { createCalls } from "./calls.ts";
import { listen } from "./interaction.ts";
import { createMailbox } from "./mailbox.ts";
import { createMessenger } from "./messenger.ts";
import type { AdapterLog, AdapterSettings } from "./ports.ts";
import { publishCommands } from "./publish-commands.ts";
import { unhurried } from "./turns.ts";

export interface DiscordParts {
  readonly token: string;
  readonly applicationId: string;
  readonly bot: Bot;
  readonly commands: readonly Command[];
  readonly settings: AdapterSettings;
  readonly log: AdapterLog;
  /** Where the REST interface is; the platform's own when left out. */
  readonly apiBase?: string | null;
  /** Origins from which attached files may be read; the platform's own when left out. */
  readonly attachmentOrigins?: readonly string[];
  /**
   * A server's id: the commands are registered there only (they appear at once; for trials), and
   * other servers are turned away. Commands registered everywhere before stay until registered anew.
   */
  readonly onlyServer?: string | null;
  /** Which shards of how many this process serves; as many as the platform recommends, all of them, when left out. */
  readonly shards?: Shards | null;
  /** Aborted while the login is under way, it is given up. */
  readonly stopping?: AbortSignal;
}

export interface Shards {
  readonly ids: readonly number[];
  readonly total: number;
}

export interface DiscordHandle {
  readonly messenger: Messenger;
  /** Resolves with the reason when the connection has ended for good: then end the process. */
  readonly closed: Promise<string>;
  /** Whether every shard of this process is connected and ready. */
  isConnected(): boolean;
  /** Waits for answers under way (briefly), then disconnects. */
  stop(): Promise<void>;
}

/** A start that cannot succeed until somebody acts; `sentence` says what to do. */
export interface StartProblem {
  readonly code:
    | "token refused"
    | "another application"
    | "gateway refused"
    | "unreachable"
    | "commands refused"
    | "stopped";
  readonly sentence: string;
}

const STOP_WITHIN_MS = 5_000;

/** Logs in, registers the commands when they changed, and serves them. */
export async function startDiscord(
  parts: DiscordParts,
): Promise<Outcome<DiscordHandle, StartProblem>> {
  const { bot, log, token, applicationId } = parts;
  const apiBase = parts.apiBase ?? null;
  const client = createClient(apiBase, parts.shards ?? null, log);
  const { closed, close } = whenClosed(client);
  const calls = createCalls(apiBase);
  const listening = listen(client, {
    bot: unhurried(bot),
    calls,
    log,
    attachmentOrigins: parts.attachmentOrigins ?? PLATFORM_ORIGINS,
    onlyGuild: parts.onlyServer ?? null,
  });
  const mailbox = createMailbox({ token, applicationId, apiBase });
  const stop = async () => {
    client.removeAllListeners(Events.InteractionCreate);
    client.removeAllListeners(Events.ShardReconnecting);
    await Promise.race([listening.idle(), pause(STOP_WITHIN_MS)]);
    await client.destroy();
    calls.stop();
    mailbox.stop();
  };
  const problem = (await logIn(client, parts, closed)) ?? (await publish(client, parts));
  if (problem !== null) {
    await stop();
    return fail(problem);
  }
  const { size: shards } = client.ws.shards;
  log.info({ servers: client.guilds.cache.size, shards }, "connected to Discord");
  const onTokenRefused = () => close("Discord no longer takes the token");
  return ok({
    messenger: createMessenger({ mailbox, log, onTokenRefused }),
    closed,
    isConnected: () => isConnected(client),
    stop,
  });
}

function isConnected({ ws: { shards } }: Client): boolean {
  return shards.size > 0 && shards.every(({ status }) => status === Status.Ready);
}

function createClient(apiBase: string | null, shards: Shards | null, log: AdapterLog): Client {
  const client = new Client({
    // By itself the library would open one connection, whatever the platform asks for.
    ...(shards === null
      ? { shards: "auto" }
      : { shards: [...shards.ids], shardCount: shards.total }),
    // Interactions and direct messages of our own need no more than this.
    intents: [GatewayIntentBits.Guilds],
    allowedMentions: { parse: [] },
    enforceNonce: true,
    rest: { invalidRequestWarningInterval: 100, ...(apiBase === null ? {} : { api: apiBase }) },
  });
  client.on(Events.Error, (error) => log.error(logFields(error), "the client reported an error"));
  client.on(Events.ShardError, (error, shard) =>
    log.warn({ ...logFields(error), shard }, "the gateway had an error"),
  );
  client.on(Events.ShardReconnecting, (shard) =>
    log.warn({ shard }, "the gateway connection was lost"),
  );
  client.on(Events.ShardResume, (shard, replayed) =>
    log.info({ shard, replayed }, "the gateway resumed"),
  );
  client.rest.on("invalidRequestWarning", ({ count }) => {
    log.warn({ count }, "many requests were refused; too many in ten minutes block this address");
  });
  return client;
}

/** Some closes are final: the library stays down after them, and only a new process can help. */
function whenClosed(client: Client): { closed: Promise<string>; close: (reason: string) => void } {
  let close: (reason: string) => void = () => undefined;
  const closed = new Promise<string>((resolve) => {
    close = resolve;
  });
  client.on(Events.ShardDisconnect, ({ code }) => close(`the gateway closed for good (${code})`));
  client.on(Events.Invalidated, () => close("the session was invalidated"));
  return { closed, close };
}

/** Null when logged in and ready. */
async function logIn(
  client: Client,
  { token, applicationId, log, stopping }: DiscordParts,
  closed: Promise<string>,
): Promise<StartProblem | null> {
  const ready = new Promise<null>((resolve) => {
    client.once(Events.ClientReady, () => resolve(null));
  });
  try {
    // After a final close the library's login never settles, so the close must be heard beside it.
    const loggedIn = client.login(token).then(() => ready);
    const refused = await Promise.race([loggedIn, closed, aborted(stopping)]);
    if (typeof refused === "object" && refused !== null) return refused;
    if (refused !== null) return { code: "gateway refused", sentence: gatewayRefused(refused) };
  } catch (error) {
    log.error(logFields(error), "the login failed");
    return loginProblem(error);
  }
  return client.application?.id === applicationId ? null : ANOTHER_APPLICATION;
}

const STOPPED: StartProblem = {
  code: "stopped",
  sentence: "Stopped before the connection to Discord was there.",
};

/** Settles when the signal is aborted; never without a signal. */
function aborted(signal: AbortSignal | undefined): Promise<typeof STOPPED> {
  return new Promise((resolve) => {
    const stop = () => resolve(STOPPED);
    if (signal?.aborted === true) stop();
    signal?.addEventListener("abort", stop, { once: true });
  });
}

function loginProblem(error: unknown): StartProblem {
  const isToken =
    error instanceof DiscordjsError && error.code === DiscordjsErrorCodes.TokenInvalid;
  if (isToken) return TOKEN_REFUSED;
  const fault = faultOf(error);
  return fault.kind === "refused" && fault.status === 401 ? TOKEN_REFUSED : UNREACHABLE;
}

const TOKEN_REFUSED: StartProblem = {
  code: "token refused",
  sentence:
    "Discord does not take DISCORD_TOKEN. Make a new token on the Bot page of the developer portal and set it.",
};
const UNREACHABLE: StartProblem = {
  code: "unreachable",
  sentence: "Discord could not be reached. Check the network connection and start again.",
};
const ANOTHER_APPLICATION: StartProblem = {
  code: "another application",
  sentence:
    "DISCORD_APPLICATION_ID is not the application that DISCORD_TOKEN belongs to. Copy both from the same application in the developer portal.",
};

function gatewayRefused(reason: string): string {
  return `Discord refused the connection: ${reason}. Check the token and the bot's settings in the developer portal.`;
}

/** Null when the commands are registered, or could not be for a while: then the old ones still serve. */
async function publish(client: Client, parts: DiscordParts): Promise<StartProblem | null> {
  const { applicationId, commands, settings, log } = parts;
  const guildId = parts.onlyServer ?? null;
  try {
    const done = await publishCommands({
      rest: client.rest,
      applicationId,
      guildId,
      commands,
      settings,
    });
    log.info({ commands: commands.length, done }, "commands checked");
    return null;
  } catch (error) {
    log.error(logFields(error), "the commands could not be registered");
    const fault = faultOf(error);
    if (fault.kind !== "refused") return null;
    const sentence = `Discord refused the list of commands (${fault.status}, ${fault.code}). The log has the rest.`;
    return { code: "commands refused", sentence };
  }
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, ms).unref();
  });
}
