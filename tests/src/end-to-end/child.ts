import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { createServer } from "node:net";
import type { DiscordServer } from "../../discord-server/server.ts";

export interface Ended {
  readonly code: number | null;
  readonly signal: string | null;
  readonly errors: string;
}

export interface Child {
  readonly child: ChildProcess;
  readonly ended: Promise<Ended>;
}

/** Runs a file of the bot as a process of its own; what it writes on standard error is kept. */
export function run(args: readonly string[], env: Readonly<Record<string, string>>): Child {
  const child = spawn(process.execPath, ["--import", "tsx", ...args], {
    env: { ...process.env, ...env },
    stdio: ["ignore", "ignore", "pipe"],
  });
  let errors = "";
  child.stderr.on("data", (chunk) => {
    errors += String(chunk);
  });
  const ended = once(child, "close").then(([code, signal]) => ({ code, signal, errors }));
  return { child, ended };
}

/** The bot itself on Discord, against the loopback server. */
export function runBot(
  server: DiscordServer,
  path: string,
  env: Readonly<Record<string, string>> = {},
): Child {
  return run(["src/main.ts"], {
    DISCORD_TOKEN: server.platform.token,
    DISCORD_APPLICATION_ID: server.platform.applicationId,
    DISCORD_API_BASE: server.apiBase,
    DISCORD_SHARDS: "",
    DATABASE_URL: `file:${path}`,
    LOG_LEVEL: "silent",
    OPS_PORT: "off",
    ...env,
  });
}

/** A port of this machine that nobody uses now. */
export async function freePort(): Promise<number> {
  const server = createServer().listen(0, "127.0.0.1");
  await once(server, "listening");
  const bound = server.address();
  server.close();
  await once(server, "close");
  if (bound === null || typeof bound === "string") throw new Error("no port was given");
  return bound.port;
}
