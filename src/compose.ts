import { randomInt } from "node:crypto";
import { COMMANDS } from "../commands/index.ts";
import type { Command } from "../commands/kit/command.ts";
import { replanMember } from "../commands/kit/plan.ts";
import type { Stores } from "../commands/kit/ports.ts";
import { currentReminders } from "../commands/reminders/current.ts";
import { reminderReply } from "../commands/reminders/message.ts";
import { type Outcome, ok } from "../shared/outcome.ts";
import { createBot } from "./bot/dispatch.ts";
import type { Bot } from "./bot/face.ts";
import { groupBooks } from "./bot/group-books.ts";
import type { Clock } from "./clock.ts";
import { loadFoodBook } from "./foods/load.ts";
import type { Deliveries, Messenger, Upkeep } from "./jobs/ports.ts";
import { createTick, type Tick } from "./jobs/reminder-tick.ts";
import type { Log } from "./log.ts";
import type { Metrics } from "./ops/metrics.ts";
import { watchBot } from "./ops/watch-bot.ts";
import { type OpenProblem, openStore, type Store } from "./store/open.ts";

export interface AppParts {
  readonly face: "discord" | "terminal";
  readonly databaseUrl: string;
  readonly clock: Clock;
  readonly log: Log;
  /** 12 characters of [0-9a-z]. By default unguessable. */
  readonly newId?: () => string;
  /** Where what happens is counted and timed. */
  readonly metrics?: Metrics;
  /** Once aborted, no further reminder is begun. */
  readonly stopping?: AbortSignal;
}

/** The bot with everything behind it, before a face is put on. */
export interface App {
  readonly bot: Bot;
  readonly commands: readonly Command[];
  readonly stores: Stores;
  readonly deliveries: Deliveries;
  readonly settings: Store["settings"];
  readonly upkeep: Upkeep;
  readonly newId: () => string;
  /** The reminder sweep, sending through this messenger. `lanes` 1 makes the order repeatable. */
  tickFor(messenger: Messenger, lanes?: number): Tick;
  /** Lets go of the reminders that this process holds: for another, or for its next start. */
  giveBack(): Promise<number>;
  close(): Promise<void>;
}

/** Joins the ports to the parts behind them; the only place that does. */
export async function compose(parts: AppParts): Promise<Outcome<App, OpenProblem>> {
  const { clock, log, face, metrics, stopping } = parts;
  const newId = parts.newId ?? unguessableId;
  const opened = await openStore(parts.databaseUrl, { newId });
  if (!opened.ok) return opened;
  const { stores, deliveries, settings, upkeep, close } = opened.value;
  const plainBot = createBot({
    face,
    commands: COMMANDS,
    stores,
    groupOf: deliveries.group,
    bookOf: groupBooks(loadFoodBook(), stores.foods),
    clock,
    newId,
    log,
    ...(metrics === undefined ? {} : { onFailure: metrics.failed }),
  });
  const worker = `${face}-${newId()}`;
  return ok({
    bot: metrics === undefined ? plainBot : watchBot(plainBot, metrics),
    commands: COMMANDS,
    stores,
    deliveries,
    settings,
    upkeep,
    newId,
    tickFor: (messenger, lanes) =>
      createTick({
        deliveries,
        stores,
        messenger,
        clock,
        log,
        worker,
        render: reminderReply,
        current: (member, rows, now) => currentReminders(stores, member, rows, now),
        replan: (member, now) => replanMember(stores, member, now),
        ...(lanes === undefined ? {} : { lanes }),
        ...(metrics === undefined ? {} : { meter: metrics.jobs }),
        ...(stopping === undefined ? {} : { stopping }),
      }),
    giveBack: () => upkeep.giveBack(worker, clock.now()),
    close,
  });
}

const ID_SIGNS = "0123456789abcdefghijklmnopqrstuvwxyz";

function unguessableId(): string {
  return Array.from({ length: 12 }, () => ID_SIGNS.charAt(randomInt(ID_SIGNS.length))).join("");
}
