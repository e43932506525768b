import { setTimeout as pause } from "node:timers/promises";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type DiscordHandle, startDiscord } from "../../../src/discord/start.ts";
import { type DiscordServer, startDiscordServer } from "../../discord-server/server.ts";
import { textOf } from "../../discord-server/view.ts";
import type { Guild, User } from "../../discord-server/world.ts";
import { outgoing } from "./reminders.ts";
import { type LogLine, partsFor, type Rig, ScriptedBot } from "./rig.ts";

/** Of which of two shards a guild is: the platform's own rule (topics/gateway, "Sharding"). */
const shardOf = (guild: Guild): number => Number((BigInt(guild.id) >> 22n) % 2n);

/** A guild of the given one of two shards; the time in its id decides, so a few are made. */
async function guildOf(server: DiscordServer, shard: number): Promise<Guild> {
  for (;;) {
    const guild = server.guild(`Kitchen ${shard}`, ["kitchen", "reminders"]);
    if (shardOf(guild) === shard) return guild;
    server.platform.world.guilds.delete(guild.id);
    await pause(1);
  }
}

let server: DiscordServer;
let guilds: readonly [Guild, Guild];
let people: readonly [User, User];
let bot: ScriptedBot;
let log: LogLine[];
let handle: DiscordHandle | null;
beforeEach(async () => {
  server = await startDiscordServer();
  server.platform.shards = 2;
  guilds = [await guildOf(server, 0), await guildOf(server, 1)];
  people = [server.join(guilds[0], "ines"), server.join(guilds[1], "theo")];
  bot = new ScriptedBot();
  log = [];
  handle = null;
});
afterEach(async () => {
  await handle?.stop();
  await server.close();
});

async function start(shards: { ids: readonly number[]; total: number } | null = null) {
  const started = await startDiscord({ ...partsFor(server, bot, log), shards });
  if (!started.ok) throw new Error(started.problem.sentence);
  handle = started.value;
  return started.value;
}

describe("a bot that the platform asks to open two shards", () => {
  it("opens both in one process and answers the commands of the guilds of each", async () => {
    const { isConnected } = await start();
    expect(server.gateway.shards).toEqual(["0/2", "1/2"]);
    expect(isConnected()).toBe(true);
    for (const n of [0, 1] as const) {
      expect((await server.slash(people[n], guilds[n], ["stock"])).text).toBe(
        "**Answer to stock**",
      );
    }
    expect(bot.asked.map(({ asked }) => asked.groupId)).toEqual(guilds.map(({ id }) => id));
    expect(log.filter(({ level }) => level !== "info")).toEqual([]);
  });

  it("registers its commands once, not once a shard", async () => {
    await start();
    expect(server.requests("PUT", /\/commands$/u)).toHaveLength(1);
  });

  it("that loses the connections has them back and answers what was asked meanwhile", async () => {
    const { isConnected } = await start();
    server.gateway.cutAll();
    await server.until("the drop", () => server.gateway.connected === 0);
    const asking = server.driver.beginSlash(people[1], guilds[1], ["stock"]);
    expect((await asking.done).text).toBe("**Answer to stock**");
    await server.until("both shards", () => server.gateway.shards.length === 2 && isConnected());
    expect(server.gateway.resumes).toBe(2);
  });

  it("ends the process when one shard is closed for good", async () => {
    const { closed } = await start();
    server.gateway.closeAll(4014);
    expect(await closed).toContain("4014");
  });
});

describe("a process that serves some of the shards", () => {
  it("opens those only, and sends reminders to members of guilds of the others", async () => {
    const { messenger, isConnected } = await start({ ids: [0], total: 2 });
    expect(server.gateway.shards).toEqual(["0/2"]);
    expect(isConnected()).toBe(true);
    const rig = { guild: guilds[1], mika: people[1] } as Rig;
    const sent = await messenger.send(outgoing(rig));
    expect(sent).toMatchObject({ kind: "sent", where: "direct message" });
    expect(server.directMessages(people[1]).map(textOf)).toEqual([
      expect.stringContaining("2 portions of chilli"),
    ]);
  });

  it("leaves a command of another shard's guild to the process that has it, so that one answers", async () => {
    const first = await start({ ids: [0], total: 2 });
    const otherBot = new ScriptedBot();
    const second = await startDiscord({
      ...partsFor(server, otherBot),
      shards: { ids: [1], total: 2 },
    });
    if (!second.ok) throw new Error(second.problem.sentence);
    for (const n of [0, 1] as const) await server.slash(people[n], guilds[n], ["stock"]);
    expect([bot.asked.length, otherBot.asked.length]).toEqual([1, 1]);
    expect(server.requests("POST", /\/callback$/u)).toHaveLength(2);
    await second.value.stop();
    expect(first.isConnected()).toBe(true);
  });
});

describe("a login under way", () => {
  it("is given up when the process is asked to stop", async () => {
    server.gateway.closeDoors();
    const leaving = new AbortController();
    const starting = startDiscord({ ...partsFor(server, bot), stopping: leaving.signal });
    await server.until("a knock", () => server.requests("GET", /gateway\/bot$/u).length > 0);
    leaving.abort();
    expect(await starting).toMatchObject({ ok: false, problem: { code: "stopped" } });
  });
});
