import { setMaxListeners } from "node:events";
import type { Messenger, OutgoingMessage, SendResult } from "../jobs/ports.ts";
import { type ApiFault, CODE, faultOf } from "./api-fault.ts";
import { onlyWhile } from "./fence.ts";
import { type Mailbox, type Stored, sentAt } from "./mailbox.ts";
import { marksOf } from "./marks.ts";
import type { AdapterLog } from "./ports.ts";
import { render } from "./render.ts";
import { drawPictures } from "./render-pictures.ts";

/** All requests for one message together; the lease on its reminders is longer. */
const WHOLE_SEND_MS = 60_000;
/** The platform names no wait for this one. */
const OPENING_TOO_FAST_MS = 60_000;
const HOW_TO_OPEN =
  "Your direct messages are closed to this bot, so it writes here. To be told in private: this server's menu, Privacy Settings, Direct Messages on.";

/** What became of a message at one place. */
type Tried =
  | { readonly kind: "sent"; readonly stored: Stored }
  | { readonly kind: "unknown"; readonly reason: string; readonly retryAfterMs: number | null }
  /** Not to be had here; another place may do. */
  | { readonly kind: "shut"; readonly reason: string; readonly isDirectClosed: boolean };

interface Place {
  readonly where: "direct message" | "channel";
  readonly open: () => Promise<string>;
  /** The one member that may be pinged; null where the message reaches only them anyway. */
  readonly mention: string | null;
}

export interface MessengerParts {
  readonly mailbox: Mailbox;
  readonly log: AdapterLog;
  /** Called when the platform no longer takes the token. */
  readonly onTokenRefused: () => void;
}

/**
 * Carries reminders: by direct message, and where that is closed to the group's reminder channel (or
 * the other way about, as the member chose). A reminder concerns food safety, so the second place is
 * tried whenever the first one cannot take the message.
 */
export function createMessenger(parts: MessengerParts): Messenger {
  return {
    send: async (message) => {
      // A timer of our own, let go at the end: `AbortSignal.timeout` keeps the message for the whole minute.
      const whole = new AbortController();
      const signal = onlyWhile(whole.signal, message.isOurs);
      const timer = setTimeout(() => whole.abort(), WHOLE_SEND_MS);
      try {
        const result = await sendWithin(parts, message, signal);
        if (result.kind !== "unknown" || message.isOurs()) return result;
        return { ...result, reason: `${result.reason}, and the claim was over` };
      } finally {
        clearTimeout(timer);
      }
    },
    share: (processes) => parts.mailbox.share(processes),
  };
}

async function sendWithin(
  parts: MessengerParts,
  message: OutgoingMessage,
  signal: AbortSignal,
): Promise<SendResult> {
  const places = placesFor(parts.mailbox, message, signal);
  if (message.attempt > 1) {
    const earlier = await findEarlier(parts, message, places, signal);
    if (earlier !== null) return earlier;
  }
  if (message.onlyLooks) {
    return { kind: "impossible", reason: "no try arrived", directClosed: false };
  }
  return sendTo(parts, message, places, signal);
}

function placesFor(mailbox: Mailbox, message: OutgoingMessage, signal: AbortSignal): Place[] {
  const { to, group } = message;
  const direct: Place = {
    where: "direct message",
    open: () => mailbox.direct(to.userId, signal),
    mention: null,
  };
  const id = group.reminderChannelId;
  if (id === null) return [direct];
  const channel: Place = { where: "channel", open: async () => id, mention: to.userId };
  return to.deliverTo === "channel" ? [channel, direct] : [direct, channel];
}

/** An earlier try may have arrived although it looked failed: at either place. */
async function findEarlier(
  parts: MessengerParts,
  { nonce, since }: OutgoingMessage,
  places: readonly Place[],
  signal: AbortSignal,
): Promise<SendResult | null> {
  // Every request listens to the signal, and reading back at both places may take forty.
  setMaxListeners(0, signal);
  for (const { where, open } of places) {
    try {
      const stored = await parts.mailbox.find(await open(), nonce, since, signal);
      if (stored === null) continue;
      const wordedAt = stored.wordedAt ?? sentAt(stored.id);
      return { kind: "sent", messageId: stored.id, where, directClosed: false, wordedAt };
    } catch (error) {
      const tried = judge(parts, faultOf(error));
      // Where we may not look, an earlier try was refused as well, unless we were shut out since.
      if (tried.kind === "unknown") return tried;
    }
  }
  return null;
}

async function sendTo(
  parts: MessengerParts,
  message: OutgoingMessage,
  places: readonly Place[],
  signal: AbortSignal,
): Promise<SendResult> {
  let directClosed = false;
  const reasons: string[] = [];
  for (const place of places) {
    const tried = await tryPlace(parts, message, place, directClosed, signal);
    if (tried.kind === "unknown") return tried;
    if (tried.kind === "sent") {
      const { id: messageId, wordedAt } = tried.stored;
      const sent = { kind: "sent", messageId, where: place.where, directClosed } as const;
      // The platform gives back the earlier message where it knows the nonce: it may have said less, or more.
      const isEarlier = wordedAt !== null && !wordedAt.equals(message.wordedAt);
      return isEarlier ? { ...sent, wordedAt } : sent;
    }
    directClosed ||= tried.isDirectClosed;
    reasons.push(`${place.where}: ${tried.reason}`);
  }
  parts.log.warn({ reasons, nonce: message.nonce }, "a reminder has no way to its member");
  return { kind: "impossible", reason: reasons.join("; "), directClosed };
}

async function tryPlace(
  { mailbox, ...parts }: MessengerParts,
  message: OutgoingMessage,
  { where, open, mention }: Place,
  isDirectClosed: boolean,
  signal: AbortSignal,
): Promise<Tried> {
  await drawPictures(message.reply.pictures);
  const rendered = render(message.reply, {
    marks: marksOf(message.nonce, message.wordedAt),
    ...(mention === null ? {} : { mention }),
    ...(where === "channel" && isDirectClosed ? { notes: [HOW_TO_OPEN] } : {}),
  });
  try {
    const stored = await mailbox.post(await open(), message.nonce, rendered, signal);
    return { kind: "sent", stored };
  } catch (error) {
    const fault = faultOf(error);
    if (fault.kind === "refused" && fault.code === CODE.unknownChannel) {
      mailbox.forget(message.to.userId);
      // A remembered direct channel that is gone is opened anew at the next try.
      if (where === "direct message") return unknown("the direct channel is gone", null);
    }
    return judge(parts, fault);
  }
}

function judge(parts: Pick<MessengerParts, "onTokenRefused">, fault: ApiFault): Tried {
  if (fault.kind === "limited") return unknown("told to wait", fault.retryAfterMs);
  if (fault.kind === "unknown") return unknown(fault.reason, null);
  if (fault.status === 401) {
    parts.onTokenRefused();
    return unknown("the token was refused", null);
  }
  // Not the platform's own word, which has a code: something between it and us refused.
  if (fault.code === 0) return unknown(`refused (${fault.status}) without a reason`, null);
  if (fault.code === CODE.openingTooFast) return unknown("opening too fast", OPENING_TOO_FAST_MS);
  const isDirectClosed = fault.code === CODE.directClosed || fault.code === CODE.noMutualGuild;
  const reason = isDirectClosed
    ? `closed (${fault.code})`
    : `refused (${fault.status}, ${fault.code})`;
  return { kind: "shut", reason, isDirectClosed };
}

function unknown(reason: string, retryAfterMs: number | null) {
  return { kind: "unknown", reason, retryAfterMs } as const;
}
