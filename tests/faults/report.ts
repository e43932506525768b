import { cpus } from "node:os";
import type { Stage } from "./plan.ts";
import type { Played } from "./play.ts";

function inWords(ms: number): string {
  if (ms < 120_000) return `${Math.round(ms / 1_000)} s`;
  return ms < 7_200_000 ? `${Math.round(ms / 60_000)} min` : `${(ms / 3_600_000).toFixed(1)} h`;
}

function at(sorted: readonly number[], part: number): string {
  const found = sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))];
  return found === undefined ? "none" : inWords(found);
}

/** What was played and how it ended, and whether it ended well. */
export function reportOf({ flocks, ends, counts, processes, seconds }: Played): {
  readonly lines: readonly string[];
  readonly isGood: boolean;
} {
  const all = ends.flatMap(({ verdicts }) => verdicts);
  const sum = (what: "sent" | "toldLate" | "failed" | "doubled" | "lost"): number =>
    all.reduce((total, verdict) => total + verdict[what], 0);
  const problems = all.flatMap((verdict) => verdict.problems);
  const lags = all.flatMap(({ lagsMs }) => lagsMs).toSorted((a, b) => a - b);
  const on = (stage: Stage): number => flocks.filter((one) => one.stage === stage).length;
  const seeds = ends.map(({ seed }) => seed).toSorted((a, b) => a - b);
  const faults = [...counts].toSorted(([a], [b]) => (a < b ? -1 : 1));
  const reminders = sum("sent") + sum("toldLate") + sum("failed");
  return {
    isGood: problems.length === 0 && ends.length > 0,
    lines: [
      `${ends.length} runs, seeds ${seeds[0]} to ${seeds.at(-1)}, in ${flocks.length} flocks: ${on("file")} on a file, ${on("server")} on a server with 2 to 4 workers, ${on("bot")} with the whole bot.`,
      `${Math.round(seconds)} s on ${cpus().length} cores; ${processes} worker processes were started.`,
      "",
      ...faults.filter(([, n]) => n > 0).map(([name, n]) => `${String(n).padStart(6)}  ${name}`),
      "",
      `${reminders} reminders of ${all.length} members: ${sum("sent")} told in time, ${sum("toldLate")} told as too late, ${sum("failed")} reached nobody and are shown to the coach.`,
      `Doubled ${sum("doubled")}, lost ${sum("lost")}, violations ${problems.length}.`,
      `From due to recorded, outages, quiet hours and set clocks included: median ${at(lags, 0.5)}, 99 in 100 within ${at(lags, 0.99)}, worst ${at(lags, 1)}.`,
    ],
  };
}
