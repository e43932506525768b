import { once } from "node:events";
import { COMMANDS } from "../commands/index.ts";
import { systemClock } from "./clock.ts";
import { type App, compose } from "./compose.ts";
import { type Config, type DiscordSettings, secretsOf } from "./config.ts";
import { type DiscordHandle, startDiscord } from "./discord/start.ts";
import { startSchedule } from "./jobs/schedule.ts";
import { createLog, type Log } from "./log.ts";
import { createMetrics, type Metrics } from "./ops/metrics.ts";
import { opsPages } from "./ops/pages.ts";
import { startRetention } from "./ops/retention.ts";
import { startOpsServer } from "./ops/server.ts";
import { within } from "./ops/within.ts";

/** What begun sends and answers may take once the process is asked to stop; a container has 10 s in all. */
const FINISH_WITHIN_MS = 5_000;

interface Running {
  readonly config: Config;
  readonly log: Log;
  readonly app: App;
  readonly metrics: Metrics;
  /** Aborted when the process is asked to stop or the connection has ended for good. */
  readonly leaving: AbortController;
  /** Set once the login is done. */
  discord: DiscordHandle | null;
}

/**
 * Runs the bot on Discord until it is asked to stop, or cannot go on. Returns sentences for whoever
 * started it; none when all went well.
 */
export async function serveDiscord(
  config: Config,
  settings: DiscordSettings,
  stopping: AbortSignal,
): Promise<readonly string[]> {
  const log = createLog(config.logLevel, process.stderr, secretsOf(config));
  const metrics = createMetrics(COMMANDS.map(({ path }) => path.join(" ")));
  const clock = systemClock;
  const leaving = new AbortController();
  const leave = (): void => leaving.abort();
  if (stopping.aborted) leave();
  stopping.addEventListener("abort", leave, { once: true });
  const parts = { clock, log, metrics, stopping: leaving.signal };
  const app = await compose({ ...config, face: "discord", ...parts });
  if (!app.ok) return [app.problem.sentence];
  const running: Running = { config, log, app: app.value, metrics, leaving, discord: null };
  try {
    return await withOps(running, () => runDiscord(running, settings));
  } finally {
    await app.value.close();
  }
}

/** Runs the work with the pages for health and metrics beside it. */
async function withOps(
  running: Running,
  work: () => Promise<readonly string[]>,
): Promise<readonly string[]> {
  const { config, log, app, metrics, leaving } = running;
  if (config.ops === null) return work();
  const pages = opsPages({
    metrics,
    upkeep: app.upkeep,
    clock: systemClock,
    vitals: {
      askDatabase: () => app.settings.get("health"),
      isGatewayUp: () => running.discord?.isConnected() ?? false,
      sweepSilence: metrics.sweepSilence,
      isStopping: () => leaving.signal.aborted,
      upSeconds: () => process.uptime(),
    },
  });
  const server = await startOpsServer({ ...config.ops, pages });
  if (!server.ok) {
    if (config.ops.isAskedFor) return [server.problem];
    // Nobody asked for it, and another bot on this machine may have it: reminders matter more.
    log.warn({ port: config.ops.port }, "no page for health and metrics: its port is taken");
    return work();
  }
  log.info({ port: server.value.address.port }, "health and metrics can be asked for");
  try {
    return await work();
  } finally {
    await server.value.close();
  }
}

async function runDiscord(running: Running, settings: DiscordSettings): Promise<readonly string[]> {
  const { app, log, config, leaving } = running;
  const stopping = leaving.signal;
  const started = await startDiscord({ ...settings, ...app, log, stopping });
  if (!started.ok) return started.problem.code === "stopped" ? [] : [started.problem.sentence];
  const discord = started.value;
  running.discord = discord;
  const schedule = startSchedule(app.tickFor(discord.messenger), log);
  const { retainDays } = config;
  const retention = startRetention({ ...app, clock: systemClock, log, retainDays, stopping });
  const reason = await Promise.race([discord.closed, aborted(stopping)]);
  log.info({ reason }, "stopping");
  leaving.abort();
  await Promise.all([within(FINISH_WITHIN_MS, schedule.stop()), discord.stop(), retention.idle()]);
  const returned = await app.giveBack();
  log.info({ returned }, "stopped");
  return reason === null ? [] : [`The connection to Discord ended: ${reason}.`];
}

async function aborted(signal: AbortSignal): Promise<null> {
  if (!signal.aborted) await once(signal, "abort");
  return null;
}
