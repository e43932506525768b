import PgBoss from "pg-boss";
import type { Instant } from "../../../shared/time.ts";
import type { Deliveries } from "../../../src/jobs/ports.ts";
import type { PostgresServer } from "../../src/store/postgres-server.ts";

const QUEUE = "reminders";

/** Claims all that is due, one statement for each batch; rows a second. */
export async function claimRate(
  deliveries: Deliveries,
  now: Instant,
  batch: number,
): Promise<number> {
  const lease = { worker: "bench", now, until: now, leaseUntil: now.add({ minutes: 2 }) };
  const began = performance.now();
  let claimed = 0;
  for (;;) {
    const { rows } = await deliveries.claimNext({ ...lease, limit: batch });
    if (rows.length === 0) break;
    claimed += rows.length;
  }
  return claimed / ((performance.now() - began) / 1_000);
}

/** pg-boss on the same server, in the same database. */
export interface Boss {
  /** So many more jobs that are due. */
  due(count: number): Promise<void>;
  /** Claims all that is due, which must be so many; jobs a second. */
  rate(count: number, batch: number): Promise<number>;
  stop(): Promise<void>;
}

/** A queue with so many jobs that wait. */
export async function startBoss(
  server: PostgresServer,
  url: string,
  waiting: number,
): Promise<Boss> {
  const boss = new PgBoss({ connectionString: url, supervise: false, schedule: false });
  // Told of what goes wrong behind its back; unheard, that would end this process.
  let wrong: unknown = null;
  boss.on("error", (error) => {
    wrong ??= error;
  });
  await boss.start();
  await boss.createQueue(QUEUE);
  const insert = (count: number, startsIn: string) =>
    server.ask(
      url,
      `INSERT INTO pgboss.job (name, data, start_after)
         SELECT '${QUEUE}', '{"title":"Bench pot","portions":1}',
                now() + make_interval(secs => ${startsIn})
           FROM generate_series(0, ${count - 1}) AS i`,
    );
  await insert(waiting, "3600 + i");
  await server.ask(url, "ANALYZE pgboss.job");
  return {
    due: async (count) => {
      await insert(count, "-1");
    },
    rate: async (count, batch) => {
      const began = performance.now();
      let claimed = 0;
      for (;;) {
        const jobs = await boss.fetch(QUEUE, { batchSize: batch });
        if (jobs.length === 0) break;
        claimed += jobs.length;
      }
      const rate = claimed / ((performance.now() - began) / 1_000);
      if (claimed !== count) throw new Error(`pg-boss claimed ${claimed} jobs: ${wrong}`);
      return rate;
    },
    stop: () => boss.stop({ graceful: true, wait: true }),
  };
}
