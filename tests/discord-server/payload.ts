import { type Json, type JsonObject, list, num, obj, str } from "./json.ts";
import type { Platform } from "./platform.ts";
import {
  type Channel,
  channelJson,
  fileJson,
  type Guild,
  memberJson,
  type User,
  userJson,
} from "./world.ts";

/** The option type whose value is a member's user id. */
const USER = 6;

/** A file given for an attachment option. */
export interface GivenFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}
/** Option name -> text, yes or no, a file, or the id of a role, channel or member. */
export type GivenOptions = Readonly<Record<string, string | boolean | GivenFile>>;

/** Where an interaction happens. */
export interface Scene {
  readonly user: User;
  /** Null in a direct channel. */
  readonly guild: Guild | null;
  readonly channel: Channel;
}

/** The parts that every interaction payload has. */
export function frame(platform: Platform, scene: Scene, id: string, token: string): JsonObject {
  const { user, guild, channel } = scene;
  const who =
    guild === null
      ? { user: userJson(user, false), context: 1 }
      : {
          guild_id: guild.id,
          guild: { id: guild.id, locale: "en-US", features: [] },
          guild_locale: "en-US",
          member: memberJson(user, membership(guild, user)),
          context: 0,
        };
  return {
    id,
    application_id: platform.applicationId,
    token,
    version: 1,
    channel: channelJson(channel, platform.world),
    channel_id: channel.id,
    locale: "en-US",
    app_permissions: "274878024704",
    entitlements: [],
    authorizing_integration_owners: { "0": guild?.id ?? "0" },
    attachment_size_limit: 10_485_760,
    ...who,
  };
}

function membership(guild: Guild, user: User) {
  const found = guild.members.get(user.id);
  if (found === undefined) throw new Error(`${user.username} is not in ${guild.name}`);
  return found;
}

/** The `data` of a slash command; throws when the platform's own client would not let it be sent. */
export function commandData(
  platform: Platform,
  scope: string,
  path: readonly string[],
  given: GivenOptions,
  focused: string | null,
): JsonObject {
  const registered = platform.commands.get(scope) ?? platform.commands.get("global") ?? [];
  const command = registered.find((c) => c["name"] === path[0]);
  const leaf = path.length === 1 ? command : findOption(command, path[1] ?? "");
  if (command === undefined || leaf === undefined) throw new Error(`no command /${path.join(" ")}`);
  const declared = list(leaf["options"]).map(obj);
  if (path.length === 1 && declared.some((o) => o["type"] === 1)) {
    throw new Error(`/${path.join(" ")} has subcommands`);
  }
  const attachments: { [id: string]: JsonObject } = {};
  const users: { [id: string]: JsonObject } = {};
  const options = Object.entries(given).map(([name, value]) => {
    const option = declared.find((o) => o["name"] === name);
    if (option === undefined) throw new Error(`/${path.join(" ")} has no option ${name}`);
    const wire = optionValue(platform, option, value, attachments);
    if (option["type"] === USER) users[str(wire)] = userJson(platform.world.user(str(wire)), false);
    return {
      name,
      type: num(option["type"]),
      value: wire,
      ...(name === focused ? { focused: true } : {}),
    };
  });
  if (focused === null) checkRequired(declared, given);
  const inner: readonly Json[] =
    path.length === 1 ? options : [{ name: path[1] ?? "", type: 1, options }];
  return {
    id: "1",
    name: str(command["name"]),
    type: 1,
    options: inner,
    resolved: { attachments, users },
  };
}

function findOption(command: JsonObject | undefined, name: string): JsonObject | undefined {
  return list(command?.["options"])
    .map(obj)
    .find((o) => o["name"] === name && o["type"] === 1);
}

function checkRequired(declared: readonly JsonObject[], given: GivenOptions): void {
  for (const option of declared) {
    if (option["required"] === true && given[str(option["name"])] === undefined) {
      throw new Error(`option ${str(option["name"])} is required`);
    }
  }
}

function optionValue(
  platform: Platform,
  option: JsonObject,
  value: GivenOptions[string],
  attachments: { [id: string]: JsonObject },
): Json {
  const name = str(option["name"]);
  const type = num(option["type"]);
  if (typeof value === "object") {
    if (type !== 11) throw new Error(`option ${name} takes no file`);
    const file = { id: platform.world.nextId(), name: value.name, bytes: value.bytes };
    platform.world.files.set(file.id, file);
    attachments[file.id] = fileJson(file, platform.fileBase);
    return file.id;
  }
  if ((type === 5) !== (typeof value === "boolean")) throw new Error(`option ${name}: wrong type`);
  const choices = list(option["choices"]).map((choice) => obj(choice)["value"]);
  if (choices.length > 0 && !choices.includes(value)) {
    throw new Error(`option ${name} is a closed list without ${String(value)}`);
  }
  return value;
}
