import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import { PrismaPg } from "@prisma/adapter-pg";
import type { MigrationList } from "@prisma/schema-engine-wasm/schema_engine_bg";
import { NO_FILTERS, withSchemaEngine } from "./schema-engine.ts";
import { connectionSettings, heard, wholeScripts } from "./server-connection.ts";

/** The committed migrations of each database: two folders kept in step by prisma/make-migration.mjs. */
const FOLDERS = {
  sqlite: fileURLToPath(new URL("../../prisma/migrations", import.meta.url)),
  postgresql: fileURLToPath(new URL("../../prisma/postgresql/migrations", import.meta.url)),
} as const;

/** Held while a server's tables are brought up to date. Any number will do if nobody else uses it. */
const MIGRATION_LOCK = 6_212_011;

/** How long a start waits for another process that is at the same migrations. */
const LOCK_WITHIN = "90s";

/** The committed migrations, in the order of their names. An empty list when the folder has none. */
export async function readMigrations(provider: keyof typeof FOLDERS): Promise<MigrationList> {
  const folder = FOLDERS[provider];
  const entries = await readdir(folder, { withFileTypes: true });
  const names = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  const migrationDirectories = await Promise.all(
    names.toSorted().map(async (name) => ({
      path: name,
      migrationFile: {
        path: "migration.sql",
        content: {
          tag: "ok" as const,
          value: await readFile(join(folder, name, "migration.sql"), "utf8"),
        },
      },
    })),
  );
  const lockfile = await readFile(join(folder, "migration_lock.toml"), "utf8");
  return {
    baseDir: folder,
    lockfile: { path: "migration_lock.toml", content: lockfile },
    shadowDbInitScript: "",
    migrationDirectories,
  };
}

type Factory = Parameters<typeof withSchemaEngine>[0];

async function apply(factory: Factory, migrationsList: MigrationList): Promise<readonly string[]> {
  const done = await withSchemaEngine(factory, null, (engine) =>
    engine.applyMigrations({ migrationsList, filters: NO_FILTERS }),
  );
  return done.appliedMigrationNames;
}

/**
 * Brings a SQLite file to the newest schema and returns the names of the migrations it applied (none
 * the second time). Throws when a migration fails or the file's history is not ours.
 */
export async function migrateSqlite(
  path: string,
  migrationsList?: MigrationList,
): Promise<readonly string[]> {
  const list = migrationsList ?? (await readMigrations("sqlite"));
  return apply(new PrismaBetterSqlite3({ url: path }), list);
}

/**
 * Forgets migrations that were begun and not finished. A server makes a migration whole or not at all
 * (`wholeScripts`), so one that was cut off is simply made again.
 */
const FORGET_UNFINISHED = `DO $$ BEGIN
  IF to_regclass('"_prisma_migrations"') IS NOT NULL THEN
    DELETE FROM "_prisma_migrations" WHERE "finished_at" IS NULL;
  END IF;
END $$`;

/**
 * The same for a PostgreSQL database. Processes that start at once take turns: the lock belongs to a
 * transaction, so that it ends with the process that holds it, however that ends.
 */
export async function migratePostgres(
  url: string,
  migrationsList?: MigrationList,
): Promise<readonly string[]> {
  const list = migrationsList ?? (await readMigrations("postgresql"));
  const factory = heard(new PrismaPg(connectionSettings(url)));
  const holder = await factory.connect();
  try {
    const lock = await holder.startTransaction();
    const say = (sql: string) => lock.executeRaw({ sql, args: [], argTypes: [] });
    try {
      await say("SET LOCAL idle_in_transaction_session_timeout = 0");
      await say("SET LOCAL statement_timeout = 0");
      await say(`SET LOCAL lock_timeout = '${LOCK_WITHIN}'`);
      await say(`SELECT pg_advisory_xact_lock(${MIGRATION_LOCK})`);
      await holder.executeRaw({ sql: FORGET_UNFINISHED, args: [], argTypes: [] });
      return await apply(wholeScripts(factory), list);
    } finally {
      await say("ROLLBACK").finally(() => lock.rollback());
    }
  } finally {
    await holder.dispose();
  }
}
