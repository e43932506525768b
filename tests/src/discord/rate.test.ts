import { setMaxListeners } from "node:events";
import { rm } from "node:fs/promises";
import { dirname } from "node:path";
import { Temporal } from "temporal-polyfill";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { reply } from "../../../commands/kit/reply.ts";
import { groupId } from "../../../shared/ids.ts";
import { manualClock } from "../../../src/clock.ts";
import { compose } from "../../../src/compose.ts";
import { createMailbox, type Mailbox } from "../../../src/discord/mailbox.ts";
import { createMessenger } from "../../../src/discord/messenger.ts";
import { render } from "../../../src/discord/render.ts";
import { silentLog } from "../../../src/log.ts";
import { type DiscordServer, startDiscordServer } from "../../discord-server/server.ts";
import { textOf } from "../../discord-server/view.ts";
import { reminder } from "../store/kit.ts";
import { sqlitePlace } from "../store/sqlite-place.ts";

/** Requests a second that the platform takes from one bot (topics/rate-limits, "Global Rate Limit"). */
const RATE = 50;

let server: DiscordServer;
let mailboxes: Mailbox[];
beforeEach(async () => {
  server = await startDiscordServer();
  mailboxes = [];
});
afterEach(async () => {
  for (const mailbox of mailboxes) mailbox.stop();
  await server.close();
});

function mailboxOf(): Mailbox {
  const { token, applicationId } = server.platform;
  const mailbox = createMailbox({ token, applicationId, apiBase: server.apiBase });
  mailboxes.push(mailbox);
  return mailbox;
}

/** The most requests that arrived within any one second. */
function busiestSecond(): number {
  const times = server.platform.requests.map(({ atMs }) => atMs);
  return Math.max(
    ...times.map((from) => times.filter((at) => at >= from && at < from + 1_000).length),
  );
}

describe("many reminders at once", () => {
  it.each([
    { processes: 1, each: 90 },
    { processes: 3, each: 30 },
  ])("stay within the platform's rate in every second: $processes processes", async (given) => {
    const guild = server.guild("Sunday Pots");
    const channel = guild.channels[0]?.id ?? "";
    const message = render(reply("Throw it away"), {});
    const sends = Array.from({ length: given.processes }, (_, process) => {
      const mailbox = mailboxOf();
      mailbox.share(given.processes);
      const signal = AbortSignal.timeout(30_000);
      setMaxListeners(0, signal);
      return Array.from({ length: given.each }, (__, n) =>
        mailbox.post(channel, `p${process}n${n}`, message, signal),
      );
    });
    await Promise.all(sends.flat());
    expect(server.messagesIn(channel)).toHaveLength(given.processes * given.each);
    expect(busiestSecond()).toBeLessThanOrEqual(RATE);
  });
});

describe("after an outage of days", () => {
  it("each member gets one message of what still helps and what does not, without a burst", async () => {
    const MEMBERS = 40;
    const place = await sqlitePlace();
    const now = Temporal.Instant.from("2026-10-14T12:00:00Z");
    const app = await compose({
      face: "discord",
      databaseUrl: `file:${place.path}`,
      clock: manualClock(now),
      log: silentLog,
    });
    if (!app.ok) throw new Error(app.problem.sentence);
    const { stores, tickFor, close } = app.value;
    const guild = server.guild("Sunday Pots");
    const group = await stores.groups.open(groupId(guild.id), guild.name);
    const ago = (days: number, helpsHours: number) => {
      const dueAt = now.subtract({ hours: days * 24 });
      return { dueAt, helpsUntil: dueAt.add({ hours: helpsHours }) };
    };
    const users = Array.from({ length: MEMBERS }, (_, n) => server.join(guild, `m${n}`));
    for (const { id, username } of users) {
      const { id: memberId } = await stores.members.open(group.id, id, username);
      const reminders = [
        reminder("thaw", ago(3, 12)),
        reminder("last", { kind: "last good day", ...ago(2, 14) }),
        reminder("out", { kind: "discard today", ...ago(1, 24 * 14) }),
      ];
      await stores.reminders.replan({ memberId, version: 0, now, reminders, replanAt: null });
    }
    const parts = { mailbox: mailboxOf(), log: silentLog, onTokenRefused: () => undefined };
    const report = await tickFor(createMessenger(parts))();
    expect(report).toMatchObject({ sent: MEMBERS, expired: 2 * MEMBERS, errors: 0 });
    for (const user of users) {
      const texts = server.directMessages(user).map(textOf);
      expect(texts).toHaveLength(1);
      expect(texts[0]).toMatch(/throw away[\s\S]*missed a reminder \(to thaw: .* and 1 more\)/u);
    }
    expect(server.platform.requests.every(({ status }) => status === 200)).toBe(true);
    expect(busiestSecond()).toBeLessThanOrEqual(RATE);
    await close();
    await rm(dirname(place.path), { recursive: true, force: true });
  }, 60_000);
});
