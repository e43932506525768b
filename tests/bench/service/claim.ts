import PgBoss from "pg-boss";
import { groupDue } from "../../../shared/reminder/group.ts";
import type { Instant } from "../../../shared/time.ts";
import type { Deliveries } from "../../../src/jobs/ports.ts";
import type { PostgresServer } from "../../src/store/postgres-server.ts";

const QUEUE = "reminders";
const PAGE = 200;

/** Claims all that is due, a page in one statement; rows a second. */
export async function claimRate(deliveries: Deliveries, now: Instant): Promise<number> {
  const began = performance.now();
  let claimed = 0;
  for (;;) {
    const due = await deliveries.due(now, now, PAGE);
    if (due.length === 0) break;
    const fresh = groupDue(due).map(({ nonce, rows }) => ({
      nonce,
      ids: rows.map(({ id }) => id),
    }));
    const leaseUntil = now.add({ minutes: 2 });
    const held = await deliveries.claimNew({ fresh, worker: "bench", now, leaseUntil });
    claimed += held.rows.length;
  }
  return claimed / ((performance.now() - began) / 1_000);
}

/** The same by pg-boss, from as large a queue in the same database: batches of as many. */
export async function bossRate(
  server: PostgresServer,
  url: string,
  fill: { readonly waiting: number; readonly due: number },
): Promise<number> {
  const boss = new PgBoss({ connectionString: url, supervise: false, schedule: false });
  // Told of what goes wrong behind its back; unheard, that would end this process.
  let wrong: unknown = null;
  boss.on("error", (error) => {
    wrong ??= error;
  });
  await boss.start();
  try {
    await boss.createQueue(QUEUE);
    await server.ask(
      url,
      `INSERT INTO pgboss.job (name, data, start_after)
         SELECT '${QUEUE}', '{"title":"Bench pot","portions":1}',
                now() + make_interval(secs => CASE WHEN i < ${fill.due} THEN -1 ELSE 3600 + i END)
           FROM generate_series(0, ${fill.waiting - 1}) AS i;
       ANALYZE pgboss.job`,
    );
    const began = performance.now();
    let claimed = 0;
    for (;;) {
      const jobs = await boss.fetch(QUEUE, { batchSize: PAGE });
      if (jobs.length === 0) break;
      claimed += jobs.length;
    }
    const rate = claimed / ((performance.now() - began) / 1_000);
    if (claimed !== fill.due) throw new Error(`pg-boss claimed ${claimed} jobs: ${wrong}`);
    return rate;
  } finally {
    await boss.stop({ graceful: true, wait: true });
  }
}
