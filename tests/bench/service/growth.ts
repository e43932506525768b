import { join } from "node:path";
import { Temporal } from "temporal-polyfill";
import { manualClock } from "../../../src/clock.ts";
import { type App, compose } from "../../../src/compose.ts";
import { silentLog } from "../../../src/log.ts";
import { median, timed } from "../measure.ts";
import { copyGroups } from "./copies.ts";
import { type Home, prepare, TITLES } from "./load/prepare.ts";

const SIZES = [10, 100, 1_000, 10_000] as const;
const PEOPLE = 5;
const BATCHES = 2;
const RUNS = 100;
/** Fewer than there are members in the smallest file, for each has one message. */
const CLAIMS = 40;
/** What a thousand times as many groups may cost each of them. */
const GROWTH_MAX = 3;
const NOW = Temporal.Instant.from("2026-10-25T17:00:00Z");

const HOMES: readonly Home[] = Array.from({ length: 10 }, (_, g) => ({
  id: `g${g}`,
  name: `Kitchen ${g}`,
  people: Array.from({ length: PEOPLE }, (_, m) => ({ id: `u${g}-${m}`, name: `Ana ${m}` })),
}));

/** Median milliseconds, by what was timed. */
type Times = Readonly<Record<string, number>>;

/** Sweeps and commands with ten to ten thousand groups in one file; each run asks for another group. */
export async function benchGrowth(folder: string, write: (line: string) => void): Promise<boolean> {
  write(
    `growth on SQLite: groups of ${PEOPLE}, each person with ${BATCHES} batches; medians of ${RUNS}`,
  );
  const found: Times[] = [];
  for (const groups of SIZES) {
    const path = join(folder, `growth-${groups}.db`);
    await prepare(path, HOMES, BATCHES, NOW);
    copyGroups(path, groups / HOMES.length);
    const times = await timesAt(path, groups);
    found.push(times);
    const said = Object.entries(times).map(([what, ms]) => `${what} ${ms.toFixed(1)} ms`);
    write(`  ${groups} groups, ${groups * PEOPLE} members: ${said.join(", ")}`);
  }
  const [first = {}, last = {}] = [found[0], found.at(-1)];
  const ratios = Object.entries(last).map(([what, ms]) => ({
    what,
    ratio: ms / (first[what] ?? 0),
  }));
  const isGood = ratios.every(({ ratio }) => ratio <= GROWTH_MAX);
  const said = ratios.map(({ what, ratio }) => `${what} ${ratio.toFixed(1)} x`).join(", ");
  write(
    `from 10 to 10,000 groups: ${said}; budget ${GROWTH_MAX} x: ${isGood ? "ok" : "over budget"}`,
  );
  return isGood;
}

async function timesAt(path: string, groups: number): Promise<Times> {
  const clock = manualClock(NOW);
  const opened = await compose({
    face: "discord",
    databaseUrl: `file:${path}`,
    clock,
    log: silentLog,
  });
  if (!opened.ok) throw new Error(opened.problem.sentence);
  const app = opened.value;
  try {
    const tick = app.tickFor({ send: () => Promise.reject(new Error("nothing is due yet")) });
    const now = NOW.add({ hours: 24 });
    const lease = { worker: "bench", now, until: now, leaseUntil: now.add({ minutes: 2 }) };
    const claim = async () => {
      const { rows } = await app.deliveries.claimNext({ ...lease, limit: 1 });
      if (rows.length === 0) throw new Error("nobody has anything due");
    };
    return {
      "idle sweep": median(await timed(tick, RUNS)),
      "the claim of a message": median(await timed(claim, CLAIMS)),
      ...(await commandTimes(app, groups)),
    };
  } finally {
    await app.close();
  }
}

async function commandTimes({ bot }: App, groups: number): Promise<Times> {
  let turn = 0;
  const next = () => {
    turn += 1;
    // Far apart, so that what was read for one group is of no use to the next.
    const n = (turn * 7_919) % groups;
    const copy = Math.floor(n / HOMES.length);
    const before = copy === 0 ? "" : `${copy}.`;
    const groupId = `${before}g${n % HOMES.length}`;
    const userId = `${before}u${n % HOMES.length}-${turn % PEOPLE}`;
    const actor = { userId, name: `Ana ${turn % PEOPLE}`, roleIds: [], isManager: false };
    const groupName = `Kitchen ${n % HOMES.length}`;
    return { groupId, groupName, requestId: `growth-${turn}`, actor };
  };
  const recipe = TITLES[2];
  const ask = (path: string, raw: Readonly<Record<string, string>>) => async () => {
    const answer = await bot.command(next(), path.split(" "), raw);
    if (answer.heading.startsWith("Something went wrong")) throw new Error(answer.heading);
  };
  const complete = (asked: ReturnType<typeof next>) =>
    bot.complete(asked, ["recipe", "card"], "recipe", "pap", {});
  // A group's book is read when somebody first asks, and in ten groups soon everybody has.
  const first: number[] = [];
  const again: number[] = [];
  for (let run = 0; run < RUNS; run += 1) {
    const asked = next();
    first.push(...(await timed(() => complete(asked), 1, 0)));
    again.push(...(await timed(() => complete(asked), 1, 0)));
  }
  return {
    card: median(await timed(ask("recipe card", { recipe, portions: "4" }), RUNS)),
    stock: median(await timed(ask("stock", {}), RUNS)),
    log: median(await timed(ask("batch log", { recipe, portions: "5" }), RUNS)),
    completion: median(again),
    "the slowest first one of ten groups": Math.max(...first.slice(0, HOMES.length)),
  };
}
