// Writes the next migration: what is missing between the committed migrations and schema.prisma.
//
//   node --import tsx prisma/make-migration.mjs add-food-prices
//
// Makes an empty SQLite file, applies the migrations to it, compares it with the schema, and writes
// prisma/migrations/<UTC time>_<name>/migration.sql. Read the SQL before committing it. Nothing is
// downloaded: the schema engine is the one the bot itself uses (src/store/schema-engine.ts). Run
// `npm run postinstall` as well, so that the client knows the new schema.
import { mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import { migrateSqlite } from "../src/store/migrate.ts";
import { NO_FILTERS, withSchemaEngine } from "../src/store/schema-engine.ts";

const here = fileURLToPath(new URL(".", import.meta.url));
const name = process.argv[2] ?? "";
if (!/^[a-z0-9]+(-[a-z0-9]+)*$/u.test(name)) {
  process.stderr.write("Give the migration a name in small letters, such as add-food-prices.\n");
  process.exit(2);
}

const folder = await mkdtemp(join(tmpdir(), "migration-"));
try {
  const path = join(folder, "current.db");
  await migrateSqlite(path);
  const schema = await readFile(join(here, "schema.prisma"), "utf8");
  const files = [{ path: join(here, "schema.prisma"), content: schema }];
  const adapter = new PrismaBetterSqlite3({ url: path });
  const { stdout } = await withSchemaEngine(adapter, schema, (engine) =>
    engine.diff({
      from: { tag: "schemaDatasource", files, configDir: here },
      to: { tag: "schemaDatamodel", files },
      script: true,
      exitCode: null,
      shadowDatabaseUrl: null,
      filters: NO_FILTERS,
    }),
  );
  if (stdout === null || stdout.includes("This is an empty migration")) {
    process.stdout.write("The migrations already make this schema; nothing written.\n");
  } else {
    const stamp = new Date().toISOString().replace(/\D/gu, "").slice(0, 14);
    const target = join(here, "migrations", `${stamp}_${name}`);
    await mkdir(target, { recursive: true });
    await writeFile(join(target, "migration.sql"), stdout);
    process.stdout.write(`${target}/migration.sql\n`);
  }
} finally {
  await rm(folder, { recursive: true });
}
