import { spawnSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { atRest, byHand, type Shelf, shelf, stocked } from "./store/backup-kit.ts";

let place: Shelf;
beforeEach(async () => {
  place = await shelf();
});
afterEach(() => place.remove());

/** The command as it is typed, on the database of the test. */
function backup(args: readonly string[], url = `file:${place.path}`) {
  const done = spawnSync(process.execPath, ["--import", "tsx", "src/backup.ts", ...args], {
    env: { ...process.env, DATABASE_URL: url, DISCORD_TOKEN: "", DISCORD_APPLICATION_ID: "" },
    encoding: "utf8",
  });
  return { code: done.status, said: done.stdout.trim(), complained: done.stderr.trim() };
}

describe("node --import tsx src/backup.ts", () => {
  it("backs up while the bot has the file open, checks, refuses to restore, and restores once it is stopped", async () => {
    const w = await stocked(place.path);
    const b = place.file("b.db");
    const made = backup(["--to", b]);
    expect(made).toMatchObject({ code: 0, complained: "" });
    expect(made.said).toContain("Portions: 6 cooked = 4 in stock + 2 eaten, given or thrown away.");
    expect(made.said).toMatch(/^Rows: .*Batch 1, .*Member 1, .*Movement 2/mu);
    expect(backup(["--check", b])).toMatchObject({ code: 0, complained: "" });
    expect(backup(["--restore", b])).toEqual({
      code: 1,
      said: "",
      complained: "The bot has the database open. Stop it first, then restore.",
    });
    await w.store.close();
    const restored = backup(["--restore", b]);
    expect(restored).toMatchObject({ code: 0, complained: "" });
    expect(restored.said).toMatch(/What was there is now \S+clerk\.db\.before-\d{8}T\d{6}Z\./u);
  });

  it("says what is wrong with a file in sentences, with a code other than zero", async () => {
    byHand(await atRest(place.path), `UPDATE "Lot" SET halves = 9`);
    const made = backup(["--to", place.file("b.db")]);
    expect(made).toMatchObject({ code: 1, said: "" });
    expect(made.complained).toMatch(/do not add up/u);
    const restored = backup(["--restore", place.file("b.db")]);
    expect(restored.complained).toMatch(/was not restored: nothing changed/u);
    const missing = backup(["--check", place.file("nowhere.db")]);
    expect(missing).toMatchObject({ code: 1, said: "" });
    expect(missing.complained.split("\n")).toEqual([expect.stringMatching(/cannot be opened/u)]);
  });

  it("never writes over a file", async () => {
    await atRest(place.path);
    const { code, complained } = backup(["--to", place.path]);
    expect([code, complained]).toEqual([
      1,
      `${place.path} is there already. Name another file, or move it away.`,
    ]);
  });

  it.each([[[]], [["--to"]], [["--to", "a", "--check", "b"]], [["--now"]], [["file"]]])(
    "that is told something else says how it is used: %j",
    (args) => {
      expect(backup(args)).toMatchObject({ code: 2, said: "" });
      expect(readdirSync(place.folder)).toEqual([]);
    },
  );

  it("leaves a server to the server's own tools", () => {
    const { code, complained } = backup(["--to", place.file("b.db")], "postgresql://u:hunter2@h/d");
    expect(code).toBe(1);
    expect(complained).toContain("pg_dump");
    expect(complained).not.toContain("hunter2");
  });
});
