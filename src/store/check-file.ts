import Database from "better-sqlite3";
import { z } from "zod";
import { readMigrations } from "./migrate.ts";

/** What a database file holds and whether it is whole. */
export interface FileReport {
  /** Sentences; none when the file is sound. */
  readonly faults: readonly string[];
  /** Rows by table, in the order of their names. */
  readonly rows: Readonly<Record<string, number>>;
  /**
   * Portions cooked by the ledger, what counting them anew added (below 0: took off), and where the lots
   * say they are or the ledger that they went.
   */
  readonly portions: Readonly<Record<"cooked" | "corrected" | "inStock" | "gone", number>>;
  /** Migrations that the bot will apply when it starts on this file. */
  readonly migrationsToCome: number;
}

/** One fault of each kind is enough to tell; a damaged file can have millions. */
const SHOWN = 3;

/** Files of before half portions hold whole ones under another name: a copy can be older than the bot. */
interface Counted {
  readonly column: "halves" | "portions";
  readonly perPortion: 1 | 2;
}

function counted(db: Database.Database): Counted {
  const columns = texts(db.pragma(`table_info("Lot")`), "name");
  return columns.includes("halves")
    ? { column: "halves", perPortion: 2 }
    : { column: "portions", perPortion: 1 };
}

/** Net of what was taken back, of one kind of movement; the same rule as the ledger's balance. */
const net = (kind: string, column: string): string =>
  `SUM(CASE WHEN "kind" = '${kind}' THEN "${column}" WHEN "undoes" = '${kind}' THEN -"${column}" ELSE 0 END)`;

/** What came in by counting anew, less what went out: a taken back correction runs the other way. */
const corrected = (column: string): string =>
  `SUM(CASE WHEN "kind" <> 'corrected' AND COALESCE("undoes", '') <> 'corrected' THEN 0
            WHEN "toLotId" IS NULL THEN -"${column}" ELSE "${column}" END)`;

const balances = (column: string): string => `
  SELECT b."id" AS "id", COALESCE(m."cooked", 0) AS "cooked",
         COALESCE(m."corrected", 0) AS "corrected", COALESCE(l."standing", 0) AS "standing",
         COALESCE(m."ate" + m."gave" + m."threw", 0) AS "gone",
         COALESCE(MIN(m."ate", m."gave", m."threw", l."least"), 0) AS "least"
    FROM "Batch" b
    LEFT JOIN (SELECT "batchId", ${net("cooked", column)} AS "cooked",
                      ${corrected(column)} AS "corrected", ${net("ate", column)} AS "ate",
                      ${net("gave", column)} AS "gave", ${net("threw away", column)} AS "threw"
                 FROM "Movement" GROUP BY "batchId") m ON m."batchId" = b."id"
    LEFT JOIN (SELECT "batchId", SUM("${column}") AS "standing", MIN("${column}") AS "least"
                 FROM "Lot" GROUP BY "batchId") l ON l."batchId" = b."id"`;

/** Lots that hold something else than what the ledger moved in and out of them. */
const lotsOff = (column: string): string => `
  SELECT l."id" FROM "Lot" l
   WHERE l."${column}" <>
         COALESCE((SELECT SUM("${column}") FROM "Movement" WHERE "toLotId" = l."id"), 0)
       - COALESCE((SELECT SUM("${column}") FROM "Movement" WHERE "fromLotId" = l."id"), 0)`;

const balance = z.object({
  id: z.string(),
  cooked: z.number(),
  corrected: z.number(),
  standing: z.number(),
  gone: z.number(),
  least: z.number(),
});
const migration = z.object({ name: z.string(), finished: z.string().or(z.number()).nullable() });

/**
 * Looks through a database file of the bot: the pages, the references between rows, the migrations, and
 * whether every portion is accounted for. Changes nothing. Throws when there is no such file, or when it
 * is no database.
 */
export async function checkFile(path: string): Promise<FileReport> {
  const { migrationDirectories } = await readMigrations("sqlite");
  const known = migrationDirectories.map((directory) => directory.path);
  const db = new Database(path, { readonly: true, fileMustExist: true, timeout: 10_000 });
  try {
    const pages = texts(db.pragma("integrity_check", { simple: false }), "integrity_check");
    // Nothing else that a damaged file says can be relied upon.
    if (pages.join() !== "ok") return nothing([`It is damaged: ${few(pages)}.`]);
    if (!tables(db).includes("_prisma_migrations")) {
      return nothing(["It is not a database of this bot."]);
    }
    const applied = z.array(migration).parse(
      db
        .prepare(
          `SELECT "migration_name" AS "name", "finished_at" AS "finished" FROM "_prisma_migrations"
            WHERE "rolled_back_at" IS NULL ORDER BY "migration_name"`,
        )
        .all(),
    );
    const faults = [...migrationFaults(applied, known), ...keyFaults(db)];
    if (faults.length > 0) return { ...nothing(faults), rows: rowCounts(db) };
    return {
      ...stockReport(db),
      rows: rowCounts(db),
      migrationsToCome: known.length - applied.length,
    };
  } finally {
    db.close();
  }
}

function nothing(faults: readonly string[]): FileReport {
  return {
    faults,
    rows: {},
    portions: { cooked: 0, corrected: 0, inStock: 0, gone: 0 },
    migrationsToCome: 0,
  };
}

function texts(rows: unknown, column: string): readonly string[] {
  return z
    .array(z.record(z.string(), z.unknown()))
    .parse(rows)
    .map((row) => String(row[column]));
}

function few(list: readonly string[]): string {
  const more = list.length > SHOWN ? `, and ${list.length - SHOWN} more` : "";
  return `${list.slice(0, SHOWN).join(", ")}${more}`;
}

function tables(db: Database.Database): readonly string[] {
  return texts(
    db.prepare(`SELECT "name" FROM sqlite_schema WHERE type = 'table' ORDER BY "name"`).all(),
    "name",
  );
}

function rowCounts(db: Database.Database): FileReport["rows"] {
  const own = tables(db).filter((name) => /^[A-Z]\w*$/u.test(name));
  return Object.fromEntries(
    own.map((name) => [name, Number(db.prepare(`SELECT count(*) FROM "${name}"`).pluck().get())]),
  );
}

function migrationFaults(
  applied: readonly z.output<typeof migration>[],
  known: readonly string[],
): readonly string[] {
  const halfDone = applied.filter(({ finished }) => finished === null).map(({ name }) => name);
  const strange = applied.map(({ name }) => name).filter((name) => !known.includes(name));
  return [
    ...(halfDone.length > 0 ? [`A change of its tables was cut off: ${few(halfDone)}.`] : []),
    ...(strange.length > 0
      ? [`A newer version of the bot has changed its tables: ${few(strange)}. Use that version.`]
      : []),
  ];
}

function keyFaults(db: Database.Database): readonly string[] {
  const loose = texts(db.pragma("foreign_key_check"), "table");
  return loose.length > 0
    ? [`${loose.length} rows refer to something that is not there: in ${few([...new Set(loose)])}.`]
    : [];
}

function stockReport(db: Database.Database): Pick<FileReport, "faults" | "portions"> {
  const { column, perPortion } = counted(db);
  const batches = z.array(balance).parse(db.prepare(balances(column)).all());
  const off = batches.filter((b) => b.cooked + b.corrected !== b.standing + b.gone || b.least < 0);
  const lots = texts(db.prepare(lotsOff(column)).all(), "id");
  const sum = (key: "cooked" | "corrected" | "standing" | "gone"): number =>
    batches.reduce((total, one) => total + one[key], 0) / perPortion;
  return {
    faults: [
      ...(off.length > 0
        ? [`Portions of these batches do not add up: ${few(off.map(({ id }) => id))}.`]
        : []),
      ...(lots.length > 0 ? [`These lots are not what the ledger says: ${few(lots)}.`] : []),
    ],
    portions: {
      cooked: sum("cooked"),
      corrected: sum("corrected"),
      inStock: sum("standing"),
      gone: sum("gone"),
    },
  };
}
