import { setTimeout as pause } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { type Child, runBot } from "../src/end-to-end/child.ts";
import type { Processes, Stand } from "./flock.ts";
import { dice } from "./random.ts";
import { countIn } from "./weather.ts";

const SHIM = fileURLToPath(new URL("./clock-shim.ts", import.meta.url));
const SWEEP_MAX_MS = 15_000;

/**
 * The whole bot, started anew for each sweep (it sweeps when it starts), and killed or asked to stop when
 * it has nothing left to do.
 */
export function botProcesses({ plan, place, server, aheadMs, counts }: Stand): Processes {
  const path = place.url.slice("file:".length);
  const die = dice("bot", plan.number);
  let bot: Child | null = null;

  const nowMs = (): number => Date.now() + aheadMs();
  /** Nothing is due, and nothing is being sent. */
  const isIdle = async (): Promise<boolean> => {
    const rows = await place.rows();
    return rows.every(
      ({ state, claimedBy, dueMs }) =>
        (state !== "scheduled" || dueMs > nowMs()) && (state !== "claimed" || claimedBy === null),
    );
  };

  return {
    sweep: async () => {
      const started = runBot(server, path, {
        FAULTS_AHEAD_MS: String(aheadMs()),
        NODE_OPTIONS: `--import tsx --import ${SHIM}`,
      });
      bot = started;
      let hasEnded = false;
      void started.ended.then(() => {
        hasEnded = true;
      });
      const connected = server.gateway.connected;
      const endMs = performance.now() + SWEEP_MAX_MS;
      while (!hasEnded && performance.now() < endMs && server.gateway.connected <= connected) {
        await pause(50);
      }
      do await pause(100);
      while (!hasEnded && performance.now() < endMs && !(await isIdle()));
      bot = null;
      if (hasEnded) return;
      const inOrder = die.chance(0.5);
      countIn(counts, inOrder ? "asked to stop (SIGTERM)" : "kill -9, when idle");
      started.child.kill(inOrder ? "SIGTERM" : "SIGKILL");
      await started.ended;
    },
    // Each sweep is a new process, which is told the time when it starts.
    setAhead: () => undefined,
    kill: () => {
      bot?.child.kill("SIGKILL");
    },
    nextDue: async () => {
      const waiting = (await place.rows()).flatMap(({ state, dueMs, leaseMs }) => {
        if (state === "scheduled") return [dueMs];
        return state === "claimed" ? [leaseMs ?? dueMs] : [];
      });
      return waiting.length === 0 ? null : Math.min(...waiting);
    },
    close: async () => undefined,
  };
}
