import Database from "better-sqlite3";

/** Columns that hold an id of this database, and so differ from copy to copy. */
const IDS = /^(id|causeId|undoesId|userId|\w+Id)$/u;

/** Owners first. */
const TABLES = [
  "Group",
  "Member",
  "Recipe",
  "Revision",
  "Batch",
  "Lot",
  "StockChange",
  "Movement",
  "MealRule",
  "Reminder",
] as const;

/**
 * Copies everything of the groups in a file, which nobody has open, until there are so many times as much.
 * The ids of copy n begin with n and a point; those within documents stay, for nobody follows them.
 */
export function copyGroups(path: string, times: number): void {
  const file = new Database(path);
  file.pragma("synchronous = OFF");
  file.exec("BEGIN");
  for (const table of TABLES) {
    const columns = file
      .prepare<[string], { name: string }>("SELECT name FROM pragma_table_info(?)")
      .all(table)
      .map(({ name }) => name);
    const copied = columns.map((name) =>
      IDS.test(name) ? `n.i || '.' || t."${name}"` : `t."${name}"`,
    );
    file.exec(
      `WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i + 1 < ${times})
       INSERT INTO "${table}" (${columns.map((name) => `"${name}"`).join(", ")})
         SELECT ${copied.join(", ")} FROM n, "${table}" AS t WHERE ${times} > 1`,
    );
  }
  file.exec("COMMIT; ANALYZE;");
  file.pragma("wal_checkpoint(TRUNCATE)");
  file.close();
}
