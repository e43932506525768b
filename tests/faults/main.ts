import { availableParallelism } from "node:os";
import { parseArgs } from "node:util";
import { FLOCK, planFlock } from "./plan.ts";
import { playFlocks } from "./play.ts";
import { reportOf } from "./report.ts";

// npm run faults                      500 runs
// npm run faults -- --runs 100        so many
// npm run faults -- --seed 137        one of them again, with the nine that share its processes
// Ctrl-C ends it after the runs under way, with the report on what was played.

const { values } = parseArgs({
  options: { runs: { type: "string" }, seed: { type: "string" } },
});
const seed = values.seed === undefined ? null : Number(values.seed);
const runs = Number(values.runs ?? "500");
const flocks =
  seed === null
    ? Array.from({ length: Math.ceil(runs / FLOCK) }, (_, n) => n)
    : [Math.floor(seed / FLOCK)];

const write = (line: string): void => {
  process.stdout.write(`${line}\n`);
};
const stopping = new AbortController();
process.once("SIGINT", () => stopping.abort());
const played = await playFlocks(
  flocks.map((flock) => planFlock(flock)),
  Math.min(2, availableParallelism()),
  write,
  stopping.signal,
);
const { lines, isGood } = reportOf(played);
for (const line of lines) write(line);
// Said outright: the server's package ends a process that has nothing left to do with 0.
process.exit(isGood ? 0 : 1);
