import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Temporal } from "temporal-polyfill";
import { expect, it } from "vitest";
import { manualClock } from "../../../src/clock.ts";
import { compose } from "../../../src/compose.ts";
import { startDiscord } from "../../../src/discord/start.ts";
import { silentLog } from "../../../src/log.ts";
import { startDiscordServer } from "../../discord-server/server.ts";
import { POT_TEXT } from "../../kit/bot.ts";
import { readPdf, readPng, scan } from "../../kit/printed.ts";

it("brings a member their labels on Discord, and finds the box again by what a scanner reads", {
  timeout: 60_000,
}, async () => {
  const folder = await mkdtemp(join(tmpdir(), "batch-clerk-labels-"));
  const server = await startDiscordServer();
  const guild = server.guild("Sunday Pots", ["kitchen"], ["coach"]);
  const coach = server.join(guild, "mara", { manages: true });
  const member = server.join(guild, "ines");
  const app = await compose({
    face: "discord",
    databaseUrl: `file:${join(folder, "labels.db")}`,
    clock: manualClock(Temporal.Instant.from("2026-10-11T18:00:00Z")),
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
  try {
    const read = await server.slash(coach, guild, ["recipe", "publish"], {
      file: { name: "pot.txt", bytes: new TextEncoder().encode(POT_TEXT) },
    });
    await server.press(coach, read.message, "Publish");
    const logged = await server.slash(member, guild, ["batch", "log"], {
      recipe: "Barley and lamb pot",
      portions: "8",
      cooked: "17:30",
    });
    const printed = await server.press(member, logged.message, "Labels");
    expect(printed.text).toContain("8 labels on 1 A4 sheet: Barley and lamb pot.");
    const [pdf, png] = printed.message.files;
    const [page] = await readPdf(pdf?.bytes ?? new Uint8Array());
    const image = await page?.image(200 / 72);
    const onSheet = image === undefined ? [] : await scan(image);
    expect(onSheet).toHaveLength(8);
    const [onPhone] = await scan(await readPng(png?.bytes ?? new Uint8Array()));
    expect(new Set(onSheet.map(({ text }) => text))).toEqual(new Set([onPhone?.text]));
    const found = await server.slash(member, guild, ["stock"], { code: onPhone?.text ?? "" });
    expect(found.text).toContain("Barley and lamb pot, fridge: 8 portions.");
    const other = await server.slash(coach, guild, ["stock"], { code: onPhone?.text ?? "" });
    expect(other.text).toContain("No portions of yours have the code");
    const offered = await server.autocomplete(member, guild, ["batch", "labels"], "grid", "63.5");
    expect(offered.map(({ value }) => value)).toEqual(["A4, 3 x 7 of 63.5 x 38.1 mm"]);
    expect(server.platform.refused).toEqual([]);
  } finally {
    await discord.value.stop();
    await app.value.close();
    await server.close();
    await rm(folder, { recursive: true, force: true });
  }
});
