import { PassThrough } from "node:stream";
import { Temporal } from "temporal-polyfill";
import { z } from "zod";
import { command } from "../../../commands/kit/command.ts";
import { reply, text } from "../../../commands/kit/reply.ts";
import type { ReminderRow } from "../../../shared/reminder/types.ts";
import type { Asked, Bot } from "../../../src/bot/face.ts";
import { manualClock } from "../../../src/clock.ts";
import { createTick } from "../../../src/jobs/reminder-tick.ts";
import { silentLog } from "../../../src/log.ts";
import { chatOutput, runChat } from "../../../src/terminal/chat.ts";
import { createTerminalMessenger } from "../../../src/terminal/messenger.ts";
import { createScreen } from "../../../src/terminal/screen.ts";
import { createTerminalSession, type TerminalSession } from "../../../src/terminal/session.ts";
import { FakeDeliveries, memberNamed } from "../jobs/fake-deliveries.ts";

/** Saturday 24 October 2026, 12:00 in Berlin. */
export const NOON = Temporal.Instant.from("2026-10-24T10:00:00Z");

const declared = (path: readonly [string] | readonly [string, string], kind: "text" | "file") =>
  command({
    path,
    description: "",
    who: "everyone",
    options: [{ name: "what", description: "", required: false, kind, complete: async () => [] }],
    input: z.object({}).loose(),
    handle: async () => reply(""),
  });

const commands = [
  declared(["echo"], "text"),
  declared(["read"], "file"),
  declared(["help"], "text"),
];

/** Who pressed or asked, and from where, as the bot is told. */
const by = ({ actor, groupId }: Asked): string =>
  `${actor.name}${actor.isManager ? " (coach)" : ""} in ${groupId === "" ? "a direct message" : groupId}`;

const echoBot: Bot = {
  command: async (asked, path, raw) => {
    const what = raw["what"];
    const said = typeof what === "object" ? `${what.name} ${what.bytes.length} B` : what;
    return reply(`${path.join(" ")} ${said ?? ""} by ${by(asked)}`, {
      buttons: [{ id: `echo.${said ?? "none"}`, label: `Do ${said ?? "none"}`, weight: "plain" }],
    });
  },
  press: async (asked, id, picked) => reply(`pressed ${[id, ...picked].join(" ")} by ${by(asked)}`),
  opensForm: (opening) => "pressId" in opening && opening.pressId === "echo.form",
  form: async () => ({
    id: "echo.filled",
    title: "Tell more",
    fields: [
      { name: "text", label: "Text", value: "as it was", required: true, isLong: true },
      { name: "note", label: "Note", hint: "short", value: "", required: false, isLong: false },
    ],
  }),
  submit: async (asked, id, filled) => reply(`${id} ${JSON.stringify(filled)} by ${by(asked)}`),
  complete: async (_asked, _path, _option, typed) =>
    ["Bean pot", "Bean stew", "Odd: name:x"]
      .filter((name) => name.toLowerCase().startsWith(typed.toLowerCase()))
      .map((name) => ({ label: name, value: name })),
};

export interface ChatRig {
  readonly session: TerminalSession;
  readonly deliveries: FakeDeliveries;
  readonly complete: {
    readonly bot: Bot;
    readonly commands: typeof commands;
    readonly session: TerminalSession;
  };
  shown(): string;
  /** Feeds lines as a pipe would. */
  pipe(...lines: readonly string[]): Promise<string>;
}

/** A chat over fakes on a clock that stands still; reminders name their row and offer one button. */
export function chatRig(due: readonly ReminderRow[] = []): ChatRig {
  const clock = manualClock(NOON);
  const deliveries = new FakeDeliveries(due);
  const stream = new PassThrough();
  let shown = "";
  stream.on("data", (chunk: Buffer) => {
    shown += chunk.toString("utf8");
  });
  const output = chatOutput(stream);
  const screen = createScreen(output.write);
  const ana = memberNamed("ana");
  const tick = createTick({
    deliveries,
    stores: {
      members: { find: async () => ana },
    },
    messenger: createTerminalMessenger(screen, clock),
    render: ({ rows, nonce }) =>
      reply(rows.map(({ id }) => id).join(), {
        parts: [text("Mind it.")],
        buttons: [{ id: `echo.remind~${nonce}`, label: "Done", weight: "main" }],
      }),
    replan: async () => {},
    current: async (_member, rows) => rows.map((row) => ({ row, place: null })),
    clock,
    log: silentLog,
    worker: "terminal",
    lanes: 1,
  });
  let ids = 0;
  const newId = (): string => {
    ids += 1;
    return `id${ids}`;
  };
  const zone = "Europe/Berlin";
  const session = createTerminalSession({
    bot: echoBot,
    commands,
    deliveries,
    tick,
    clock,
    screen,
    zone,
    newId,
  });
  const complete = { bot: echoBot, commands, session };
  return {
    session,
    deliveries,
    complete,
    shown: () => shown,
    async pipe(...lines) {
      const input = new PassThrough();
      input.end(lines.map((line) => `${line}\n`).join(""));
      const signal = new AbortController().signal;
      await runChat({ ...complete, input, stream, output, isTty: false, signal });
      return shown;
    },
  };
}
