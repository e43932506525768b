import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import type { MigrationList } from "@prisma/schema-engine-wasm/schema_engine_bg";
import { NO_FILTERS, withSchemaEngine } from "./schema-engine.ts";

const FOLDER = fileURLToPath(new URL("../../prisma/migrations", import.meta.url));

/** The committed migrations, in the order of their names. An empty list when the folder has none. */
export async function readMigrations(folder: string = FOLDER): Promise<MigrationList> {
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

/**
 * Brings a SQLite file to the newest schema and returns the names of the migrations it applied (none
 * the second time). Throws when a migration fails or the file's history is not ours.
 */
export async function migrateSqlite(
  path: string,
  migrationsList?: MigrationList,
): Promise<readonly string[]> {
  const list = migrationsList ?? (await readMigrations());
  const adapter = new PrismaBetterSqlite3({ url: path });
  const done = await withSchemaEngine(adapter, null, (engine) =>
    engine.applyMigrations({ migrationsList: list, filters: NO_FILTERS }),
  );
  return done.appliedMigrationNames;
}
