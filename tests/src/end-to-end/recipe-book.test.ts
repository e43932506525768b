import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PassThrough } from "node:stream";
import { Temporal } from "temporal-polyfill";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { groupId } from "../../../shared/ids.ts";
import { manualClock } from "../../../src/clock.ts";
import { type App, compose } from "../../../src/compose.ts";
import { startDiscord } from "../../../src/discord/start.ts";
import { silentLog } from "../../../src/log.ts";
import { TERMINAL_GROUP } from "../../../src/terminal/session.ts";
import { runTerminal } from "../../../src/terminal/start.ts";
import { startDiscordServer } from "../../discord-server/server.ts";

/** As a coach who never saw us writes, with a slip, and a food that no table has. */
const PASTED = `Baked bean tray
serves 4

Ingredients
800g chicken thighs, boneless
2 x 400 g tins chopped tomatoes
1 chopped brown onion
150 g chedder chese, grated
2 tbsp olive oil
200 g wild dock spinach

Method
1. Bake everything at 200 °C for 40 minutes.

Keeps up to 3 days in the fridge
`;

const FILE = `Oat bowl

Makes 2 portions

- 100 g rolled oats
- 400 ml milk
- 1 banana

Steps
1. Simmer for 5 minutes.

Keeps 2 days in the fridge
`;

const JSON_LD = JSON.stringify({
  "@context": "https://schema.org",
  "@graph": [
    { "@type": "WebPage", name: "A page" },
    {
      "@type": ["Recipe"],
      name: "Lentil soup",
      recipeYield: ["6", "6 portions"],
      recipeIngredient: ["300 g dried red lentils", "1 l vegetable stock", "2 carrots, diced"],
      recipeInstructions: [{ "@type": "HowToStep", text: "Simmer for 25 minutes." }],
    },
  ],
});

const TITLES = ["Baked bean tray", "Lentil soup", "Oat bowl"];

let folder: string;
let app: App;

async function open(face: "discord" | "terminal"): Promise<void> {
  const clock = manualClock(Temporal.Instant.from("2026-10-11T18:00:00Z"));
  const databaseUrl = `file:${join(folder, "book.db")}`;
  const opened = await compose({ face, databaseUrl, clock, log: silentLog });
  if (!opened.ok) throw new Error(opened.problem.sentence);
  app = opened.value;
}

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "batch-clerk-book-"));
});
afterEach(async () => {
  await app.close();
  await rm(folder, { recursive: true, force: true });
});

async function titlesIn(group: string): Promise<readonly string[]> {
  return (await app.stores.recipes.all(groupId(group))).map(({ recipe }) => recipe.title);
}

describe("a new coach publishes three recipes, one by paste, one by file, one by JSON-LD", () => {
  it("on Discord, revises one and withdraws another", async () => {
    await open("discord");
    const server = await startDiscordServer();
    const guild = server.guild("Sunday Pots", ["kitchen"]);
    const coach = server.join(guild, "mara", { manages: true });
    const discord = await startDiscord({
      ...app,
      token: server.platform.token,
      applicationId: server.platform.applicationId,
      log: silentLog,
      apiBase: server.apiBase,
      attachmentOrigins: [server.fileOrigin],
    });
    if (!discord.ok) throw new Error(discord.problem.sentence);
    const slash = (path: readonly string[], options = {}) =>
      server.slash(coach, guild, path, options);
    const formOf = (path: readonly string[], options = {}) =>
      server.driver.formOf(server.driver.beginSlash(coach, guild, path, options));
    const attach = (name: string, text: string) =>
      slash(["recipe", "publish"], { file: { name, bytes: new TextEncoder().encode(text) } });

    // By paste: what was not found is picked from a list, the slip is confirmed, then published.
    const form = await formOf(["recipe", "publish"]);
    const read = await server.driver.submit(coach, guild, form, { text: PASTED }).done;
    expect(read.ephemeral).toBe(true);
    expect(read.text).toContain("2 lines need a look:");
    expect(read.text).toMatch(/Line 8: “chedder chese” is taken as cheddar cheese: is it that\?/u);
    const slip = read.selects[0];
    const cheddar = slip?.options.find(({ label }) => label === "cheddar cheese")?.value ?? "";
    const next = await server.select(coach, read.message, slip?.id ?? "", [cheddar]);
    expect(next.text).toContain("1 line needs a look:");
    const leave = next.selects[0];
    const left = await server.select(coach, next.message, leave?.id ?? "", ["-"]);
    const done = await server.press(coach, left.message, "Publish");
    expect(done.text).toContain("Published: Baked bean tray, 4 portions.");
    expect(done.text).toContain("lower bounds: not counted are wild dock spinach");

    // By file, and by a document.
    for (const [name, text] of [
      ["oats.txt", FILE],
      ["soup.json", JSON_LD],
    ] as const) {
      const shown = await attach(name, text);
      await server.press(coach, shown.message, "Publish");
    }
    expect(await titlesIn(guild.id)).toEqual(TITLES);

    // The form holds what was written; the edit takes the place of the message.
    const revising = await formOf(["recipe", "revise"], { recipe: "Oat bowl" });
    expect(revising.values["text"]).toBe(FILE);
    const text = FILE.replace("100 g rolled oats", "120 g rolled oats");
    const changed = await server.driver.submit(coach, guild, revising, { text }).done;
    const again = await server.driver.formOf(
      server.driver.beginPress(coach, changed.message, "Edit"),
    );
    expect(again.values["text"]).toBe(text);
    const revised = await server.press(coach, changed.message, "Publish");
    expect(revised.text).toContain("rolled oats 100 → 120 g");

    const asked = await slash(["recipe", "withdraw"], { recipe: "Lentil soup" });
    await server.press(coach, asked.message, "Withdraw");
    expect(await titlesIn(guild.id)).toEqual(["Baked bean tray", "Oat bowl"]);
    expect((await slash(["recipe", "drafts"])).text).toContain("You have no drafts.");
    expect(server.platform.refused).toEqual([]);
    await discord.value.stop();
    await server.close();
  });

  it("shows the longest recipe that may be kept within the platform's limits", async () => {
    await open("discord");
    const server = await startDiscordServer();
    const guild = server.guild("Sunday Pots", ["kitchen"]);
    const coach = server.join(guild, "mara", { manages: true });
    const parts = { token: server.platform.token, applicationId: server.platform.applicationId };
    const discord = await startDiscord({
      ...app,
      ...parts,
      log: silentLog,
      apiBase: server.apiBase,
      attachmentOrigins: [server.fileOrigin],
    });
    if (!discord.ok) throw new Error(discord.problem.sentence);
    const lines = Array.from({ length: 380 }, (_, n) => `- ${n + 1} g *unheard* __of__ ${n} `);
    const text = `Long pot\nMakes 4 portions\n\n${lines.map((line) => line.padEnd(48, "x")).join("\n")}\n`;
    const bytes = new TextEncoder().encode(text);
    const shown = await server.slash(coach, guild, ["recipe", "publish"], {
      file: { name: "long.txt", bytes },
    });
    expect(shown.text).toContain("380 lines need a look:");
    expect(shown.files.map(({ name }) => name)).toContain("whole-answer.txt");
    const published = await server.press(coach, shown.message, "Publish");
    expect(published.text).toContain("Published: Long pot, 4 portions.");
    expect(server.platform.refused).toEqual([]);
    await discord.value.stop();
    await server.close();
  });

  it("in the terminal, through a restart in between", async () => {
    await writeFile(join(folder, "oats.txt"), FILE);
    await writeFile(join(folder, "soup.json"), JSON_LD);
    await open("terminal");
    const first = await chat(
      "/recipe publish",
      ...PASTED.split("\n"),
      ".",
      ".",
      ".",
      `/recipe publish file:${join(folder, "oats.txt")}`,
    );
    expect(first).toContain("Read: Baked bean tray, 4 portions");
    expect(first).toContain("Read: Oat bowl, 2 portions");
    expect(await titlesIn(TERMINAL_GROUP.id)).toEqual([]);
    await app.close();

    await open("terminal");
    const second = await chat("/recipe drafts", "1", "press 1");
    expect(second).toContain("You have 2 drafts, of 10 at most.");
    expect(await titlesIn(TERMINAL_GROUP.id)).toHaveLength(1);
    await chat("/recipe drafts", "1", publishOf(await chat("/recipe drafts", "1")));
    const soup = await chat(`/recipe publish file:${join(folder, "soup.json")}`, "1");
    expect(soup).toContain("Read from a schema.org recipe.");
    expect(await titlesIn(TERMINAL_GROUP.id)).toEqual(TITLES);
    const revised = await chat("/recipe revise recipe:Oat bowl", ...FILE.split("\n"), ".", ".");
    expect(revised).toContain("It says the same as revision 1 of Oat bowl.");
  });
});

/** The number by which Publish is picked from what was shown last. */
function publishOf(shown: string): string {
  const [, number] = /.*\[(\d+)\] Publish/su.exec(shown) ?? [];
  if (number === undefined) throw new Error(`no Publish in: ${shown}`);
  return number;
}

/** Lines typed one after the other, and everything that was shown. */
async function chat(...lines: readonly string[]): Promise<string> {
  const input = new PassThrough();
  const stream = new PassThrough();
  let shown = "";
  stream.on("data", (chunk: Buffer) => {
    shown += chunk.toString("utf8");
  });
  input.end(lines.map((line) => `${line}\n`).join(""));
  await runTerminal({
    ...app,
    clock: manualClock(Temporal.Instant.from("2026-10-11T18:00:00Z")),
    log: silentLog,
    input,
    stream,
    isTty: false,
    filesFolder: join(folder, "files"),
    zone: "Europe/Lisbon",
    signal: new AbortController().signal,
  });
  return shown;
}
