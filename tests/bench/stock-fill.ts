import Database from "better-sqlite3";

// Rows copied inside the file from those that the bot itself wrote, so that they are what it would write.

/** The id columns of a copy, as SQL of its number `i` and its pattern `t`. */
type Changed = Readonly<Record<string, string>>;

function copies(
  db: Database.Database,
  table: string,
  id: string,
  count: number,
  changed: Changed,
): void {
  const columns = db
    .prepare<[], { name: string }>(`SELECT name FROM pragma_table_info('${table}')`)
    .all()
    .map(({ name }) => name);
  const key =
    table === "Movement" ? `t."changeId" = '${id}' AND t."position" = 0` : `t."id" = '${id}'`;
  db.exec(`
    WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i + 1 < ${count})
    INSERT INTO "${table}" (${columns.map((name) => `"${name}"`).join(", ")})
    SELECT ${columns.map((name) => changed[name] ?? `t."${name}"`).join(", ")}
      FROM n, "${table}" t WHERE ${key}`);
}

export interface Pattern {
  readonly memberId: string;
  readonly batchId: string;
  readonly lotId: string;
  readonly changeId: string;
}

function within<T>(path: string, work: (db: Database.Database) => T): T {
  const db = new Database(path);
  try {
    return db.transaction(work)(db);
  } finally {
    db.close();
  }
}

/** Gives the member `lots` lots of four portions in all, in batches of three lots each. */
export function fillHome(path: string, pattern: Pattern, lots: number): void {
  within(path, (db) => {
    copies(db, "Batch", pattern.batchId, Math.ceil(lots / 3), { id: `'home' || i` });
    copies(db, "Lot", pattern.lotId, lots, {
      id: `'home' || i`,
      batchId: `'home' || (i / 3)`,
      halves: "8",
    });
  });
}

/** Gives the member a past: so many movements, ten to a batch, all of it eaten. */
export function fillPast(path: string, pattern: Pattern, movements: number): void {
  within(path, (db) => {
    const version = db
      .prepare(`SELECT "stockVersion" FROM "Member" WHERE "id" = ?`)
      .pluck()
      .get(pattern.memberId);
    copies(db, "Batch", pattern.batchId, Math.ceil(movements / 10), { id: `'past' || i` });
    copies(db, "Lot", pattern.lotId, Math.ceil(movements / 10), {
      id: `'past' || i`,
      batchId: `'past' || i`,
      halves: "0",
    });
    copies(db, "StockChange", pattern.changeId, movements, {
      id: `'past' || i`,
      causeId: `'past' || i`,
      version: `${version} + 1 + i`,
    });
    copies(db, "Movement", pattern.changeId, movements, {
      changeId: `'past' || i`,
      batchId: `'past' || (i / 10)`,
      kind: "'ate'",
      fromLotId: `'past' || (i / 10)`,
      toLotId: "NULL",
    });
    db.prepare(`UPDATE "Member" SET "stockVersion" = "stockVersion" + ? WHERE "id" = ?`).run(
      movements,
      pattern.memberId,
    );
  });
}

/** Other members of the group, each with as many lots and a movement for each of them. */
export function fillOthers(path: string, pattern: Pattern, members: number, lots: number): void {
  within(path, (db) => {
    const whose = `'o' || (i / ${lots})`;
    const all = members * lots;
    copies(db, "Member", pattern.memberId, members, {
      id: `'o' || i`,
      userId: `'o' || i`,
      stockVersion: `${lots}`,
    });
    copies(db, "Batch", pattern.batchId, all / 3, {
      id: `'o' || i`,
      memberId: `'o' || (i / ${lots / 3})`,
    });
    copies(db, "Lot", pattern.lotId, all, {
      id: `'o' || i`,
      memberId: whose,
      batchId: `'o' || (i / 3)`,
    });
    copies(db, "StockChange", pattern.changeId, all, {
      id: `'o' || i`,
      causeId: `'o' || i`,
      memberId: whose,
      version: `i % ${lots} + 1`,
    });
    copies(db, "Movement", pattern.changeId, all, {
      changeId: `'o' || i`,
      batchId: `'o' || (i / 3)`,
      toLotId: `'o' || i`,
    });
  });
}
