import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Temporal } from "temporal-polyfill";
import { expect, it } from "vitest";
import { groupId } from "../../../shared/ids.ts";
import { manualClock } from "../../../src/clock.ts";
import { compose } from "../../../src/compose.ts";
import { startDiscord } from "../../../src/discord/start.ts";
import { silentLog } from "../../../src/log.ts";
import { startDiscordServer } from "../../discord-server/server.ts";

it("on Discord a coach picks the member, and gets to their targets with their consent only", async () => {
  const folder = await mkdtemp(join(tmpdir(), "batch-clerk-targets-"));
  const server = await startDiscordServer();
  const guild = server.guild("Sunday Pots", ["kitchen"], ["coach"]);
  const coach = server.join(guild, "mara", { manages: true });
  const member = server.join(guild, "ines");
  const app = await compose({
    face: "discord",
    databaseUrl: `file:${join(folder, "whole.db")}`,
    clock: manualClock(Temporal.Instant.from("2026-11-25T18:00:00Z")),
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

  const own = await server.slash(member, guild, ["targets", "set"], { energy: "2100" });
  expect(own.ephemeral).toBe(true);
  expect(own.text).toContain("2,100 kcal");
  const path = ["targets", "show"];
  const refused = await server.slash(coach, guild, path, { member: member.id });
  expect(refused.text).toContain("has not let the coach see or set their targets");
  const { members } = app.value.stores;
  const row = await members.inGroup(groupId(guild.id), member.id);
  if (row === null) throw new Error("the member is not known");
  await members.setProfile(row.id, { coachMaySetTargets: true });
  const seen = await server.slash(coach, guild, path, { member: member.id });
  expect(seen.ephemeral).toBe(true);
  expect(seen.text).toMatch(/ines today, Wed 25 Nov: 2,100 kcal/u);

  expect(server.platform.refused).toEqual([]);
  await discord.value.stop();
  await app.value.close();
  await server.close();
  await rm(folder, { recursive: true, force: true });
});
