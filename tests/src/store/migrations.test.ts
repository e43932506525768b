import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import Database from "better-sqlite3";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { checkFile } from "../../../src/store/check-file.ts";
import { migrateSqlite, readMigrations } from "../../../src/store/migrate.ts";
import { NO_FILTERS, withSchemaEngine } from "../../../src/store/schema-engine.ts";

let folder = "";
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "migrations-"));
});
afterEach(() => rm(folder, { recursive: true }));

const SCHEMA = fileURLToPath(new URL("../../../prisma/schema.prisma", import.meta.url));

/** Makes a file straight from the schema, without the migrations. */
async function pushSchema(path: string): Promise<void> {
  const content = await readFile(SCHEMA, "utf8");
  const schema = { files: [{ path: "schema.prisma", content }] };
  await withSchemaEngine(new PrismaBetterSqlite3({ url: path }), content, (engine) =>
    engine.schemaPush({ schema, force: false, filters: NO_FILTERS }),
  );
}

/** Runs SQL on a file with the driver alone. */
function ask(path: string, sql: string): readonly unknown[] {
  const db = new Database(path);
  try {
    return db.prepare(sql).all();
  } finally {
    db.close();
  }
}

/** Tables, columns, foreign keys and indexes as SQLite itself reports them, in a fixed order. */
function catalogue(path: string): string {
  const tables = `SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE '\\_prisma%' ESCAPE '\\'`;
  const parts = ["table_xinfo", "foreign_key_list", "index_list"].map((pragma) =>
    ask(path, `SELECT t.name AS "table", p.* FROM (${tables}) t, pragma_${pragma}(t.name) p`),
  );
  const indexes = ask(
    path,
    `SELECT tbl_name, name, sql FROM sqlite_schema WHERE type = 'index' AND sql IS NOT NULL`,
  );
  const rows = [...parts, indexes].map((part) => part.map((row) => JSON.stringify(row)).toSorted());
  return JSON.stringify(rows, null, 1);
}

describe("migrations", () => {
  test("make the same tables, keys and indexes as the schema itself", async () => {
    const [migrated, straight] = [join(folder, "m.db"), join(folder, "s.db")];
    await migrateSqlite(migrated);
    await pushSchema(straight);
    const made = catalogue(migrated);
    expect(made).toContain("Reminder_state_dueAt_idx");
    expect(made).toBe(catalogue(straight));
  });

  test("are applied once: the second time changes nothing and keeps the rows", async () => {
    const path = join(folder, "twice.db");
    const { migrationDirectories } = await readMigrations("sqlite");
    const names = migrationDirectories.map((migration) => migration.path);
    expect(names.length).toBeGreaterThan(0);
    expect(await migrateSqlite(path)).toEqual(names);
    const before = catalogue(path);
    const db = new Database(path);
    db.prepare(`INSERT INTO "Setting" ("key", "value") VALUES ('k', 'v')`).run();
    db.close();
    expect(await migrateSqlite(path)).toEqual([]);
    expect(catalogue(path)).toBe(before);
    expect(ask(path, `SELECT * FROM "Setting"`)).toEqual([{ key: "k", value: "v" }]);
  });

  test("a migration that fails is reported and not passed over the next time", async () => {
    const path = join(folder, "bad.db");
    const list = await readMigrations("sqlite");
    const value = "CREATE TABLE good (x); CREATE TABEL bad (x);";
    const bad = {
      path: "20990101000000_bad",
      migrationFile: { path: "migration.sql", content: { tag: "ok" as const, value } },
    };
    const broken = { ...list, migrationDirectories: [...list.migrationDirectories, bad] };
    await expect(migrateSqlite(path, broken)).rejects.toThrow("20990101000000_bad");
    await expect(migrateSqlite(path)).rejects.toThrow("20990101000000_bad");
  });

  test("portions that an older bot counted whole are the same in halves, and nothing is lost", async () => {
    const path = join(folder, "halves.db");
    const list = await readMigrations("sqlite");
    const at = list.migrationDirectories.findIndex((one) => one.path.endsWith("_half-portions"));
    const older = { ...list, migrationDirectories: list.migrationDirectories.slice(0, at) };
    await migrateSqlite(path, older);
    const db = new Database(path);
    const when = "2026-10-11T18:00:00.000+00:00";
    db.exec(`
      INSERT INTO "Group" (id, name, zone) VALUES ('g', 'n', 'Etc/UTC');
      INSERT INTO "Member" (id, groupId, userId, name, zone, morning, evening, quietFrom, quietUntil, deliverTo)
        VALUES ('m', 'g', 'u', 'n', 'z', '', '', '', '', 'channel');
      INSERT INTO "Recipe" (id, groupId, title, titleFold, searchFold, portions, tags)
        VALUES ('r', 'g', 't', 't', 't', 1, '[]');
      INSERT INTO "Revision" (id, recipeId, number, causeId, publishedById, publishedAt, document, sourceText)
        VALUES ('v', 'r', 1, 'c', 'm', '${when}', '', '');
      INSERT INTO "Batch" (id, memberId, revisionId, title, portionWord, portionsCooked, cookedAt, cookedOn, portionG, keeping, perPortion)
        VALUES ('b', 'm', 'v', 't', 'p', 5, '${when}', '', 1, '', '');
      INSERT INTO "Lot" (id, memberId, batchId, place, portions, since, sinceAt, usedDays)
        VALUES ('l', 'm', 'b', 'fridge', 3, '', '${when}', 0);
      INSERT INTO "StockChange" (id, memberId, version, causeId, recordedAt, undoesId)
        VALUES ('s', 'm', 1, 's', '${when}', NULL), ('t', 'm', 2, 't', '${when}', NULL);
      INSERT INTO "Movement" (changeId, position, kind, batchId, portions, fromLotId, toLotId, at, "on")
        VALUES ('s', 0, 'cooked', 'b', 5, NULL, 'l', '${when}', ''), ('t', 0, 'ate', 'b', 2, 'l', NULL, '${when}', '');`);
    db.close();
    const portions = { cooked: 5, corrected: 0, inStock: 3, gone: 2 };
    // The check of a copy does not wait for the bot to bring it up to date.
    expect(await checkFile(path)).toMatchObject({ faults: [], portions });
    await migrateSqlite(path);
    expect(await checkFile(path)).toMatchObject({ faults: [], portions, migrationsToCome: 0 });
    expect(ask(path, `SELECT id, halves FROM "Lot"`)).toEqual([{ id: "l", halves: 6 }]);
    expect(ask(path, `SELECT kind, halves, reason FROM "Movement" ORDER BY kind`)).toEqual([
      { kind: "ate", halves: 4, reason: null },
      { kind: "cooked", halves: 10, reason: null },
    ]);
  });

  test("every foreign key has an index that begins with its columns", async () => {
    const path = join(folder, "keys.db");
    await migrateSqlite(path);
    const uncovered = ask(
      path,
      `SELECT t.name AS "table", f."from" AS "column"
         FROM sqlite_schema t, pragma_foreign_key_list(t.name) f
        WHERE t.type = 'table' AND f.seq = 0
          AND NOT EXISTS (SELECT 1 FROM pragma_index_list(t.name) l, pragma_index_info(l.name) i
                           WHERE i.seqno = 0 AND i.name = f."from")`,
    );
    expect(uncovered).toEqual([]);
  });

  test("erasing a group takes everything of it and nothing of another, leaving no loose ends", async () => {
    const path = join(folder, "erase.db");
    await migrateSqlite(path);
    const db = new Database(path);
    db.pragma("foreign_keys = ON");
    const at = "2026-10-11T18:00:00.000+00:00";
    for (const g of ["a", "b"]) {
      db.exec(`
        INSERT INTO "Group" (id, name, zone) VALUES ('${g}', 'n', 'Etc/UTC');
        INSERT INTO "Member" (id, groupId, userId, name, zone, morning, evening, quietFrom, quietUntil, deliverTo)
          VALUES ('m${g}', '${g}', 'u', 'n', 'z', '', '', '', '', 'channel');
        INSERT INTO "Recipe" (id, groupId, title, titleFold, searchFold, portions, tags)
          VALUES ('r${g}', '${g}', 't', 't', 't', 1, '[]');
        INSERT INTO "Revision" (id, recipeId, number, causeId, publishedById, publishedAt, document, sourceText)
          VALUES ('v${g}', 'r${g}', 1, 'c${g}', 'm${g}', '${at}', '', '');
        INSERT INTO "Batch" (id, memberId, revisionId, title, portionWord, portionsCooked, cookedAt, cookedOn, portionG, keeping, perPortion)
          VALUES ('b${g}', 'm${g}', 'v${g}', 't', 'p', 1, '${at}', '', 1, '', '');
        INSERT INTO "Lot" (id, memberId, batchId, place, halves, since, sinceAt, usedDays)
          VALUES ('l${g}', 'm${g}', 'b${g}', 'fridge', 1, '', '${at}', 0);
        INSERT INTO "StockChange" (id, memberId, version, causeId, recordedAt, undoesId)
          VALUES ('s${g}', 'm${g}', 1, 's${g}', '${at}', NULL), ('t${g}', 'm${g}', 2, 't${g}', '${at}', 's${g}');
        INSERT INTO "Movement" (changeId, position, kind, batchId, halves, toLotId, at, "on")
          VALUES ('s${g}', 0, 'cooked', 'b${g}', 1, 'l${g}', '${at}', '');
        INSERT INTO "MealRule" (id, memberId, position, name, weekdays, time, portions)
          VALUES ('q${g}', 'm${g}', 0, '', '[]', '', 1);
        INSERT INTO "Reminder" (id, memberId, key, kind, dueAt, helpsUntil, about)
          VALUES ('d${g}', 'm${g}', 'k', '', '${at}', '${at}', '');`);
    }
    db.prepare(`DELETE FROM "Group" WHERE id = 'a'`).run();
    const tables = ["Member", "Recipe", "Revision", "Batch", "Lot", "Movement", "MealRule"];
    const left = [...tables, "Reminder", "Group"].map((table) =>
      db.prepare(`SELECT count(*) FROM "${table}"`).pluck().get(),
    );
    expect(left).toEqual(left.map(() => 1));
    expect(db.prepare(`SELECT count(*) FROM "StockChange"`).pluck().get()).toBe(2);
    expect(db.pragma("foreign_key_check")).toEqual([]);
    db.close();
  });
});
