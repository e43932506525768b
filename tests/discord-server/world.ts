import type { Json, JsonObject } from "./json.ts";
import { EPHEMERAL } from "./rules/message-rules.ts";
import { snowflakes } from "./snowflake.ts";

export interface User {
  readonly id: string;
  readonly username: string;
  readonly displayName: string;
}

export interface Role {
  readonly id: string;
  readonly name: string;
}

export interface Channel {
  readonly id: string;
  readonly name: string;
  /** Null for a direct channel. */
  readonly guildId: string | null;
  /** The other person of a direct channel. */
  readonly recipientId: string | null;
}

export interface Membership {
  readonly nick: string | null;
  readonly roleIds: readonly string[];
  /** Permission bits as the platform computes them for the member. */
  readonly permissions: bigint;
}

export interface Guild {
  readonly id: string;
  readonly name: string;
  readonly ownerId: string;
  readonly roles: readonly Role[];
  readonly channels: readonly Channel[];
  readonly members: Map<string, Membership>;
}

export interface StoredFile {
  readonly id: string;
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface Message {
  readonly id: string;
  readonly channelId: string;
  readonly authorId: string;
  readonly flags: number;
  readonly content: string;
  readonly components: readonly Json[];
  readonly files: readonly StoredFile[];
  readonly nonce: string | null;
  /** Users that were notified by a mention in it. */
  readonly pinged: readonly string[];
  /** Who alone can see it; null when everybody in the channel can. */
  readonly onlyFor: string | null;
}

/** Everything the loopback platform knows. Bounded: the oldest messages go when there are too many. */
export class World {
  /** The platform's own time in milliseconds, which its ids tell. */
  nowMs: () => number = Date.now;
  readonly nextId = snowflakes(() => this.nowMs());
  readonly users = new Map<string, User>();
  readonly guilds = new Map<string, Guild>();
  readonly channels = new Map<string, Channel>();
  readonly messages = new Map<string, Message>();
  readonly files = new Map<string, StoredFile>();
  readonly bot: User;
  static readonly MESSAGES_MAX = 50_000;

  constructor(applicationId: string) {
    this.bot = { id: applicationId, username: "batch-clerk", displayName: "Batch Clerk" };
    this.users.set(this.bot.id, this.bot);
  }

  addUser(username: string, displayName: string): User {
    const user = { id: this.nextId(), username, displayName };
    this.users.set(user.id, user);
    return user;
  }

  addGuild(name: string, channelNames: readonly string[], roleNames: readonly string[]): Guild {
    const id = this.nextId();
    const channels = channelNames.map((channel) => this.addChannel(channel, id, null));
    const roles = roleNames.map((role) => ({ id: this.nextId(), name: role }));
    const ownerId = this.nextId();
    const guild = { id, name, ownerId, channels, roles, members: new Map() };
    this.guilds.set(id, guild);
    return guild;
  }

  addChannel(name: string, guildId: string | null, recipientId: string | null): Channel {
    const channel = { id: this.nextId(), name, guildId, recipientId };
    this.channels.set(channel.id, channel);
    return channel;
  }

  /** The direct channel with a user: the same one each time. */
  directChannel(userId: string): Channel {
    for (const channel of this.channels.values()) {
      if (channel.recipientId === userId) return channel;
    }
    return this.addChannel("", null, userId);
  }

  store(message: Message): Message {
    this.messages.set(message.id, message);
    if (this.messages.size > World.MESSAGES_MAX) {
      for (const oldest of this.messages.keys()) {
        this.messages.delete(oldest);
        break;
      }
    }
    return message;
  }

  /** Messages of a channel that everyone in it can see, oldest first. */
  messagesIn(channelId: string): readonly Message[] {
    return [...this.messages.values()].filter(
      (m) => m.channelId === channelId && m.onlyFor === null,
    );
  }

  user(id: string): User {
    return this.users.get(id) ?? { id, username: `user-${id}`, displayName: `user-${id}` };
  }
}

export function userJson(user: User, isBot: boolean): JsonObject {
  return {
    id: user.id,
    username: user.username,
    global_name: user.displayName,
    discriminator: "0",
    avatar: null,
    bot: isBot,
  };
}

export function channelJson(channel: Channel, world: World): JsonObject {
  if (channel.guildId !== null) {
    return { id: channel.id, type: 0, name: channel.name, guild_id: channel.guildId, position: 0 };
  }
  const other = world.user(channel.recipientId ?? "");
  return { id: channel.id, type: 1, last_message_id: null, recipients: [userJson(other, false)] };
}

export function guildJson(guild: Guild, world: World): JsonObject {
  const everyone = { id: guild.id, name: "@everyone" };
  const roles = [everyone, ...guild.roles].map((role, position) => ({
    ...role,
    position,
    color: 0,
    colors: { primary_color: 0, secondary_color: null, tertiary_color: null },
    hoist: false,
    permissions: "0",
    managed: false,
    mentionable: false,
    flags: 0,
  }));
  return {
    id: guild.id,
    name: guild.name,
    owner_id: guild.ownerId,
    roles,
    channels: guild.channels.map((channel) => channelJson(channel, world)),
    members: [],
    threads: [],
    presences: [],
    voice_states: [],
    stage_instances: [],
    guild_scheduled_events: [],
    emojis: [],
    stickers: [],
    features: [],
    member_count: guild.members.size + 1,
    large: false,
    unavailable: false,
    preferred_locale: "en-US",
    joined_at: "2026-01-01T00:00:00.000Z",
  };
}

export function memberJson(user: User, membership: Membership): JsonObject {
  return {
    user: userJson(user, false),
    nick: membership.nick,
    roles: [...membership.roleIds],
    permissions: membership.permissions.toString(),
    joined_at: "2026-01-01T00:00:00.000Z",
    avatar: null,
    deaf: false,
    mute: false,
    flags: 0,
  };
}

export function messageJson(message: Message, world: World, fileBase: string): JsonObject {
  const author = world.user(message.authorId);
  return {
    id: message.id,
    type: 0,
    channel_id: message.channelId,
    author: userJson(author, author.id === world.bot.id),
    content: message.content,
    components: message.components,
    flags: message.flags | (message.onlyFor === null ? 0 : EPHEMERAL),
    attachments: message.files.map((file) => fileJson(file, fileBase)),
    mentions: message.pinged.map((id) => userJson(world.user(id), false)),
    mention_roles: [],
    mention_everyone: false,
    embeds: [],
    pinned: false,
    tts: false,
    timestamp: "2026-01-01T00:00:00.000Z",
    edited_timestamp: null,
  };
}

export function fileJson(file: StoredFile, fileBase: string): JsonObject {
  const url = `${fileBase}/${file.id}/${encodeURIComponent(file.name)}`;
  return { id: file.id, filename: file.name, size: file.bytes.length, url, proxy_url: url };
}
