import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { freePort } from "../../src/end-to-end/child.ts";
import { get } from "../../src/ops/get.ts";
import { percentile } from "../measure.ts";
import { prepare, TITLES } from "./load/prepare.ts";
import { type LoadAsked, type LoadTold, loadTold, type WorldTold } from "./load/talk.ts";
import { startPlatform } from "./played.ts";

const GROUPS = 30;
const PEOPLE_EACH = 20;
const PER_SECOND = 200;
const SECONDS = 60;
/** When memory is looked at first: by then all code has run and the books of all groups are read. */
const SETTLED_S = 10;
const P99_MS = 500;
const MOST_MS = 3_000;
/** What "flat" means: by how much memory may have grown over the last fifty seconds. */
const GROWTH_MAX = 1.25;

function startBot(world: WorldTold, path: string, port: number): ChildProcess {
  return spawn(process.execPath, ["--import", "tsx", "src/main.ts"], {
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

/** What the bot says of itself: memory held, megabytes, and processor time used, seconds. */
async function vitals(port: number): Promise<{ readonly rssMb: number; readonly cpuS: number }> {
  const { body } = await get(port, "/metrics");
  const of = (name: string) =>
    Number(new RegExp(`^${name} (?<value>\\S+)$`, "mu").exec(body)?.groups?.["value"]);
  return {
    rssMb: of("process_resident_memory_bytes") / 1e6,
    cpuS: of("process_cpu_seconds_total"),
  };
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
    const early = await vitals(port);
    await pause((SECONDS - SETTLED_S - 1) * 1_000);
    const late = await vitals(port);
    const [told] = await done;
    const cpu = (late.cpuS - early.cpuS) / (SECONDS - SETTLED_S - 1);
    return judge(loadTold.parse(told), { early: early.rssMb, late: late.rssMb, cpu }, write);
  } finally {
    bot.kill("SIGTERM");
    await once(bot, "exit");
    child.kill();
  }
}

function judge(
  told: LoadTold,
  bot: { readonly early: number; readonly late: number; readonly cpu: number },
  write: (line: string) => void,
): boolean {
  const all = Object.values(told.firstMs).flat();
  const sent = Object.values(told.sent).reduce((sum, n) => sum + n, 0);
  write(
    `${PER_SECOND} interactions a second for ${SECONDS} s, ${GROUPS} groups of ${PEOPLE_EACH}: ${sent} sent, ${all.length} answered, ${told.deferred} of them "thinking" first, ${told.lost} not within 3 s`,
  );
  for (const [what, times] of Object.entries(told.firstMs)) {
    write(
      `  ${what}: ${times.length}, first answer median ${percentile(times, 0.5).toFixed(0)} ms, 99th percentile ${percentile(times, 0.99).toFixed(0)} ms, most ${percentile(times, 1).toFixed(0)} ms`,
    );
  }
  write(
    `  the bot used ${(bot.cpu * 100).toFixed(0)} % of one core, the platform's process ${(told.serverCpu * 100).toFixed(0)} %`,
  );
  const p99 = percentile(all, 0.99);
  const most = percentile(all, 1);
  const fast = p99 < P99_MS && most <= MOST_MS && told.lost === 0;
  write(
    `first answer, all: 99th percentile ${p99.toFixed(0)} ms, budget ${P99_MS} ms; most ${most.toFixed(0)} ms, budget ${MOST_MS} ms: ${fast ? "ok" : "over budget"}`,
  );
  const growth = bot.late / bot.early;
  const flat = growth <= GROWTH_MAX;
  write(
    `memory: ${bot.early.toFixed(0)} MB after ${SETTLED_S} s, ${bot.late.toFixed(0)} MB at the end, ${growth.toFixed(2)} x, budget ${GROWTH_MAX} x: ${flat ? "ok" : "over budget"}`,
  );
  for (const refusal of told.refused.slice(0, 5)) write(`  refused by the platform: ${refusal}`);
  return fast && flat && told.refused.length === 0;
}
