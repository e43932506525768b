import { dirname, join } from "node:path";
import { movableClock, systemClock } from "./clock.ts";
import { compose } from "./compose.ts";
import { type Config, readConfig, secretsOf, withEnvFile } from "./config.ts";
import { createLog } from "./log.ts";
import { stopSignal } from "./ops/stop-signal.ts";
import { runTerminal } from "./terminal/start.ts";

/** After an orderly end, how long a connection that hangs may keep the process. */
const LINGER_MS = 1_000;

process.exitCode = await main();
setTimeout(() => process.exit(), LINGER_MS).unref();

async function main(): Promise<number> {
  const config = readConfig(withEnvFile(process.env));
  if (!config.ok) return giveUp(config.problem);
  try {
    return await serve(config.value);
  } catch (error) {
    createLog(config.value.logLevel, process.stderr, secretsOf(config.value)).fatal(
      { err: error },
      "the process ends on an error",
    );
    return giveUp([
      "Batch Clerk had to stop because of an error on its side; the log has the rest.",
    ]);
  }
}

async function serve(config: Config): Promise<number> {
  if (config.discord === null) return serveTerminal(config);
  // Loaded only here: the terminal chat starts faster without it.
  const { serveDiscord } = await import("./serve-discord.ts");
  return giveUp(await serveDiscord(config, config.discord, stopSignal()));
}

async function serveTerminal(config: Config): Promise<number> {
  // In a chat only what needs attention is worth a line of log; LOG_LEVEL=debug shows it all.
  const level = config.logLevel === "info" ? "warn" : config.logLevel;
  const log = createLog(level, process.stderr, secretsOf(config));
  const clock = movableClock(systemClock);
  const app = await compose({ ...config, face: "terminal", clock, log });
  if (!app.ok) return giveUp([app.problem.sentence]);
  try {
    await runTerminal({
      ...app.value,
      clock,
      log,
      input: process.stdin,
      stream: process.stdout,
      isTty: process.stdin.isTTY === true && process.stdout.isTTY === true,
      filesFolder: filesFolderOf(config.databaseUrl),
      zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
      signal: stopSignal(),
    });
    return 0;
  } finally {
    await app.value.close();
  }
}

/** Beside the database where that is a file. */
function filesFolderOf(databaseUrl: string): string {
  const path = /^file:(.+)$/u.exec(databaseUrl)?.[1];
  return join(path === undefined ? "data" : dirname(path), "files");
}

/** Sentences for whoever started the process, on standard error; 0 when there are none. */
function giveUp(sentences: readonly string[]): number {
  for (const sentence of sentences) process.stderr.write(`${sentence}\n`);
  return sentences.length === 0 ? 0 : 1;
}
