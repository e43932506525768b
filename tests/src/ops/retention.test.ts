import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { messagesOf } from "../../../shared/reminder/group.ts";
import { type MovableClock, manualClock } from "../../../src/clock.ts";
import { silentLog } from "../../../src/log.ts";
import { clearAway, startRetention } from "../../../src/ops/retention.ts";
import type { Store } from "../../../src/store/open.ts";
import { claimDue } from "../store/claim-kit.ts";
import { later, NOW, remind, reminder, type World, world } from "../store/kit.ts";
import { openFile, sqlitePlace } from "../store/sqlite-place.ts";

const DAY = 24 * 60;

let place: Awaited<ReturnType<typeof sqlitePlace>>;
let store: Store;
let w: World;
let clock: MovableClock;
beforeEach(async () => {
  place = await sqlitePlace();
  store = await openFile(place.path);
  w = await world(store);
  clock = manualClock(NOW);
});
afterEach(async () => {
  await store.close();
  await place.remove();
});

const running = (stopping = new AbortController().signal) => ({
  upkeep: store.upkeep,
  settings: store.settings,
  clock,
  log: silentLog,
  retainDays: 90,
  stopping,
});

/** So many reminders that were sent so many days before now. */
async function sent(count: number, daysAgo: number): Promise<void> {
  const at = later(-daysAgo * DAY);
  const keys = Array.from({ length: count }, (_, i) => `${daysAgo}/${i}`);
  await remind(
    w,
    keys.map((key) => reminder(key, { dueAt: at, helpsUntil: at.add({ hours: 1 }) })),
  );
  const result = { state: "sent", messageId: "m", where: "channel" } as const;
  for (const { nonce, rows } of messagesOf(await claimDue(store, { due: at }))) {
    const ids = rows.map(({ id }) => id);
    await store.deliveries.settle({ nonce, ids, worker: "w", at, result });
  }
}

describe("clearing away", () => {
  it("keeps what is younger than was asked for, to the day", async () => {
    await sent(3, 91);
    await sent(4, 89);
    expect(await clearAway(running())).toEqual({ reminders: 3, drafts: 0, mealExceptions: 0 });
  });

  it("is done once a day, also across restarts and by several processes", async () => {
    expect(await clearAway(running())).toEqual({ reminders: 0, drafts: 0, mealExceptions: 0 });
    await sent(2, 91);
    clock.advanceTo(later(DAY - 1));
    expect(await clearAway(running())).toBeNull();
    await store.close();
    store = await openFile(place.path);
    expect(await clearAway(running())).toBeNull();
    clock.advanceTo(later(DAY));
    expect(await clearAway(running())).toEqual({ reminders: 2, drafts: 0, mealExceptions: 0 });
    expect(await clearAway(running())).toBeNull();
  });

  it("stops between two pieces when the process is to end", async () => {
    await sent(600, 100);
    const leaving = new AbortController();
    const upkeep: typeof store.upkeep = {
      ...store.upkeep,
      pruneReminders: (before, goOn) => {
        let pieces = 0;
        return store.upkeep.pruneReminders(before, async () => {
          pieces += 1;
          if (pieces === 2) leaving.abort();
          return goOn();
        });
      },
    };
    expect(await clearAway({ ...running(leaving.signal), upkeep })).toEqual({
      reminders: 50,
      drafts: 0,
      mealExceptions: 0,
    });
  });

  it("begins by itself when the process starts, and a fault in it is logged and not thrown", async () => {
    await sent(2, 91);
    const leaving = new AbortController();
    const healthy = startRetention(running(leaving.signal));
    await healthy.idle();
    expect(await clearAway(running())).toBeNull();
    clock.advanceTo(later(2 * DAY));
    const errors: string[] = [];
    const broken = startRetention({
      ...running(leaving.signal),
      upkeep: { ...store.upkeep, pruneReminders: async () => Promise.reject(new Error("full")) },
      log: { ...silentLog, error: (_fields, message) => errors.push(message) },
    });
    await broken.idle();
    leaving.abort();
    expect(errors).toEqual(["clearing away what is too old met an error"]);
  });
});
