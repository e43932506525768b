// Writes the next migration for both databases: what is missing between the committed migrations and
// schema.prisma. Derives the PostgreSQL head of the schema as well.
//
//   node --import tsx prisma/make-migration.mjs add-food-prices
//
// Applies the migrations to an empty SQLite file and to an empty database on a PostgreSQL server of its
// own, compares each with the schema, and writes <UTC time>_<name>/migration.sql under the same name to
// prisma/migrations/ and prisma/postgresql/migrations/. Read the SQL of both before committing it: what
// is changed by hand in one must be changed in the other. Nothing is downloaded: the schema engine is
// the one the bot itself uses (src/store/schema-engine.ts). Run `npm run postinstall` as well, so that
// the clients know the new schema.
import { mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import { PrismaPg } from "@prisma/adapter-pg";
import { ColumnTypeEnum } from "@prisma/driver-adapter-utils";
import { migratePostgres, migrateSqlite } from "../src/store/migrate.ts";
import { NO_FILTERS, withSchemaEngine } from "../src/store/schema-engine.ts";
import { startPostgres } from "../tests/src/store/postgres-server.ts";
import { deriveSecondSchema, orderedByBytes, SECOND_SCHEMA } from "./derive-schema.ts";

const here = fileURLToPath(new URL(".", import.meta.url));
const name = process.argv[2] ?? "";
if (!/^[a-z0-9]+(-[a-z0-9]+)*$/u.test(name)) {
  process.stderr.write("Give the migration a name in small letters, such as add-food-prices.\n");
  process.exit(2);
}

/** The SQL that turns the database behind the adapter into the schema; null when nothing is missing. */
async function missing(adapter, path, schema) {
  const files = [{ path, content: schema }];
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
  return stdout === null || stdout.includes("This is an empty migration") ? null : stdout;
}

async function missingOnSqlite(schema) {
  const folder = await mkdtemp(join(tmpdir(), "migration-"));
  try {
    const path = join(folder, "current.db");
    await migrateSqlite(path);
    return await missing(new PrismaBetterSqlite3({ url: path }), "schema.prisma", schema);
  } finally {
    await rm(folder, { recursive: true });
  }
}

/** PostgreSQL's one-byte type, which its catalogue uses, and text. */
const [CHAR, TEXT] = [18, 25];

/** The driver adapter refuses the one-byte type; the schema engine wants it under its own name. */
function readingCatalogue(factory) {
  const ofOneByte = new Set();
  const connect = async () => {
    const adapter = await factory.connect();
    const pool = adapter.underlyingDriver();
    const [query, queryRaw] = [pool.query.bind(pool), adapter.queryRaw.bind(adapter)];
    pool.query = async (...args) => {
      const result = await query(...args);
      for (const field of result.fields ?? []) {
        if (field.dataTypeID !== CHAR) continue;
        field.dataTypeID = TEXT;
        ofOneByte.add(field.name);
      }
      return result;
    };
    adapter.queryRaw = async (statement) => {
      const { columnNames, columnTypes, rows } = await queryRaw(statement);
      const types = columnTypes.map((type, column) =>
        ofOneByte.has(columnNames[column]) ? ColumnTypeEnum.Character : type,
      );
      return { columnNames, columnTypes: types, rows };
    };
    return adapter;
  };
  const { provider, adapterName } = factory;
  return { provider, adapterName, connect, connectToShadowDb: () => factory.connectToShadowDb() };
}

async function missingOnPostgres(schema) {
  const server = await startPostgres();
  try {
    const url = await server.database();
    await migratePostgres(url);
    const adapter = readingCatalogue(new PrismaPg({ connectionString: url }));
    const sql = await missing(adapter, SECOND_SCHEMA, schema);
    return sql === null ? null : orderedByBytes(sql);
  } finally {
    await server.stop();
  }
}

const schema = await readFile(join(here, "schema.prisma"), "utf8");
const second = deriveSecondSchema(schema);
await writeFile(join(here, SECOND_SCHEMA), second);
const stamp = new Date().toISOString().replace(/\D/gu, "").slice(0, 14);
const found = [
  ["migrations", await missingOnSqlite(schema)],
  ["postgresql/migrations", await missingOnPostgres(second)],
];
for (const [folder, sql] of found) {
  if (sql === null) {
    process.stdout.write(`prisma/${folder} already makes this schema; nothing written.\n`);
    continue;
  }
  const target = join(here, folder, `${stamp}_${name}`);
  await mkdir(target, { recursive: true });
  await writeFile(join(target, "migration.sql"), sql);
  process.stdout.write(`prisma/${folder}/${stamp}_${name}/migration.sql\n`);
}
