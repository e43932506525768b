import type { Command, Option, RawInput, Suggestion } from "../../../commands/kit/command.ts";
import type { FilledForm, Form } from "../../../commands/kit/form.ts";
import { type Reply, reply } from "../../../commands/kit/reply.ts";
import type { Asked, Bot, Opening } from "../../../src/bot/face.ts";
import { type DiscordHandle, type DiscordParts, startDiscord } from "../../../src/discord/start.ts";
import type { DiscordServer } from "../../discord-server/server.ts";
import { startDiscordServer } from "../../discord-server/server.ts";
import type { Guild, User } from "../../discord-server/world.ts";

/** A bot that says what a test wants it to say and notes what it was asked. */
export class ScriptedBot implements Bot {
  readonly asked: { asked: Asked; what: string; raw: RawInput; picked: readonly string[] }[] = [];
  answer: (what: string) => Reply | Promise<Reply> = (what) => reply(`Answer to ${what}`);
  suggestions: (typed: string) => readonly Suggestion[] | Promise<readonly Suggestion[]> = () => [];

  async command(asked: Asked, path: readonly string[], raw: RawInput): Promise<Reply> {
    this.asked.push({ asked, what: path.join(" "), raw, picked: [] });
    return this.answer(path.join(" "));
  }

  async press(asked: Asked, pressId: string, picked: readonly string[]): Promise<Reply> {
    this.asked.push({ asked, what: pressId, raw: {}, picked });
    return this.answer(pressId);
  }

  scriptedForm: Form | null = null;
  readonly filled: FilledForm[] = [];

  opensForm(opening: Opening): boolean {
    const what = "pressId" in opening ? opening.pressId : opening.path.join(" ");
    return this.scriptedForm !== null && what.startsWith("recipe publish");
  }

  async form(): Promise<Form | Reply> {
    return this.scriptedForm ?? reply("no form");
  }

  async submit(asked: Asked, formId: string, filled: FilledForm): Promise<Reply> {
    this.asked.push({ asked, what: formId, raw: {}, picked: [] });
    this.filled.push(filled);
    return this.answer(formId);
  }

  async complete(_asked: Asked, _path: readonly string[], _option: string, typed: string) {
    return this.suggestions(typed);
  }
}

function option(name: string, more: Partial<Option> = {}): Option {
  return { name, description: `The ${name}`, required: false, kind: "text", ...more };
}

function declare(path: Command["path"], options: readonly Option[]): Command {
  const never = () => Promise.reject(new Error("only the bot runs commands"));
  const description = `Does ${path.join(" ")}`;
  return { path, description, who: "everyone", options, run: never, ...NOTHING_ELSE };
}

const NOTHING_ELSE = { actions: {}, forms: {}, submissions: {}, opens: () => null };

export const COMMANDS: readonly Command[] = [
  declare(["stock"], []),
  declare(
    ["recipe", "card"],
    [
      option("units", { choices: ["metric", "us"] }),
      option("recipe", { required: true, complete: async () => [] }),
    ],
  ),
  declare(["recipe", "publish"], [option("file", { kind: "file", required: true })]),
  declare(
    ["group", "setup"],
    [
      option("coach", { kind: "role" }),
      option("channel", { kind: "channel" }),
      option("quiet", { kind: "yes-no" }),
    ],
  ),
];

export interface LogLine {
  readonly level: "info" | "warn" | "error";
  readonly fields: object;
  readonly message: string;
}

export interface Rig {
  readonly server: DiscordServer;
  readonly guild: Guild;
  readonly mika: User;
  readonly ruben: User;
  readonly bot: ScriptedBot;
  readonly log: LogLine[];
  readonly parts: DiscordParts;
  readonly handle: DiscordHandle;
  close(): Promise<void>;
}

/** The parts of an adapter that talks to the loopback server. */
export function partsFor(server: DiscordServer, bot: Bot, log: LogLine[] = []): DiscordParts {
  const kept = new Map<string, string>();
  const write = (level: LogLine["level"]) => (fields: object, message: string) => {
    log.push({ level, fields, message });
  };
  return {
    token: server.platform.token,
    applicationId: server.platform.applicationId,
    bot,
    commands: COMMANDS,
    settings: {
      get: async (key) => kept.get(key) ?? null,
      set: async (key, value) => {
        kept.set(key, value);
      },
    },
    log: { info: write("info"), warn: write("warn"), error: write("error") },
    apiBase: server.apiBase,
    attachmentOrigins: [server.fileOrigin],
  };
}

/** A loopback platform with one server and two members, and the adapter logged in to it. */
export async function startRig(): Promise<Rig> {
  const server = await startDiscordServer();
  const guild = server.guild("Sunday Prep", ["kitchen", "reminders"], ["coach"]);
  const mika = server.join(guild, "mika", { nick: "Mika of the Pots" });
  const ruben = server.join(guild, "ruben", { roles: ["coach"], manages: true });
  const bot = new ScriptedBot();
  const log: LogLine[] = [];
  const parts = partsFor(server, bot, log);
  const started = await startDiscord(parts);
  if (!started.ok) throw new Error(started.problem.sentence);
  const handle = started.value;
  const close = async () => {
    await handle.stop();
    await server.close();
  };
  return { server, guild, mika, ruben, bot, log, parts, handle, close };
}

/** A promise and the function that settles it. */
export function gate<T = void>(): { readonly promise: Promise<T>; open: (value: T) => void } {
  let open: (value: T) => void = () => undefined;
  const promise = new Promise<T>((resolve) => {
    open = resolve;
  });
  return { promise, open: (value) => open(value) };
}
