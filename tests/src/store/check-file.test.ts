import { copyFile, open, readdir, stat, truncate, writeFile } from "node:fs/promises";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { backUp } from "../../../src/store/backup.ts";
import { checkFile } from "../../../src/store/check-file.ts";
import { atRest, byHand, type Shelf, shelf } from "./backup-kit.ts";

let path: Shelf["path"];
let file: Shelf["file"];
let folder: Shelf["folder"];
let remove: Shelf["remove"];
beforeEach(async () => {
  ({ path, file, folder, remove } = await shelf());
});
afterEach(() => remove());

describe("the check", () => {
  it("changes nothing in the file that it looks through", async () => {
    await backUp(await atRest(path), file("b.db"));
    const before = await stat(file("b.db"));
    await checkFile(file("b.db"));
    expect((await stat(file("b.db"))).mtimeMs).toBe(before.mtimeMs);
    expect(await readdir(folder)).not.toContain("b.db-wal");
  });

  it.each([
    [
      "a portion that no movement explains",
      `UPDATE "Lot" SET halves = halves + 1`,
      /add up.*\n.*ledger says/su,
    ],
    ["a portion less than none", `UPDATE "Lot" SET halves = -1`, /add up/u],
    ["a movement too many", `UPDATE "Movement" SET halves = 3 WHERE kind = 'ate'`, /add up/u],
    [
      "a row that refers to nothing",
      `DELETE FROM "Member"`,
      /rows refer to something that is not there/u,
    ],
    [
      "a migration that was cut off",
      `UPDATE "_prisma_migrations" SET finished_at = NULL`,
      /cut off/u,
    ],
    [
      "a migration of a newer version",
      `INSERT INTO "_prisma_migrations" (id, checksum, migration_name, finished_at) VALUES ('x', 'x', '20990101000000_new', 1)`,
      /newer version.*20990101000000_new/u,
    ],
    ["another program's tables", `DROP TABLE "_prisma_migrations"`, /not a database of this bot/u],
  ])("finds %s", async (_what, sql, sentence) => {
    await atRest(path);
    byHand(path, sql);
    expect((await checkFile(path)).faults.join("\n")).toMatch(sentence);
  });

  it("counts what was taken back as the ledger does", async () => {
    await atRest(path);
    byHand(
      path,
      `INSERT INTO "StockChange" (id, memberId, version, causeId, recordedAt) SELECT 'u', memberId, 3, 'u', recordedAt FROM "StockChange" LIMIT 1;
       INSERT INTO "Movement" (changeId, position, kind, batchId, halves, toLotId, at, "on", undoes)
         SELECT 'u', 0, 'undone', batchId, 4, fromLotId, at, "on", 'ate' FROM "Movement" WHERE kind = 'ate';
       UPDATE "Lot" SET halves = 12`,
    );
    expect(await checkFile(path)).toMatchObject({
      faults: [],
      portions: { cooked: 6, corrected: 0, inStock: 6, gone: 0 },
    });
  });

  it("finds damaged pages, a file cut short, and what is no database", async () => {
    await atRest(path);
    await copyFile(path, file("short.db"));
    await truncate(file("short.db"), 8_192);
    const middle = await open(path, "r+");
    await middle.write(Buffer.alloc(12_000, 0xff), 0, 12_000, 8_192);
    await middle.close();
    const outcome = (one: string) =>
      checkFile(one).then(
        ({ faults }) => faults.join(" "),
        (error: unknown) => String(error),
      );
    expect(await outcome(path)).toMatch(/damaged|malformed/u);
    expect(await outcome(file("short.db"))).toMatch(/damaged|malformed/u);
    await writeFile(file("letter"), "Dear all, ".repeat(500));
    expect(await outcome(file("letter"))).toMatch(/not a database/u);
    expect(await outcome(file("nowhere"))).toMatch(/unable to open|directory|exist/u);
  });

  it("says how many migrations an older file still needs", async () => {
    await atRest(path);
    byHand(
      path,
      `DELETE FROM "_prisma_migrations" WHERE migration_name = (SELECT MAX(migration_name) FROM "_prisma_migrations")`,
    );
    expect(await checkFile(path)).toMatchObject({ faults: [], migrationsToCome: 1 });
  });
});
