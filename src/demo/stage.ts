import { Temporal } from "temporal-polyfill";
import { COMMANDS } from "../../commands/index.ts";
import { replanMember } from "../../commands/kit/plan.ts";
import type { Stores } from "../../commands/kit/ports.ts";
import type { Reply } from "../../commands/kit/reply.ts";
import { currentReminders } from "../../commands/reminders/current.ts";
import { reminderReply } from "../../commands/reminders/message.ts";
import type { Bot } from "../bot/face.ts";
import { type MovableClock, manualClock } from "../clock.ts";
import { compose } from "../compose.ts";
import type { Deliveries, Messenger } from "../jobs/ports.ts";
import { createTick } from "../jobs/reminder-tick.ts";
import { type Log, silentLog } from "../log.ts";
import { createTerminalMessenger } from "../terminal/messenger.ts";
import { createScreen, type Screen } from "../terminal/screen.ts";
import { createTerminalSession, type TerminalSession } from "../terminal/session.ts";

/** Something that can be pressed or picked, as a person saw it. */
export interface Offer {
  readonly of: string;
  readonly label: string;
  readonly pressId: string;
  readonly picked: readonly string[];
  readonly isDirect: boolean;
}

/** What was seen of reminders, to be checked at the end. */
export interface Seen {
  /** Reminder keys that fell due, as the sweep met them. */
  readonly fellDue: Set<string>;
  /** How often each was in a message that was sent. */
  readonly delivered: Map<string, number>;
}

/** The live bot's parts on a virtual clock, a fresh SQLite file and the terminal's rendering. */
export interface Stage {
  readonly stores: Stores;
  readonly close: () => Promise<void>;
  readonly clock: MovableClock;
  readonly session: TerminalSession;
  readonly bot: Bot;
  readonly screen: Screen;
  readonly offers: Offer[];
  readonly seen: Seen;
  /** Whom the next shown message is for. */
  readonly speakTo: (name: string) => void;
  readonly speakAs: (name: string, isCoach: boolean) => Promise<void>;
}

/** Ids that repeat from run to run, so that the log does. */
function countedIds(prefix: string): () => string {
  let next = 0;
  return () => {
    next += 1;
    return `${prefix}${String(next).padStart(11, "0")}`;
  };
}

/** Opens everything; `write` receives the chat log. */
export async function openStage(
  databaseUrl: string,
  start: string,
  write: (text: string) => void,
): Promise<Stage> {
  const clock = manualClock(Temporal.Instant.from(start));
  const log = loudLog(write);
  const newId = countedIds("d");
  const app = await compose({ face: "terminal", databaseUrl, clock, log, newId });
  if (!app.ok) throw new Error(app.problem.sentence);
  const { bot, stores, close } = app.value;
  const offers: Offer[] = [];
  const seen: Seen = { fellDue: new Set(), delivered: new Map() };
  let listener = "";
  let isMuted = false;
  const shown = createScreen((text) => {
    if (!isMuted) write(text);
  });
  const screen = noting(shown, (reply, isDirect) => {
    offers.unshift(...offersOf(reply, listener, isDirect));
  });
  const speakTo = (name: string): void => {
    listener = name;
  };
  const deliveries = watching(app.value.deliveries, seen);
  const tick = createTick({
    deliveries,
    stores,
    messenger: counting(createTerminalMessenger(screen, clock), speakTo),
    clock,
    log,
    worker: "demo",
    lanes: 1,
    replan: (member, now) => replanMember(stores, member, now),
    current: (member, rows, now) => currentReminders(stores, member, rows, now),
    render: (input) => {
      for (const row of input.rows)
        seen.delivered.set(row.key, (seen.delivered.get(row.key) ?? 0) + 1);
      return reminderReply(input);
    },
  });
  const session = createTerminalSession({
    bot,
    commands: COMMANDS,
    deliveries,
    tick,
    clock,
    screen,
    zone: "Europe/Lisbon",
    newId,
    group: { id: "demo", name: "Sunday Pots" },
  });
  return {
    stores,
    close,
    clock,
    session,
    bot,
    screen,
    offers,
    seen,
    speakTo,
    async speakAs(name, isCoach) {
      isMuted = true;
      await session.say(`as ${name}${isCoach ? " coach" : ""}`);
      isMuted = false;
      listener = name;
    },
  };
}

function noting(screen: Screen, note: (reply: Reply, isDirect: boolean) => void): Screen {
  return {
    ...screen,
    show(reply, where) {
      note(reply, where.isDirect);
      screen.show(reply, where);
    },
  };
}

function offersOf(reply: Reply, of: string, isDirect: boolean): readonly Offer[] {
  const buttons = reply.buttons.map((one) => ({
    of,
    label: one.label,
    pressId: one.id,
    picked: [],
    isDirect,
  }));
  const entries = reply.choices.flatMap((choice) =>
    choice.options.map((one) => ({
      of,
      label: one.label,
      pressId: choice.id,
      picked: [one.value],
      isDirect,
    })),
  );
  return [...buttons, ...entries];
}

function counting(messenger: Messenger, speakTo: (name: string) => void): Messenger {
  return {
    send(message) {
      speakTo(message.to.name);
      return messenger.send(message);
    },
  };
}

function watching(deliveries: Deliveries, seen: Seen): Deliveries {
  return {
    ...deliveries,
    async claimNext(claim) {
      const next = await deliveries.claimNext(claim);
      for (const row of next.rows) seen.fellDue.add(row.key);
      return next;
    },
  };
}

/** A bug must not pass as a good demo: whatever is logged as wrong is shown and fails the run. */
function loudLog(write: (text: string) => void): Log {
  const shout = (fields: object, message: string): void => {
    const error = "err" in fields && fields.err instanceof Error ? fields.err : null;
    write(`!! ${message}${error === null ? "" : `: ${error.stack ?? error.message}`}\n`);
    process.exitCode = 1;
  };
  return { ...silentLog, fatal: shout, error: shout, warn: shout };
}
