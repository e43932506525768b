import { badForm, type HttpAnswer, REFUSALS, refusal } from "./answer.ts";
import { type JsonObject, list, num, obj, str } from "./json.ts";
import type { Platform } from "./platform.ts";
import { fileNames, type Received } from "./request.ts";
import { checkMessage } from "./rules/message-rules.ts";
import { type Channel, channelJson, type Message, messageJson } from "./world.ts";

/** How long a nonce is remembered; the platform says "the past few minutes". */
export const NONCE_MS = 180_000;

export interface Draft {
  readonly received: Received;
  readonly body: JsonObject;
  readonly channelId: string;
  readonly onlyFor: string | null;
}

/** Turns a checked body into a stored message; `id` when it replaces one. */
export function writeMessage(platform: Platform, draft: Draft, id?: string): Message {
  const { received, body } = draft;
  const names = fileNames(received, body);
  const files = received.files.map((file, index) => {
    const stored = {
      id: platform.world.nextId(),
      name: names[index] ?? file.name,
      bytes: file.bytes,
    };
    platform.world.files.set(stored.id, stored);
    return stored;
  });
  const old = id === undefined ? undefined : platform.world.messages.get(id);
  return platform.world.store({
    id: id ?? platform.world.nextId(),
    channelId: draft.channelId,
    authorId: platform.world.bot.id,
    flags: num(body["flags"]) | (old?.flags ?? 0),
    content: str(body["content"] ?? old?.content),
    components:
      body["components"] === undefined ? (old?.components ?? []) : list(body["components"]),
    files,
    nonce: typeof body["nonce"] === "string" ? body["nonce"] : null,
    pinged: pinged(body, JSON.stringify(body["components"] ?? "") + str(body["content"])),
    onlyFor: draft.onlyFor,
  });
}

/** Who is notified: mentioned in the text and allowed. */
function pinged(body: JsonObject, text: string): readonly string[] {
  const mentioned = [...text.matchAll(/<@!?(\d{1,20})>/gu)].map((match) => match[1] ?? "");
  const allowed = obj(body["allowed_mentions"]);
  const users = list(allowed["users"]).map((u) => str(u));
  const parsesUsers = list(allowed["parse"]).includes("users");
  return [...new Set(mentioned)].filter((id) => parsesUsers || users.includes(id));
}

/** POST /users/@me/channels. Opening succeeds even when sending will fail. */
export function openDirect(platform: Platform, received: Received): HttpAnswer {
  const userId = str(obj(received.body)["recipient_id"]);
  if (!platform.world.users.has(userId)) return REFUSALS.unknownUser;
  const channel = platform.world.directChannel(userId);
  return { status: 200, body: channelJson(channel, platform.world) };
}

/** POST /channels/{id}/messages, with the nonce's promise. */
export function createMessage(
  platform: Platform,
  received: Received,
  channelId: string,
): HttpAnswer {
  const channel = platform.world.channels.get(channelId);
  const bar = whyBarred(platform, channel);
  if (bar !== null || channel === undefined) return bar ?? REFUSALS.unknownChannel;
  const body = obj(received.body);
  const violations = checkMessage({
    body,
    fileNames: fileNames(received, body),
    isAlreadyV2: false,
    mustNameMentions: true,
  });
  if (violations.length > 0) return refuseForm(platform, received, violations);
  const earlier = earlierByNonce(platform, body);
  if (earlier !== null) return earlier;
  const message = writeMessage(platform, { received, body, channelId, onlyFor: null });
  if (message.nonce !== null) {
    const untilMs = platform.world.nowMs() + NONCE_MS;
    platform.nonces.set(message.nonce, { messageId: message.id, untilMs });
  }
  return { status: 200, body: shown(platform, message, true) };
}

function earlierByNonce(platform: Platform, body: JsonObject): HttpAnswer | null {
  const nonce = body["nonce"];
  if (body["enforce_nonce"] !== true || typeof nonce !== "string") return null;
  const known = platform.nonces.get(nonce);
  if (known === undefined || known.untilMs < platform.world.nowMs()) return null;
  const message = platform.world.messages.get(known.messageId);
  return message === undefined
    ? REFUSALS.unknownMessage
    : { status: 200, body: shown(platform, message, true) };
}

function whyBarred(platform: Platform, channel: Channel | undefined): HttpAnswer | null {
  if (channel === undefined) return REFUSALS.unknownChannel;
  const code = platform.barredChannels.get(channel.id);
  if (code !== undefined) return refusal(code === 10003 ? 404 : 403, code, "barred");
  const isClosed = channel.recipientId !== null && platform.closedDirect.has(channel.recipientId);
  return isClosed ? REFUSALS.directClosed : null;
}

function shown(platform: Platform, message: Message, withNonce: boolean): JsonObject {
  const json = messageJson(message, platform.world, platform.fileBase);
  return withNonce && message.nonce !== null ? { ...json, nonce: message.nonce } : json;
}

/** GET /channels/{id}/messages: newest first. A direct channel can be read also while it is closed. */
export function readMessages(
  platform: Platform,
  received: Received,
  channelId: string,
): HttpAnswer {
  const channel = platform.world.channels.get(channelId);
  if (channel === undefined) return REFUSALS.unknownChannel;
  const code = platform.barredChannels.get(channelId);
  if (code !== undefined) return refusal(code === 10003 ? 404 : 403, code, "barred");
  const limit = Number(received.query.get("limit") ?? "50");
  if (!Number.isInteger(limit) || limit < 1 || limit > 100) {
    return badForm([{ at: "limit", code: "NUMBER_TYPE_MAX", message: "1 to 100" }]);
  }
  const all = platform.world.messagesIn(channelId);
  const before = all.findIndex(({ id }) => id === received.query.get("before"));
  const newest = all
    .slice(0, before === -1 ? all.length : before)
    .slice(-limit)
    .reverse();
  return { status: 200, body: newest.map((m) => shown(platform, m, platform.showNonces)) };
}

export function refuseForm(
  platform: Platform,
  received: Received,
  violations: ReturnType<typeof checkMessage>,
): HttpAnswer {
  const route = `${received.method} ${received.path}`;
  platform.refused.push(...violations.map((violation) => ({ ...violation, route })));
  return badForm(violations);
}
