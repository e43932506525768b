import { once } from "node:events";
import { movableClock, systemClock } from "./clock.ts";
import { type App, compose } from "./compose.ts";
import { type Config, type DiscordSettings, readConfig, withEnvFile } from "./config.ts";
import { startSchedule } from "./jobs/schedule.ts";
import { createLog, type Log } from "./log.ts";
import { runTerminal } from "./terminal/start.ts";

/** How long an orderly end may take before the process is ended anyway. */
const STOP_WITHIN_MS = 10_000;

process.exitCode = await main();
setTimeout(() => process.exit(), STOP_WITHIN_MS).unref();

async function main(): Promise<number> {
  const config = readConfig(withEnvFile(process.env));
  if (!config.ok) return giveUp(...config.problem);
  try {
    return config.value.discord === null
      ? await serveTerminal(config.value)
      : await serveDiscord(config.value, config.value.discord);
  } catch (error) {
    createLog(config.value.logLevel).fatal({ err: error }, "the process ends on an error");
    return giveUp("Batch Clerk had to stop because of an error on its side; the log has the rest.");
  }
}

async function serveDiscord(config: Config, settings: DiscordSettings): Promise<number> {
  const log = createLog(config.logLevel);
  const signal = stopSignal();
  const app = await compose({ ...config, face: "discord", clock: systemClock, log });
  if (!app.ok) return giveUp(app.problem.sentence);
  try {
    return await runDiscord(app.value, settings, log, signal);
  } finally {
    await app.value.close();
  }
}

async function runDiscord(
  app: App,
  settings: DiscordSettings,
  log: Log,
  signal: AbortSignal,
): Promise<number> {
  // Loaded only here: the terminal chat starts faster without it.
  const { startDiscord } = await import("./discord/start.ts");
  const discord = await startDiscord({ ...settings, ...app, log });
  if (!discord.ok) return giveUp(discord.problem.sentence);
  const { messenger, closed, stop } = discord.value;
  const schedule = startSchedule(app.tickFor(messenger), log);
  const reason = await Promise.race([closed, aborted(signal)]);
  log.info({ reason }, "stopping");
  // First the sweep, which needs the connection to finish what it has claimed.
  await schedule.stop();
  await stop();
  return reason === null ? 0 : giveUp(`The connection to Discord ended: ${reason}.`);
}

async function serveTerminal(config: Config): Promise<number> {
  // In a chat only what needs attention is worth a line of log; LOG_LEVEL=debug shows it all.
  const log = createLog(config.logLevel === "info" ? "warn" : config.logLevel);
  const clock = movableClock(systemClock);
  const app = await compose({ ...config, face: "terminal", clock, log });
  if (!app.ok) return giveUp(app.problem.sentence);
  try {
    await runTerminal({
      ...app.value,
      clock,
      log,
      input: process.stdin,
      stream: process.stdout,
      isTty: process.stdin.isTTY === true && process.stdout.isTTY === true,
      zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
      signal: stopSignal(),
    });
    return 0;
  } finally {
    await app.value.close();
  }
}

/** Aborted by the first SIGINT or SIGTERM; a second one ends the process as usual. */
function stopSignal(): AbortSignal {
  const controller = new AbortController();
  const stop = (): void => controller.abort();
  process.once("SIGINT", stop);
  process.once("SIGTERM", stop);
  return controller.signal;
}

async function aborted(signal: AbortSignal): Promise<null> {
  if (!signal.aborted) await once(signal, "abort");
  return null;
}

/** Sentences for whoever started the process, on standard error. */
function giveUp(...sentences: readonly string[]): number {
  for (const sentence of sentences) process.stderr.write(`${sentence}\n`);
  return 1;
}
