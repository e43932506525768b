import { Broken, Dead, type Worker } from "./crew.ts";
import type { Processes, Stand } from "./flock.ts";
import { dice } from "./random.ts";
import { countIn } from "./weather.ts";

/** Clocks of several machines differ by so much at most, milliseconds. */
const SKEW_MS = 20_000;

/** One sweep on a file, or several on one server; each a process of its own. */
export function sweepProcesses(stand: Stand): Processes {
  const { plan, place, server, pool, counts, aheadMs } = stand;
  const skews = Array.from({ length: plan.workers }, (_, n) =>
    n === 0 ? 0 : dice("skew", plan.number, n).int(-SKEW_MS, SKEW_MS),
  );
  const workers: (Worker | null)[] = skews.map(() => null);
  let kills: Promise<unknown>[] = [];

  const open = async (n: number): Promise<Worker> => {
    const known = workers[n];
    // One that was killed when it had just ended its sweep is replaced like any other.
    if (known !== null && known !== undefined && !known.isDead) return known;
    const worker = await pool.take();
    try {
      await begin(worker, n);
    } catch (error) {
      if (!(error instanceof Broken)) throw error;
      // Its database went away while it started: it ends, and whoever runs it starts it anew.
      countIn(counts, "start that failed");
      await worker.kill();
      throw new Dead();
    }
    workers[n] = worker;
    return worker;
  };

  const begin = async (worker: Worker, n: number): Promise<void> => {
    const { token, applicationId } = server.platform;
    await worker.ask(
      {
        do: "open",
        databaseUrl: place.url,
        apiBase: server.apiBase,
        token,
        applicationId,
        aheadMs: aheadMs() + (skews[n] ?? 0),
      },
      "open",
    );
  };

  const sweepOf = async (n: number): Promise<void> => {
    try {
      await (await open(n)).ask({ do: "sweep" }, "swept");
    } catch (error) {
      if (!(error instanceof Dead)) throw error;
      workers[n] = null;
    }
  };

  return {
    sweep: async () => {
      await Promise.all(skews.map((_, n) => sweepOf(n)));
      await Promise.all(kills);
      kills = [];
    },
    setAhead: (ms) => {
      for (const [n, worker] of workers.entries()) {
        worker?.tell({ do: "clock", aheadMs: ms + (skews[n] ?? 0) });
      }
    },
    kill: () => {
      const alive = workers.find((worker) => worker !== null && !worker.isDead);
      if (alive !== undefined && alive !== null) kills.push(alive.kill());
    },
    nextDue: async () => (await (await open(0)).ask({ do: "next" }, "next")).atMs,
    close: async () => {
      for (const worker of workers) {
        if (worker === null || worker.isDead) continue;
        await worker.ask({ do: "close" }, "closed");
        pool.giveBack(worker);
      }
    },
  };
}
