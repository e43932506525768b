import { REST, Routes, SnowflakeUtil } from "discord.js";
import { Temporal } from "temporal-polyfill";
import { z } from "zod";
import { type Instant, isBefore } from "../../shared/time.ts";
import { isOfNonce, wordedAtOf } from "./marks.ts";
import type { Rendered } from "./render.ts";

/**
 * Half of the platform's 50 a second (topics/rate-limits): the library counts from the first request of
 * each second, so any second may hold the end of one count and the beginning of the next.
 */
const REQUESTS_PER_SECOND = 25;
/** Shorter waits for the rate limit are sat out here; longer ones go back to the caller. */
const SIT_OUT_MS = 2_000;
const TIMEOUT_MS = 15_000;
const KNOWN_CHANNELS_MAX = 20_000;
/** Messages read back at a time, the platform's maximum, and how often in a channel with much traffic. */
const READ_BACK = 100;
const READ_BACK_TIMES = 20;

const channel = z.object({ id: z.string() });
const sentMessage = z.object({
  id: z.string(),
  components: z.array(z.looseObject({ id: z.number().nullish() })).nullish(),
});
const readMessages = z.array(
  sentMessage.extend({
    author: z.object({ id: z.string() }),
    nonce: z.union([z.string(), z.number()]).nullish(),
  }),
);

export interface MailboxParts {
  readonly token: string;
  readonly applicationId: string;
  readonly apiBase: string | null;
  /** By default well below the platform's 50. */
  readonly requestsPerSecond?: number;
}

/** A message of ours as the platform has it. */
export interface Stored {
  readonly id: string;
  /** To the second; null when it does not say (`marks.ts`). */
  readonly wordedAt: Instant | null;
}

/** Channels and messages of reminders. Every function throws what the REST manager throws. */
export interface Mailbox {
  /** The direct channel with a user; opened once, then remembered. */
  direct(userId: string, signal: AbortSignal): Promise<string>;
  /** Forgets a direct channel that turned out to be gone. */
  forget(userId: string): void;
  /** The message that is stored now: the earlier one when the nonce was used within minutes. */
  post(channelId: string, nonce: string, rendered: Rendered, signal: AbortSignal): Promise<Stored>;
  /** Our message since then that bears the nonce's mark; null when the channel has none. */
  find(
    channelId: string,
    nonce: string,
    since: Instant,
    signal: AbortSignal,
  ): Promise<Stored | null>;
  /** So many processes send for this bot: keeps to this one's part of the rate. */
  share(processes: number): void;
  stop(): void;
}

function toStored(message: z.infer<typeof sentMessage>): Stored {
  return { id: message.id, wordedAt: wordedAtOf(message) };
}

/** When a message was stored: its id says so (reference, "Snowflakes"). */
export function sentAt(messageId: string): Instant {
  return Temporal.Instant.fromEpochMilliseconds(SnowflakeUtil.timestampFrom(messageId));
}

/**
 * A REST manager apart from the client's: a burst of reminders must not queue before answers, and
 * nothing is repeated here, because an error does not mean that nothing was sent.
 */
export function createMailbox(parts: MailboxParts): Mailbox {
  const { token, applicationId, apiBase } = parts;
  const known = new Map<string, string>();
  const rest = new REST({
    ...(apiBase === null ? {} : { api: apiBase }),
    retries: 0,
    timeout: TIMEOUT_MS,
    globalRequestsPerSecond: parts.requestsPerSecond ?? REQUESTS_PER_SECOND,
    rejectOnRateLimit: (limit) => limit.retryAfter > SIT_OUT_MS,
  }).setToken(token);

  const readPage = async (channelId: string, before: string | null, signal: AbortSignal) => {
    const query = new URLSearchParams({ limit: String(READ_BACK) });
    if (before !== null) query.set("before", before);
    return readMessages.parse(await rest.get(Routes.channelMessages(channelId), { query, signal }));
  };

  return {
    direct: async (userId, signal) => {
      const cached = known.get(userId);
      if (cached !== undefined) return cached;
      const body = { recipient_id: userId };
      const { id } = channel.parse(await rest.post(Routes.userChannels(), { body, signal }));
      if (known.size >= KNOWN_CHANNELS_MAX) known.clear();
      known.set(userId, id);
      return id;
    },
    forget: (userId) => {
      known.delete(userId);
    },
    post: async (channelId, nonce, { message, files }, signal) => {
      const body = { ...message, nonce, enforce_nonce: true };
      const route = Routes.channelMessages(channelId);
      return toStored(sentMessage.parse(await rest.post(route, { body, files, signal })));
    },
    find: async (channelId, nonce, since, signal) => {
      const isIt = (message: z.infer<typeof readMessages>[number]): boolean =>
        message.author.id === applicationId &&
        (message.nonce === nonce || isOfNonce(message, nonce));
      let before: string | null = null;
      for (let times = 0; times < READ_BACK_TIMES; times += 1) {
        const page = await readPage(channelId, before, signal);
        const found = page.find(isIt);
        if (found !== undefined) return toStored(found);
        const oldest = page.at(-1);
        const isAll = page.length < READ_BACK || oldest === undefined;
        if (isAll || isBefore(sentAt(oldest.id), since)) return null;
        before = oldest.id;
      }
      return null;
    },
    share: (processes) => {
      const part = Math.floor(REQUESTS_PER_SECOND / processes);
      rest.options.globalRequestsPerSecond = Math.max(1, part);
    },
    stop: () => {
      rest.clearHashSweeper();
      rest.clearHandlerSweeper();
    },
  };
}
