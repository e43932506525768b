import { setInterval as every, setTimeout as pause } from "node:timers/promises";
import type { Interaction } from "../../../discord-server/platform.ts";
import { type DiscordServer, startDiscordServer } from "../../../discord-server/server.ts";
import type { Guild, User } from "../../../discord-server/world.ts";
import { type LoadAsked, type LoadTold, toPlatform, type WorldTold } from "./talk.ts";

// A process of its own that plays Discord and its people: arguments are how many servers there are and
// how many people in each. Told to, it sends interactions at a steady pace, whether answered or not.

const [guildCount = "1", peopleEach = "1"] = process.argv.slice(2);
const STEP_MS = 5;
const LOST_MS = 3_000;
const KEPT = 2_000;

type What = "card" | "stock" | "log" | "completion";
/** Of twenty interactions: typing a recipe's name asks for completions more than once. */
const MIX: readonly What[] = [
  ...Array<What>(8).fill("completion"),
  ...Array<What>(6).fill("card"),
  ...Array<What>(4).fill("stock"),
  ...Array<What>(2).fill("log"),
];

const server = await startDiscordServer({ token: "aaa.bbb.ccc" });
const places = Array.from({ length: Number(guildCount) }, (_, n) => {
  const guild = server.guild(`Kitchen ${n}`);
  const people = Array.from({ length: Number(peopleEach) }, (_, m) =>
    server.join(guild, `member-${n}-${m}`),
  );
  return { guild, people };
});
say({
  kind: "world",
  apiBase: server.apiBase,
  token: server.platform.token,
  applicationId: server.platform.applicationId,
  guilds: places.map(({ guild, people }) => ({
    id: guild.id,
    name: guild.name,
    people: people.map(({ id, displayName }) => ({ id, name: displayName })),
  })),
});
process.on("message", (asked) => void load(toPlatform.parse(asked)).then(say));

function say(told: WorldTold | LoadTold): void {
  process.send?.(told);
}

/** Numbers from 0 to below `n`, the same in every run. */
function dice(): (n: number) => number {
  let state = 1;
  return (n) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % n;
  };
}

async function load(asked: LoadAsked): Promise<LoadTold> {
  const told: LoadTold = {
    kind: "done",
    sent: {},
    firstMs: {},
    deferred: 0,
    lost: 0,
    refused: [],
    serverCpu: 0,
  };
  const kinds = new Map<string, What>();
  const roll = dice();
  const cpu = process.cpuUsage();
  const beganMs = performance.now();
  let count = 0;
  for await (const _ of every(STEP_MS)) {
    const pastS = (performance.now() - beganMs) / 1_000;
    const want = Math.min(pastS, asked.seconds) * asked.perSecond;
    for (; count < want; count += 1) {
      const what = MIX[roll(MIX.length)] ?? "card";
      kinds.set(ask(server, what, roll, asked.recipes), what);
      told.sent[what] = (told.sent[what] ?? 0) + 1;
    }
    settle(server, kinds, told);
    if (pastS >= asked.seconds) break;
  }
  const { user, system } = process.cpuUsage(cpu);
  told.serverCpu = (user + system) / 1_000 / (performance.now() - beganMs);
  await pause(LOST_MS + 100);
  settle(server, kinds, told);
  told.refused = server.platform.refused.map(({ route, code }) => `${route} ${code}`);
  return told;
}

function one<T>(list: readonly T[], roll: (n: number) => number): T {
  const found = list[roll(list.length)];
  if (found === undefined) throw new Error("nothing to choose from");
  return found;
}

/** Sends one interaction and returns its id. */
function ask(
  { driver, platform }: DiscordServer,
  what: What,
  roll: (n: number) => number,
  recipes: readonly string[],
): string {
  const { guild, people }: { guild: Guild; people: readonly User[] } = one(places, roll);
  const user = one(people, roll);
  const recipe = one(recipes, roll);
  const portions = String(2 + roll(9));
  switch (what) {
    case "card":
      return driver.beginSlash(user, guild, ["recipe", "card"], { recipe, portions }).id;
    case "stock":
      return driver.beginSlash(user, guild, ["stock"]).id;
    case "log":
      return driver.beginSlash(user, guild, ["batch", "log"], { recipe, portions }).id;
    case "completion": {
      const typed = recipe.slice(0, 1 + roll(6)).toLowerCase();
      void driver.complete(user, guild, ["recipe", "card"], "recipe", typed).catch(() => undefined);
      return [...platform.interactions.keys()].at(-1) ?? "";
    }
  }
}

/** Notes what has been answered since, and forgets it, so that this process stays small. */
function settle({ platform }: DiscordServer, kinds: Map<string, What>, told: LoadTold): void {
  const nowMs = performance.now();
  for (const [id, interaction] of platform.interactions) {
    const what = kinds.get(id);
    const { first } = interaction;
    if (what === undefined || (first === null && nowMs - interaction.sentAtMs < LOST_MS)) continue;
    if (first !== null && !isWhole(interaction)) continue;
    note(told, what, first);
    platform.interactions.delete(id);
    kinds.delete(id);
  }
  const { messages, files } = platform.world;
  if (messages.size > KEPT) messages.clear();
  if (files.size > KEPT) files.clear();
  platform.requests.length = 0;
}

function note(told: LoadTold, what: What, first: Interaction["first"]): void {
  if (first === null) {
    told.lost += 1;
    return;
  }
  const times = told.firstMs[what] ?? [];
  times.push(first.afterMs);
  told.firstMs[what] = times;
  if (first.type === 5) told.deferred += 1;
}

function isWhole({ first, writes }: Interaction): boolean {
  return first?.type === 8 || writes > 0;
}
