import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Temporal } from "temporal-polyfill";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type MovableClock, manualClock } from "../../../src/clock.ts";
import { type App, compose } from "../../../src/compose.ts";
import { type DiscordHandle, startDiscord } from "../../../src/discord/start.ts";
import type { Tick } from "../../../src/jobs/reminder-tick.ts";
import { silentLog } from "../../../src/log.ts";
import { type DiscordServer, startDiscordServer } from "../../discord-server/server.ts";
import { buttonsOf, textOf } from "../../discord-server/view.ts";
import type { Guild, User } from "../../discord-server/world.ts";
import { POT_TEXT } from "../../kit/bot.ts";

/** The whole bot: real client over loopback, real dispatcher, real SQLite file; only time is ours. */
interface Whole {
  readonly server: DiscordServer;
  readonly guild: Guild;
  readonly coach: User;
  readonly member: User;
  readonly other: User;
  readonly app: App;
  readonly discord: DiscordHandle;
  readonly tick: Tick;
  readonly clock: MovableClock;
  readonly folder: string;
}

let whole: Whole;

beforeEach(async () => {
  const folder = await mkdtemp(join(tmpdir(), "batch-clerk-whole-"));
  const server = await startDiscordServer();
  const guild = server.guild("Sunday Pots", ["kitchen", "reminders"], ["coach"]);
  const coach = server.join(guild, "mara", { manages: true });
  const member = server.join(guild, "ines");
  const other = server.join(guild, "theo");
  const clock = manualClock(Temporal.Instant.from("2026-10-11T18:00:00Z"));
  const app = await compose({
    face: "discord",
    databaseUrl: `file:${join(folder, "whole.db")}`,
    clock,
    log: silentLog,
  });
  if (!app.ok) throw new Error(app.problem.sentence);
  const discord = await startDiscord({
    ...app.value,
    token: server.platform.token,
    applicationId: server.platform.applicationId,
    log: silentLog,
    apiBase: server.apiBase,
    attachmentOrigins: [server.fileOrigin],
  });
  if (!discord.ok) throw new Error(discord.problem.sentence);
  const tick = app.value.tickFor(discord.value.messenger);
  whole = {
    server,
    guild,
    coach,
    member,
    other,
    app: app.value,
    discord: discord.value,
    tick,
    clock,
    folder,
  };
  const channel = guild.channels[1]?.id ?? "";
  await server.slash(coach, guild, ["group", "setup"], {
    zone: "Europe/Lisbon",
    channel,
  });
  const read = await server.slash(coach, guild, ["recipe", "publish"], {
    file: { name: "pot.txt", bytes: new TextEncoder().encode(POT_TEXT) },
  });
  await server.press(coach, read.message, "Publish");
  await server.slash(member, guild, ["meals"], { days: "Mon-Fri", time: "12:30" });
});

afterEach(async () => {
  // The platform refused nothing we sent: every limit was kept.
  expect(whole.server.platform.refused).toEqual([]);
  await whole.discord.stop();
  await whole.app.close();
  await whole.server.close();
  await rm(whole.folder, { recursive: true, force: true });
});

async function until(time: string): Promise<void> {
  whole.clock.advanceTo(Temporal.Instant.from(time));
  await whole.tick();
}

const log = () =>
  whole.server.slash(whole.member, whole.guild, ["batch", "log"], {
    recipe: "Barley and lamb pot",
    portions: "8",
    cooked: "18:30",
  });

describe("the whole path on Discord", () => {
  it("registers every command within the platform's limits", () => {
    const puts = whole.server.requests("PUT", /commands$/u);
    expect(puts).toHaveLength(1);
  });

  it("answers a card privately, well inside three seconds, and completes names", async () => {
    const { server, member, guild } = whole;
    const card = await server.slash(member, guild, ["recipe", "card"], {
      recipe: "Barley and lamb pot",
      portions: "8",
    });
    expect(card.ephemeral).toBe(true);
    expect(card.first.afterMs).toBeLessThan(1500);
    expect(card.text).toContain("800 g");
    const names = await server.autocomplete(member, guild, ["recipe", "card"], "recipe", "barl");
    expect(names.map((one) => one.name)).toEqual(["Barley and lamb pot"]);
    const parts = await server.autocomplete(member, guild, ["recipe", "card"], "without", "carr", {
      recipe: "Barley and lamb pot",
    });
    expect(parts.map((one) => one.value)).toEqual(["carrots"]);
  });

  it("logs, freezes by a button, reminds by direct message, thaws by its button, once", async () => {
    const { server, member } = whole;
    const logged = await log();
    expect(logged.text).toContain("Freeze now");
    const froze = await server.press(member, logged.message, "Froze 5 portions");
    expect(froze.text).toContain("Froze 5 portions of Barley and lamb pot.");
    // "Freeze 5" fell due in the minute in which they were frozen: it must not be told any more.
    await until("2026-10-11T18:01:00Z");
    expect(server.directMessages(member)).toEqual([]);
    await until("2026-10-13T18:00:00Z");
    await whole.tick();
    const [thaw, ...more] = server
      .directMessages(member)
      .filter((one) => textOf(one).includes("from the freezer"));
    if (thaw === undefined) throw new Error("no thaw reminder came");
    expect(more).toEqual([]);
    expect(textOf(thaw)).toContain("for Thu 15 Oct, 12:30 lunch");
    const done = await server.press(member, thaw, "Set 1 to thaw");
    expect(done.text).toContain("Set to thaw: 1 portion of Barley and lamb pot.");
    await until("2026-10-14T07:00:00Z");
    const last = server
      .directMessages(member)
      .filter((one) => textOf(one).includes("Last good day"));
    expect(last).toHaveLength(1);
  });

  it("does not let another member press what was shown to them, nor a forged id", async () => {
    const { server, other } = whole;
    const logged = await log();
    const id = buttonsOf(logged.message).find((one) => one.label.startsWith("Froze"))?.id ?? "";
    const own = await server.slash(other, whole.guild, ["stock"]);
    const forged = await server.driver.pressBlindly(other, own.message, id).done;
    expect(forged.text).toMatch(/not yours/u);
    expect((await server.slash(whole.member, whole.guild, ["stock"])).text).toContain("8 portions");
  });

  it("falls back to the group's channel when direct messages are closed, pinging that member alone", async () => {
    const { server, member, guild } = whole;
    server.platform.closedDirect.add(member.id);
    await log();
    await until("2026-10-14T07:00:00Z");
    const channel = server.messagesIn(guild.channels[1]?.id ?? "");
    expect(channel.some((one) => textOf(one).includes("Last good day"))).toBe(true);
    expect(channel.every((one) => one.pinged.every((id) => id === member.id))).toBe(true);
  });

  it("delivers once when the platform answers 500 after it stored the message", async () => {
    const { server, member } = whole;
    await log();
    server.fault({
      kind: "500 after storing",
      method: "POST",
      path: /^\/channels\/\d+\/messages$/u,
      times: 1,
    });
    await until("2026-10-14T07:00:00Z");
    await until("2026-10-14T07:05:00Z");
    await until("2026-10-14T07:10:00Z");
    expect(
      server.directMessages(member).filter((one) => textOf(one).includes("Last good day")),
    ).toHaveLength(1);
  });

  it("tells of a new revision by direct message, once, though the platform answers 500 after storing", async () => {
    const { server, coach, member, other, guild } = whole;
    await log();
    await until("2026-10-11T18:50:00Z");
    const before = server.directMessages(member).length;
    const read = await server.slash(coach, guild, ["recipe", "publish"], {
      file: {
        name: "pot.txt",
        bytes: new TextEncoder().encode(
          POT_TEXT.replace("200 g carrots, sliced", "200 g plain yogurt"),
        ),
      },
    });
    const done = await server.press(coach, read.message, "Publish");
    expect(done.text).toContain("One is told what changed.");
    server.fault({
      kind: "500 after storing",
      method: "POST",
      path: /^\/channels\/\d+\/messages$/u,
      times: 1,
    });
    for (const time of ["18:55", "19:00", "19:05"]) await until(`2026-10-11T${time}:00Z`);
    const [told, ...more] = server.directMessages(member).slice(before);
    expect(more).toEqual([]);
    if (told === undefined) throw new Error("nobody was told");
    expect(textOf(told)).toContain("Mind: it now contains milk (plain yogurt)");
    expect([...server.directMessages(other), ...server.directMessages(coach)]).toEqual([]);
    const card = await server.press(member, told, "See the card");
    expect(card.text).toContain("Changed since you cooked it: new: plain yogurt 200 g");
  });
});
