import { setImmediate } from "node:timers/promises";

/** Longest stretch of statements before timers and the network have their turn, milliseconds. */
const STRETCH_MS = 5;

/**
 * Gives way now and then. The SQLite driver answers at once, and so does whoever waits for it: however
 * many requests are under way, all of them would run to their end before a single answer is sent or a
 * timer fires.
 */
export function breather(stretchMs: number = STRETCH_MS): () => Promise<void> {
  let sinceMs = performance.now();
  return async () => {
    if (performance.now() - sinceMs < stretchMs) return;
    await setImmediate();
    sinceMs = performance.now();
  };
}
