import { rm } from "node:fs/promises";
import { dirname } from "node:path";
import Database from "better-sqlite3";
import { Temporal } from "temporal-polyfill";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { groupId } from "../../../shared/ids.ts";
import { type DiscordServer, startDiscordServer } from "../../discord-server/server.ts";
import { textOf } from "../../discord-server/view.ts";
import type { Guild, User } from "../../discord-server/world.ts";
import { gate } from "../discord/rig.ts";
import { get, samples } from "../ops/get.ts";
import { reminder } from "../store/kit.ts";
import { openFile, sqlitePlace } from "../store/sqlite-place.ts";
import { type Child, freePort, runBot } from "./child.ts";

// The real process, ended in the middle of its work.

const POST_MESSAGE = /^\/channels\/\d+\/messages$/u;
const MEMBERS = 20;

let server: DiscordServer;
let guild: Guild;
let users: readonly User[];
let path: string;
let children: Child[];
beforeEach(async () => {
  server = await startDiscordServer({ token: "aaa.bbb.ccc" });
  guild = server.guild("Sunday Pots");
  users = Array.from({ length: MEMBERS }, (_, n) => server.join(guild, `member${n}`));
  path = (await sqlitePlace()).path;
  children = [];
});
afterEach(async () => {
  for (const { child, ended } of children) {
    child.kill("SIGKILL");
    await ended;
  }
  await server.close();
  await rm(dirname(path), { recursive: true, force: true });
});

/** One reminder for each member, due a minute ago. */
async function makeDue(): Promise<void> {
  const now = Temporal.Now.instant();
  const store = await openFile(path);
  const group = await store.stores.groups.open(groupId(guild.id), guild.name);
  for (const { id, username } of users) {
    const member = await store.stores.members.open(group.id, id, username);
    const due = { dueAt: now.subtract({ minutes: 1 }), helpsUntil: now.add({ hours: 2 }) };
    const reminders = [reminder("k", due)];
    await store.stores.reminders.replan({
      memberId: member.id,
      version: 0,
      now,
      reminders,
      replanAt: null,
    });
  }
  await store.close();
}

interface Row {
  readonly state: string;
  readonly attempts: number;
  readonly nonce: string | null;
  readonly claimedBy: string | null;
  readonly leaseUntil: string | null;
}

function rows(): readonly Row[] {
  const db = new Database(path, { readonly: true });
  try {
    return db.prepare<[], Row>(`SELECT * FROM "Reminder"`).all();
  } finally {
    db.close();
  }
}

function startBot(env: Readonly<Record<string, string>> = {}): Child {
  const started = runBot(server, path, env);
  children.push(started);
  return started;
}

/** Each of the eight lanes gets a message under way, and then it waits until the door is opened. */
function holdMessages() {
  const door = gate();
  let held = 0;
  const before = (): Promise<void> => {
    held += 1;
    server.platform.changed();
    return door.promise;
  };
  const target = { method: "POST", path: POST_MESSAGE, times: 8 };
  server.fault({ kind: "act", isDone: true, before, says: "the truth", ...target });
  return {
    open: door.open,
    reached: () => server.until("eight messages under way", () => held === 8),
  };
}

/** Waits for what the other process writes; nobody tells of that. */
const soon = (check: () => void) => vi.waitFor(check, { timeout: 30_000, interval: 20 });
const inState = (state: string) => rows().filter((row) => row.state === state).length;

const stored = () => users.flatMap((user) => server.directMessages(user).map(textOf));

describe("a process that is asked to stop in the middle of a sweep", () => {
  it("finishes what it has begun, begins nothing more, and the next start sends the rest once", async () => {
    await makeDue();
    const door = holdMessages();
    const { child, ended } = startBot();
    await door.reached();
    child.kill("SIGTERM");
    await server.until("the goodbye", () => server.gateway.connected === 0);
    door.open();
    expect(await ended).toEqual({ code: 0, signal: null, errors: "" });
    expect([inState("sent"), inState("claimed"), inState("scheduled")]).toEqual([
      8,
      0,
      MEMBERS - 8,
    ]);
    const again = startBot();
    await server.until("the rest", () => stored().length === MEMBERS);
    await soon(() => expect(inState("sent")).toBe(MEMBERS));
    again.child.kill("SIGTERM");
    await again.ended;
    for (const user of users) expect(server.directMessages(user)).toHaveLength(1);
  });

  it("gives back what it cannot finish, under its nonce, and is gone within ten seconds", async () => {
    await makeDue();
    const door = holdMessages();
    const { child, ended } = startBot();
    await door.reached();
    const startMs = performance.now();
    child.kill("SIGTERM");
    expect(await ended).toEqual({ code: 0, signal: null, errors: "" });
    expect(performance.now() - startMs).toBeLessThan(9_000);
    const held = rows().filter(({ state }) => state === "claimed");
    expect(held).toHaveLength(8);
    for (const row of held) {
      expect(row).toMatchObject({ claimedBy: null, attempts: 1, nonce: expect.any(String) });
      // The lease was for two minutes; it is over already.
      expect(Date.parse(row.leaseUntil ?? "")).toBeLessThanOrEqual(Date.now());
    }
    // The platform stored them after all: the next process must find that out and not send again.
    door.open();
    await server.until("the late ones", () => stored().length === 8);
    const again = startBot();
    await soon(() => expect(inState("sent")).toBe(MEMBERS));
    again.child.kill("SIGTERM");
    expect((await again.ended).code).toBe(0);
    for (const user of users) expect(server.directMessages(user)).toHaveLength(1);
  });

  it.each([
    ["SIGTERM", "SIGTERM"],
    ["SIGINT", "SIGTERM"],
  ] as const)("ends at once when asked twice: %s, %s", async (first, second) => {
    await makeDue();
    const door = holdMessages();
    const { child, ended } = startBot();
    await door.reached();
    child.kill(first);
    await server.until("the goodbye", () => server.gateway.connected === 0);
    const startMs = performance.now();
    child.kill(second);
    expect(await ended).toMatchObject({ code: null, signal: second });
    expect(performance.now() - startMs).toBeLessThan(1_000);
    door.open();
  });
});

describe("a process that is asked to stop before Discord has answered", () => {
  it("ends in order", async () => {
    server.gateway.closeDoors();
    const { child, ended } = startBot();
    await server.until("a knock", () => server.requests("GET", /gateway\/bot$/u).length > 0);
    child.kill("SIGTERM");
    expect(await ended).toEqual({ code: 0, signal: null, errors: "" });
  });
});

describe("a process at work", () => {
  it("shows its health and its figures, and logs nothing of its members", async () => {
    await makeDue();
    const port = await freePort();
    const { child, ended } = startBot({ OPS_PORT: String(port), LOG_LEVEL: "debug" });
    await soon(() => expect(inState("sent")).toBe(MEMBERS));
    const [first] = users;
    if (first === undefined) throw new Error("nobody is there");
    await server.slash(first, guild, ["stock"]);
    expect(JSON.parse((await get(port, "/readyz")).body)).toMatchObject({
      status: "well",
      database: "answers",
      gateway: "connected",
    });
    const found = samples((await get(port, "/metrics")).body);
    expect(found.get('batch_clerk_reminders_total{became="sent"}')).toBe(MEMBERS);
    expect(found.get("batch_clerk_reminder_lag_seconds_count")).toBe(MEMBERS);
    expect(found.get("batch_clerk_reminders_due")).toBe(0);
    expect(found.get('batch_clerk_command_seconds_count{command="stock",part="command"}')).toBe(1);
    child.kill("SIGTERM");
    const { code, errors } = await ended;
    expect(code).toBe(0);
    const lines = errors
      .trim()
      .split("\n")
      .map((line): unknown => JSON.parse(line));
    expect(lines).toContainEqual(expect.objectContaining({ msg: "reminder sweep", sent: MEMBERS }));
    expect(lines.at(-1)).toMatchObject({ msg: "stopped", returned: 0 });
    for (const { id, username } of users) {
      expect(errors).not.toContain(id);
      expect(errors).not.toContain(username);
    }
    expect(errors).not.toMatch(/aaa\.bbb\.ccc|Barley|Sunday Pots/u);
  });

  it("does not start on a port for its figures that is taken, when it was asked for", async () => {
    const port = Number(new URL(server.apiBase).port);
    const { ended } = startBot({ OPS_PORT: String(port) });
    const { code, errors } = await ended;
    expect(code).toBe(1);
    expect(errors.trim().split("\n")).toEqual([expect.stringContaining(`port ${port}`)]);
  });
});
