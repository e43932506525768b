import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
import { type DiscordServer, startDiscordServer } from "../../discord-server/server.ts";
import type { Guild, User } from "../../discord-server/world.ts";

let server: DiscordServer;
let folder: string;
let guild: Guild;
let member: User;
beforeEach(async () => {
  server = await startDiscordServer({ token: "aaa.bbb.ccc" });
  guild = server.guild("Sunday Pots");
  member = server.join(guild, "ines");
  folder = await mkdtemp(join(tmpdir(), "batch-clerk-main-"));
});
afterEach(async () => {
  await server.close();
  await rm(folder, { recursive: true, force: true });
});

function startMain(token: string) {
  const child = spawn(process.execPath, ["--import", "tsx", "src/main.ts"], {
    env: {
      ...process.env,
      DISCORD_TOKEN: token,
      DISCORD_APPLICATION_ID: server.platform.applicationId,
      DISCORD_API_BASE: server.apiBase,
      DATABASE_URL: `file:${join(folder, "main.db")}`,
      LOG_LEVEL: "silent",
    },
    stdio: ["ignore", "ignore", "pipe"],
  });
  let errors = "";
  child.stderr.on("data", (chunk) => {
    errors += String(chunk);
  });
  return { child, ended: once(child, "exit").then(([code]) => ({ code, errors })) };
}

it("npm start with a wrong token ends with one sentence and not zero", async () => {
  const { code, errors } = await startMain("wrong.wrong.wrong").ended;
  expect(code).toBe(1);
  expect(errors.trim().split("\n")).toHaveLength(1);
  expect(errors).toMatch(/DISCORD_TOKEN/u);
});

it("npm start serves Discord, registers once over two starts, and ends when the gateway closes for good", async () => {
  const first = startMain("aaa.bbb.ccc");
  await server.platform.until("commands", () => server.requests("PUT", /commands$/u)[0]);
  await server.platform.until("a login", () => server.gateway.connected > 0);
  expect((await server.slash(member, guild, ["help"])).text).toContain("/batch log");
  first.child.kill("SIGTERM");
  expect(await first.ended).toEqual({ code: 0, errors: "" });
  const second = startMain("aaa.bbb.ccc");
  await server.platform.until("a second login", () => server.gateway.connected > 0);
  expect((await server.slash(member, guild, ["stock"])).text).toContain("Nothing in stock.");
  server.gateway.closeAll(4014);
  const { code, errors } = await second.ended;
  expect(code).toBe(1);
  expect(errors.trim().split("\n")).toHaveLength(1);
  expect(server.requests("PUT", /commands$/u)).toHaveLength(1);
});
