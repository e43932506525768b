import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { freePort } from "../../src/end-to-end/child.ts";
import { get, samples } from "../../src/ops/get.ts";
import { percentile } from "../measure.ts";
import { prepare, TITLES } from "./load/prepare.ts";
import { type LoadAsked, type LoadTold, loadTold, type WorldTold } from "./load/talk.ts";
import { startPlatform } from "./played.ts";

const GROUPS = 30;
const PEOPLE_EACH = 20;
const PER_SECOND = 200;
const SECONDS = 60;
/** From when on memory is looked at: by then all code has run and the books of all groups are read. */
const SETTLED_S = 10;
/** The first and the last seconds that are compared: within some, garbage comes and goes. */
const WINDOW_S = 10;
const P99_MS = 500;
const MOST_MS = 3_000;
/** What "flat" means: by how much memory may have grown from the first of these windows to the last. */
const GROWTH_MAX = 1.25;

function startBot(world: WorldTold, path: string, port: number): ChildProcess {
  return spawn(process.execPath, [...process.execArgv, "src/main.ts"], {
    env: {
      ...process.env,
      DISCORD_TOKEN: world.token,
      DISCORD_APPLICATION_ID: world.applicationId,
      DISCORD_API_BASE: world.apiBase,
      DISCORD_SHARDS: "",
      DATABASE_URL: `file:${path}`,
      LOG_LEVEL: "fatal",
      OPS_PORT: String(port),
    },
    stdio: ["ignore", "ignore", "inherit"],
  });
}

async function untilReady(port: number): Promise<void> {
  for (let tries = 0; tries < 300; tries += 1) {
    const page = await get(port, "/readyz").catch(() => null);
    if (page?.status === 200) return;
    await pause(100);
  }
  throw new Error("the bot did not get ready");
}

/** What the bot says of itself: memory held and heap used, megabytes, and processor time used, seconds. */
interface Vitals {
  readonly rssMb: number;
  readonly heapMb: number;
  readonly cpuS: number;
}

async function vitals(port: number): Promise<Vitals> {
  const { body } = await get(port, "/metrics");
  const of = (name: string) => samples(body).get(name) ?? Number.NaN;
  return {
    rssMb: of("process_resident_memory_bytes") / 1e6,
    heapMb: of("nodejs_heap_size_used_bytes") / 1e6,
    cpuS: of("process_cpu_seconds_total"),
  };
}

/** Looks once a second. */
async function watch(port: number, seconds: number): Promise<readonly Vitals[]> {
  const seen: Vitals[] = [];
  for (let n = 0; n < seconds; n += 1) {
    seen.push(await vitals(port));
    await pause(1_000);
  }
  return seen;
}

/** The bot itself under 200 mixed interactions a second for a minute, over the loopback platform. */
export async function benchLoad(folder: string, write: (line: string) => void): Promise<boolean> {
  const path = join(folder, "load.db");
  const { child, world } = await startPlatform(GROUPS, PEOPLE_EACH);
  await prepare(path, world.guilds, 1);
  const port = await freePort();
  const bot = startBot(world, path, port);
  try {
    await untilReady(port);
    const asked: LoadAsked = {
      kind: "load",
      perSecond: PER_SECOND,
      seconds: SECONDS,
      recipes: [...TITLES],
    };
    child.send(asked);
    const done = once(child, "message");
    await pause(SETTLED_S * 1_000);
    // Looking takes its time as well, so that the last look falls into the load.
    const seen = await watch(port, SECONDS - SETTLED_S - 3);
    const [told] = await done;
    const isFast = judgeTimes(loadTold.parse(told), write);
    return judgeMemory(seen, write) && isFast;
  } finally {
    bot.kill("SIGTERM");
    await once(bot, "exit");
    child.kill();
  }
}

function judgeTimes(told: LoadTold, write: (line: string) => void): boolean {
  const all = Object.values(told.firstMs).flat();
  const sent = Object.values(told.sent).reduce((sum, n) => sum + n, 0);
  write(
    `${PER_SECOND} interactions a second for ${SECONDS} s, ${GROUPS} groups of ${PEOPLE_EACH}: ${sent} sent, ${all.length} answered, ${told.deferred} of them "thinking" first, ${told.lost} not within 3 s; the platform's process used ${(told.serverCpu * 100).toFixed(0)} % of one core`,
  );
  for (const [what, times] of Object.entries(told.firstMs)) {
    write(
      `  ${what}: ${times.length}, first answer median ${percentile(times, 0.5).toFixed(0)} ms, 99th percentile ${percentile(times, 0.99).toFixed(0)} ms, most ${percentile(times, 1).toFixed(0)} ms`,
    );
  }
  for (const refusal of told.refused.slice(0, 5)) write(`  refused by the platform: ${refusal}`);
  const p99 = percentile(all, 0.99);
  const most = percentile(all, 1);
  const isAnswered = told.lost === 0 && told.refused.length === 0 && all.length === sent;
  const isGood = p99 < P99_MS && most <= MOST_MS && isAnswered;
  write(
    `first answer, all: 99th percentile ${p99.toFixed(0)} ms, budget ${P99_MS} ms; most ${most.toFixed(0)} ms, budget ${MOST_MS} ms: ${isGood ? "ok" : "over budget"}`,
  );
  return isGood;
}

function judgeMemory(seen: readonly Vitals[], write: (line: string) => void): boolean {
  const [first, last] = [seen.slice(0, WINDOW_S), seen.slice(-WINDOW_S)];
  const mean = (list: readonly Vitals[]) =>
    list.reduce((sum, { rssMb }) => sum + rssMb, 0) / list.length;
  const floor = (list: readonly Vitals[]) => Math.min(...list.map(({ heapMb }) => heapMb));
  const growth = mean(last) / mean(first);
  const isFlat = growth <= GROWTH_MAX;
  const cpu = ((last.at(-1)?.cpuS ?? 0) - (first[0]?.cpuS ?? 0)) / seen.length;
  write(`  the bot used ${(cpu * 100).toFixed(0)} % of one core`);
  write(
    `memory of the bot, mean from ${SETTLED_S} to ${SETTLED_S + WINDOW_S} s ${mean(first).toFixed(0)} MB, of the last ${WINDOW_S} s ${mean(last).toFixed(0)} MB, ${growth.toFixed(2)} x, budget ${GROWTH_MAX} x; least heap used in each ${floor(first).toFixed(0)} and ${floor(last).toFixed(0)} MB: ${isFlat ? "ok" : "over budget"}`,
  );
  return isFlat;
}
