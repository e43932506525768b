import type { Instant } from "../../../shared/time.ts";
import { manualClock } from "../../../src/clock.ts";
import { createTick } from "../../../src/jobs/reminder-tick.ts";
import { silentLog } from "../../../src/log.ts";
import type { Store } from "../../../src/store/open.ts";
import { median, report, timed } from "../measure.ts";

const never = (): never => {
  throw new Error("nothing was due, and yet something was done");
};

/** A whole sweep over a table in which nothing is due, against a bare indexed query on the same table. */
export async function benchIdleSweep(
  what: string,
  store: Store,
  now: Instant,
  bare: { readonly name: string; readonly query: () => unknown },
  write: (line: string) => void,
): Promise<boolean> {
  const tick = createTick({
    deliveries: store.deliveries,
    stores: store.stores,
    messenger: { send: never },
    render: never,
    current: never,
    replan: never,
    clock: manualClock(now),
    log: silentLog,
    worker: "bench",
  });
  const sweeps = await timed(async () => {
    if ((await tick()).errors > 0) never();
  }, 200);
  const queries = await timed(bare.query, 200);
  return report(
    {
      what,
      ms: median(sweeps),
      budgetMs: 5,
      reference: { name: bare.name, ms: median(queries) },
    },
    write,
  );
}
