import { setTimeout as pause } from "node:timers/promises";
import { Temporal } from "temporal-polyfill";
import { dateIn } from "../../shared/time.ts";
import type { Clock } from "../clock.ts";
import type { Upkeep } from "../jobs/ports.ts";
import type { Log } from "../log.ts";

export interface RetentionParts {
  readonly upkeep: Pick<Upkeep, "pruneReminders" | "pruneDrafts" | "pruneMealExceptions">;
  readonly settings: {
    get(key: string): Promise<string | null>;
    set(key: string, value: string): Promise<void>;
  };
  readonly clock: Clock;
  readonly log: Log;
  /** How long a finished reminder is kept, days of 24 hours. */
  readonly retainDays: number;
  readonly stopping: AbortSignal;
}

/** A draft that its coach has not touched for so long. */
const DRAFT_DAYS = 180;
/** A meal that is over so long, in every time zone, that what was said of it no longer matters. */
const MEAL_DAYS = 3;
const DAY_HOURS = 24;
const LOOK_EVERY_MS = 15 * 60_000;
/** Between two pieces, so that requests go first. */
const BREATH_MS = 20;
const LAST_TIME = "retention.last";

/**
 * Clears away what is too old, when a day has passed since that was last done, by whichever process.
 * Returns what was removed; null when it was not yet time.
 */
export async function clearAway(parts: RetentionParts): Promise<{
  readonly reminders: number;
  readonly drafts: number;
  readonly mealExceptions: number;
} | null> {
  const { upkeep, settings, clock, log, retainDays, stopping } = parts;
  const now = clock.now();
  if (!isTime(await settings.get(LAST_TIME), now)) return null;
  // Noted first: several processes on one server need not all do it.
  await settings.set(LAST_TIME, now.toString());
  const goOn = async (): Promise<boolean> => {
    await pause(BREATH_MS);
    return !stopping.aborted;
  };
  const before = (days: number) => now.subtract({ hours: days * DAY_HOURS });
  const reminders = await upkeep.pruneReminders(before(retainDays), goOn);
  const drafts = await upkeep.pruneDrafts(before(DRAFT_DAYS), goOn);
  const mealExceptions = await upkeep.pruneMealExceptions(dateIn(before(MEAL_DAYS), "UTC"), goOn);
  const removed = { reminders, drafts, mealExceptions };
  if (reminders + drafts + mealExceptions > 0) log.info(removed, "cleared away what was too old");
  return removed;
}

function isTime(last: string | null, now: Temporal.Instant): boolean {
  if (last === null) return true;
  const next = Temporal.Instant.from(last).add({ hours: DAY_HOURS });
  return Temporal.Instant.compare(next, now) <= 0;
}

/** Clears away once a day while the process runs. Stop it by the signal, then wait for `idle`. */
export function startRetention(parts: RetentionParts): { idle(): Promise<void> } {
  let running: Promise<void> = Promise.resolve();
  const look = (): void => {
    running = running.then(async () => {
      if (parts.stopping.aborted) return;
      try {
        await clearAway(parts);
      } catch (error) {
        parts.log.error({ err: error }, "clearing away what is too old met an error");
      }
    });
  };
  const timer = setInterval(look, LOOK_EVERY_MS).unref();
  parts.stopping.addEventListener("abort", () => clearInterval(timer), { once: true });
  look();
  return { idle: () => running };
}
