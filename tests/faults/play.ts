import { Pool } from "./crew.ts";
import { liveThrough, type RunEnd } from "./flock.ts";
import { openPlaces } from "./place.ts";
import type { FlockPlan } from "./plan.ts";
import type { FaultCounts } from "./weather.ts";

export interface Played {
  readonly flocks: readonly FlockPlan[];
  readonly ends: readonly RunEnd[];
  readonly counts: FaultCounts;
  readonly processes: number;
  readonly seconds: number;
}

/**
 * Plays flocks, some at a time, until all are played or it is told to stop. What goes wrong in one is told
 * at once, with its seeds.
 */
export async function playFlocks(
  flocks: readonly FlockPlan[],
  atATime: number,
  write: (line: string) => void,
  stopping?: AbortSignal,
): Promise<Played> {
  const startMs = performance.now();
  const counts: FaultCounts = new Map();
  const pool = new Pool(atATime);
  const places = await openPlaces();
  const ends: RunEnd[] = [];
  const played: FlockPlan[] = [];
  const rest = flocks.values();
  const lane = async (): Promise<void> => {
    for (const plan of rest) {
      if (stopping?.aborted === true) return;
      const ended = await liveThrough(plan, { pool, places, counts });
      ends.push(...ended);
      played.push(plan);
      for (const { seed, verdicts } of ended) {
        for (const problem of verdicts.flatMap(({ problems }) => problems)) {
          write(`VIOLATION: ${problem}. Again: npm run faults -- --seed ${seed}`);
        }
      }
    }
  };
  try {
    await Promise.all(Array.from({ length: atATime }, lane));
  } finally {
    await pool.close();
    await places.close();
  }
  const seconds = (performance.now() - startMs) / 1_000;
  return { flocks: played, ends, counts, processes: pool.started, seconds };
}
