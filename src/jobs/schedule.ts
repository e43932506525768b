import { schedule } from "node-cron";
import type { Log } from "../log.ts";
import type { Tick } from "./reminder-tick.ts";

export interface Schedule {
  /** No new sweep begins; resolves when the running one has ended. */
  stop(): Promise<void>;
}

/**
 * Looks for due reminders at once and then every minute. The timer only asks; what is due is decided
 * by the rows, so a minute that is missed is made up for by the next.
 */
export function startSchedule(tick: Tick, log: Log): Schedule {
  let running: Promise<unknown> = Promise.resolve();
  const sweep = (): Promise<unknown> => {
    running = tick().then((report) => {
      if (Object.values(report).some((n) => n > 0)) log.info({ ...report }, "reminder sweep");
    });
    return running;
  };
  const task = schedule("* * * * *", sweep, {
    name: "reminders",
    noOverlap: true,
    // Its own logger writes to standard output, which is the chat.
    logger: {
      info: (message) => log.debug({}, message),
      debug: (message) => log.debug({}, String(message)),
      warn: (message) => log.warn({}, message),
      error: (message) => log.error({ err: message }, "the timer met an error"),
    },
  });
  void sweep();
  return {
    async stop() {
      await task.destroy();
      await running;
    },
  };
}
