import { readFile } from "node:fs/promises";
import { PrismaPg } from "@prisma/adapter-pg";
import Database from "better-sqlite3";
import { describe, expect, test } from "vitest";
import { SECOND_SCHEMA } from "../../../../prisma/derive-schema.ts";
import { migratePostgres, migrateSqlite, readMigrations } from "../../../../src/store/migrate.ts";
import { NO_FILTERS, withSchemaEngine } from "../../../../src/store/schema-engine.ts";
import type { PostgresRun } from "../postgres-place.ts";
import type { PostgresServer } from "../postgres-server.ts";
import { sqlitePlace } from "../sqlite-place.ts";

const OURS = `n.nspname = 'public' AND c.relname NOT LIKE '\\_prisma%'`;

/** Columns, indexes and foreign keys as the server reports them, without how its text is ordered. */
const DETAILS = `
  SELECT c.relname AS "table", 'column' AS sort, a.attname AS name,
         format_type(a.atttypid, a.atttypmod) || ' ' || a.attnotnull || ' '
           || coalesce(pg_get_expr(d.adbin, d.adrelid), '') AS what
    FROM pg_attribute a JOIN pg_class c ON c.oid = a.attrelid AND c.relkind = 'r'
    JOIN pg_namespace n ON n.oid = c.relnamespace
    LEFT JOIN pg_attrdef d ON d.adrelid = c.oid AND d.adnum = a.attnum
   WHERE ${OURS} AND a.attnum > 0 AND NOT a.attisdropped
  UNION ALL
  SELECT c.relname, 'index', i.relname, replace(pg_get_indexdef(i.oid), ' COLLATE "C"', '')
    FROM pg_index x JOIN pg_class i ON i.oid = x.indexrelid JOIN pg_class c ON c.oid = x.indrelid
    JOIN pg_namespace n ON n.oid = c.relnamespace WHERE ${OURS}
  UNION ALL
  SELECT c.relname, 'key', k.conname, pg_get_constraintdef(k.oid)
    FROM pg_constraint k JOIN pg_class c ON c.oid = k.conrelid
    JOIN pg_namespace n ON n.oid = c.relnamespace WHERE ${OURS} AND k.contype IN ('f', 'p')
  ORDER BY 1, 2, 3`;

/** The SQL that makes the committed schema in an empty database, without the migrations. */
async function schemaSql(url: string): Promise<string> {
  const path = new URL(`../../../../prisma/${SECOND_SCHEMA}`, import.meta.url);
  const content = await readFile(path, "utf8");
  const files = [{ path: "schema.prisma", content }];
  const { stdout } = await withSchemaEngine(
    new PrismaPg({ connectionString: url }),
    content,
    (engine) =>
      engine.diff({
        from: { tag: "empty" },
        to: { tag: "schemaDatamodel", files },
        script: true,
        exitCode: null,
        filters: NO_FILTERS,
      }),
  );
  return stdout ?? "";
}

type Shape = Record<string, readonly string[]>;

/** What both databases can say of themselves: columns, and which names its indexes have. */
async function shapeOnServer(server: PostgresServer, url: string): Promise<Shape> {
  const rows = await server.ask(url, DETAILS);
  const shape: Record<string, string[]> = {};
  for (const row of rows) {
    const name = String(row["name"]);
    const isColumn = row["sort"] === "column";
    // A primary key is an index of its own here and not there.
    if (!isColumn && (row["sort"] !== "index" || name.endsWith("_pkey"))) continue;
    const said = isColumn ? `${name} ${String(row["what"]).includes(" true ")}` : name;
    add(shape, String(row["table"]), said);
  }
  return sorted(shape);
}

function shapeOnFile(path: string): Shape {
  const db = new Database(path, { readonly: true });
  const rows = db
    .prepare(
      `SELECT t.name AS "table", c.name || CASE WHEN c."notnull" THEN ' true' ELSE ' false' END AS said
         FROM sqlite_schema t, pragma_table_xinfo(t.name) c WHERE t.type = 'table'
       UNION ALL SELECT tbl_name, name FROM sqlite_schema WHERE type = 'index' AND sql IS NOT NULL`,
    )
    .all() as { table: string; said: string }[];
  db.close();
  const shape: Record<string, string[]> = {};
  for (const { table, said } of rows) {
    if (!table.startsWith("_prisma")) add(shape, table, said);
  }
  return sorted(shape);
}

function add(shape: Record<string, string[]>, table: string, said: string): void {
  shape[table] = [...(shape[table] ?? []), said];
}

function sorted(shape: Record<string, string[]>): Shape {
  return Object.fromEntries(Object.entries(shape).map(([table, said]) => [table, said.sort()]));
}

function migration(path: string, value: string) {
  return { path, migrationFile: { path: "migration.sql", content: { tag: "ok" as const, value } } };
}

export function migrationsOnServer(given: () => PostgresRun): void {
  describe("its migrations", () => {
    test("make the same columns, keys and indexes as the schema itself", async () => {
      const { server, url } = given();
      const straight = await server.database();
      await server.ask(straight, await schemaSql(straight));
      const made = await server.ask(url, DETAILS);
      expect(JSON.stringify(made)).toContain("Reminder_state_dueAt_idx");
      expect(made).toEqual(await server.ask(straight, DETAILS));
    });

    test("make the same tables, columns and indexes as those of a file", async () => {
      const { server, url } = given();
      const file = await sqlitePlace();
      await migrateSqlite(file.path);
      expect(await shapeOnServer(server, url)).toEqual(shapeOnFile(file.path));
      await file.remove();
    });

    test("order every text by its bytes, whatever the language of the server", async () => {
      const { server, url } = given();
      const columns = await server.ask(
        url,
        `SELECT table_name, column_name, collation_name FROM information_schema.columns
          WHERE table_schema = 'public' AND data_type = 'text' AND table_name NOT LIKE '\\_prisma%'`,
      );
      expect(columns.length).toBeGreaterThan(50);
      expect(columns.filter((column) => column["collation_name"] !== "C")).toEqual([]);
      const [locale] = await server.ask(url, "SELECT 'b' < 'C' AS by_language");
      expect(locale).toEqual({ by_language: true });
    });

    test("every foreign key has an index that begins with its columns", async () => {
      const { server, url } = given();
      const uncovered = await server.ask(
        url,
        `SELECT k.conname FROM pg_constraint k WHERE k.contype = 'f' AND NOT EXISTS (
           SELECT 1 FROM pg_index x WHERE x.indrelid = k.conrelid AND x.indkey[0] = k.conkey[1])`,
      );
      expect(uncovered).toEqual([]);
    });

    test("are applied once, by one of many processes that start at the same time", async () => {
      const url = await given().server.database();
      const { migrationDirectories } = await readMigrations("postgresql");
      const names = migrationDirectories.map(({ path }) => path);
      const applied = await Promise.all(Array.from({ length: 5 }, () => migratePostgres(url)));
      expect(applied.filter((list) => list.length > 0)).toEqual([names]);
      expect(await migratePostgres(url)).toEqual([]);
    });

    test("one that takes its time is waited for, not taken for one that was cut off", async () => {
      const { server } = given();
      const url = await server.database();
      const list = await readMigrations("postgresql");
      const slow = "CREATE TABLE slow (x int); SELECT pg_sleep(0.5);";
      const only = { ...list, migrationDirectories: [migration("20260101000000_slow", slow)] };
      const first = migratePostgres(url, only);
      await expect
        .poll(() => server.ask(url, "SELECT 1 FROM pg_stat_activity WHERE wait_event = 'PgSleep'"))
        .toHaveLength(1);
      expect(await migratePostgres(url, only)).toEqual([]);
      expect(await first).toEqual(["20260101000000_slow"]);
    });

    test("one that was cut off is made again", async () => {
      const { server } = given();
      const url = await server.database();
      const names = await migratePostgres(url);
      const list = await readMigrations("postgresql");
      const next = migration("20990101000000_next", "CREATE TABLE next (x int);");
      const more = { ...list, migrationDirectories: [...list.migrationDirectories, next] };
      // What a process that was killed during the script leaves behind.
      await server.ask(
        url,
        `INSERT INTO "_prisma_migrations" ("id", "checksum", "migration_name") VALUES ('i', 'c', '20990101000000_next')`,
      );
      expect(await migratePostgres(url, more)).toEqual(["20990101000000_next"]);
      expect(await migratePostgres(url, more)).toEqual([]);
      expect(names.length).toBeGreaterThan(0);
    });

    test("one that fails leaves nothing of itself, is named, and is not passed over", async () => {
      const { server } = given();
      const url = await server.database();
      const list = await readMigrations("postgresql");
      const bad = migration(
        "20990101000000_bad",
        "CREATE TABLE good (x int); CREATE TABEL bad ();",
      );
      const broken = { ...list, migrationDirectories: [...list.migrationDirectories, bad] };
      for (const _ of [1, 2]) {
        await expect(migratePostgres(url, broken)).rejects.toThrow("20990101000000_bad");
        expect(await server.ask(url, `SELECT to_regclass('good') AS made`)).toEqual([
          { made: null },
        ]);
      }
      const mended = migration("20990101000000_bad", "CREATE TABLE good (x int);");
      const again = { ...list, migrationDirectories: [...list.migrationDirectories, mended] };
      expect(await migratePostgres(url, again)).toEqual(["20990101000000_bad"]);
    });

    test("a database with tables of somebody else is left alone", async () => {
      const { server } = given();
      const url = await server.database();
      await server.ask(url, "CREATE TABLE theirs (x int)");
      await expect(migratePostgres(url)).rejects.toThrow("not empty");
      expect(await server.ask(url, `SELECT to_regclass('"Group"') AS made`)).toEqual([
        { made: null },
      ]);
    });
  });
}
