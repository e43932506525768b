import type { Readable, Writable } from "node:stream";
import type { Command } from "../../commands/kit/command.ts";
import type { Stores } from "../../commands/kit/ports.ts";
import { groupId } from "../../shared/ids.ts";
import type { Bot } from "../bot/face.ts";
import type { MovableClock } from "../clock.ts";
import type { Deliveries, Messenger } from "../jobs/ports.ts";
import type { Tick } from "../jobs/reminder-tick.ts";
import { startSchedule } from "../jobs/schedule.ts";
import type { Log } from "../log.ts";
import { chatOutput, runChat } from "./chat.ts";
import { keepFilesIn } from "./keep-file.ts";
import { createTerminalMessenger } from "./messenger.ts";
import { createScreen } from "./screen.ts";
import { createTerminalSession, TERMINAL_GROUP } from "./session.ts";

export interface TerminalParts {
  readonly bot: Bot;
  readonly commands: readonly Command[];
  readonly stores: Pick<Stores, "groups">;
  readonly deliveries: Pick<Deliveries, "nextDue">;
  readonly tickFor: (messenger: Messenger, lanes?: number) => Tick;
  readonly clock: MovableClock;
  readonly newId: () => string;
  readonly log: Log;
  readonly input: Readable;
  readonly stream: Writable;
  readonly isTty: boolean;
  /** The machine's zone. */
  readonly zone: string;
  /** Where files to keep are written. */
  readonly filesFolder: string;
  readonly signal: AbortSignal;
}

/** What a new group has until somebody says otherwise. */
const DEFAULT_ZONES = ["Etc/UTC", "UTC"];

/** Opens the chat and runs it to its end. */
export async function runTerminal(parts: TerminalParts): Promise<void> {
  const { clock, log, zone, stream, isTty } = parts;
  await takeZone(parts.stores, zone);
  const output = chatOutput(stream);
  const screen = createScreen(output.write, keepFilesIn(parts.filesFolder));
  const tick = parts.tickFor(createTerminalMessenger(screen, clock), 1);
  const session = createTerminalSession({ ...parts, tick, screen });
  if (isTty) screen.line("Batch Clerk. Type /help, or / and Tab. quit ends.");
  // What fell due since the last chat comes first; then, while a person types, every minute.
  await tick();
  const schedule = isTty ? startSchedule(tick, log) : null;
  try {
    await runChat({ ...parts, session, output });
  } finally {
    await schedule?.stop();
  }
}

/** The group lives by the machine's clock, unless its coach has set a zone. */
async function takeZone({ groups }: Pick<Stores, "groups">, zone: string): Promise<void> {
  const group = await groups.open(groupId(TERMINAL_GROUP.id), TERMINAL_GROUP.name);
  if (DEFAULT_ZONES.includes(group.zone) && group.zone !== zone) {
    await groups.set(group.id, { zone });
  }
}
