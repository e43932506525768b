import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import {
  deriveSecondSchema,
  orderedByBytes,
  SECOND_SCHEMA,
} from "../../../prisma/derive-schema.ts";
import { readMigrations } from "../../../src/store/migrate.ts";

const FOLDER = fileURLToPath(new URL("../../../prisma/", import.meta.url));
const committed = (path: string) => readFile(join(FOLDER, path), "utf8");

describe("the two heads of the models", () => {
  test("the committed PostgreSQL schema is what is derived from schema.prisma", async () => {
    const first = await committed("schema.prisma");
    expect(await committed(SECOND_SCHEMA)).toBe(deriveSecondSchema(first));
  });

  test("differ in the provider and the place of the client, and in nothing else", async () => {
    const lines = (text: string) => text.split("\n").filter((line) => line.trim() !== "");
    const first = new Set(lines(await committed("schema.prisma")));
    const other = lines(await committed(SECOND_SCHEMA)).filter((line) => !first.has(line));
    const told = other.filter((line) => !line.startsWith("//")).map((line) => line.trim());
    expect(told).toEqual([
      'output              = "../../src/store/generated/postgresql"',
      'provider = "postgresql"',
    ]);
  });

  test("a schema without what is to be replaced is refused, not passed on half derived", () => {
    expect(() => deriveSecondSchema('datasource db {\n  provider = "mysql"\n}')).toThrow(
      "say once",
    );
  });

  test("each migration of one has its counterpart of the same name in the other", async () => {
    const [one, other] = [await readMigrations("sqlite"), await readMigrations("postgresql")];
    const names = (list: typeof one) => list.migrationDirectories.map(({ path }) => path);
    expect(names(one).length).toBeGreaterThan(0);
    expect(names(other)).toEqual(names(one));
    const folders = await readdir(join(FOLDER, "postgresql", "migrations"));
    expect(folders.length).toBe(names(one).length + 1);
  });

  test("text columns of new SQL are ordered by bytes, once", () => {
    const sql =
      'ADD COLUMN     "a" TEXT NOT NULL,\n    "b" TEXT,\n    "c" TEXT COLLATE "C" NOT NULL';
    const once = orderedByBytes(sql);
    expect(once.match(/COLLATE "C"/gu)).toHaveLength(3);
    expect(orderedByBytes(once)).toBe(once);
  });
});
