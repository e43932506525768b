import { join } from "node:path";
import Database from "better-sqlite3";
import { Temporal } from "temporal-polyfill";
import { openStore } from "../../../src/store/open.ts";
import type { PostgresServer } from "../../src/store/postgres-server.ts";
import { bossRate, claimRate } from "./claim.ts";
import { type Fill, fillFile, fillServer } from "./rows.ts";
import { benchIdleSweep } from "./sweep.ts";

const NOW = Temporal.Instant.from("2026-10-25T12:00:00Z");
/** An hour later 10,000 of them are due, one of each member: every one is a message of its own. */
const LATER = NOW.add({ seconds: 3_600 + 9_999 });
const DUE = 10_000;
const MILLION: Fill = { groups: 1_000, members: 10_000, waiting: 1_000_000, due: 0 };

async function opened(url: string) {
  const store = await openStore(url);
  if (!store.ok) throw new Error(store.problem.sentence);
  return store.value;
}

/** A sweep with nothing due among a million waiting reminders in a file. */
export async function benchMillionInFile(
  folder: string,
  write: (line: string) => void,
): Promise<boolean> {
  const path = join(folder, "million.db");
  await (await opened(`file:${path}`)).close();
  fillFile(path, NOW, MILLION);
  const store = await opened(`file:${path}`);
  const raw = new Database(path, { readonly: true });
  const select = raw.prepare(
    "SELECT * FROM Reminder WHERE state = 'scheduled' AND dueAt <= ? ORDER BY dueAt LIMIT 200",
  );
  const query = () => select.all("2026-10-25T12:00:00.000+00:00");
  const ok = await benchIdleSweep(
    "an idle sweep over 1,000,000 waiting rows, SQLite",
    store,
    NOW,
    { name: "one bare better-sqlite3 query", query },
    write,
  );
  raw.close();
  await store.close();
  return ok;
}

/** The same on a server; then 10,000 of them fall due and are claimed, beside pg-boss. */
export async function benchMillionOnServer(
  server: PostgresServer,
  write: (line: string) => void,
): Promise<boolean> {
  const url = await server.database();
  await (await opened(url)).close();
  await fillServer(server, url, NOW, MILLION);
  const store = await opened(url);
  const client = await server.connect(url);
  const sql = `SELECT * FROM "Reminder" WHERE "state" = 'scheduled' AND "dueAt" <= $1 ORDER BY "dueAt" LIMIT 200`;
  const idle = await benchIdleSweep(
    "an idle sweep over 1,000,000 waiting rows, PostgreSQL",
    store,
    NOW,
    { name: "one bare pg query", query: () => client.query(sql, [NOW.toString()]) },
    write,
  );
  await client.end();
  const ours = await claimRate(store.deliveries, LATER);
  await store.close();
  const theirs = await bossRate(server, url, { waiting: MILLION.waiting, due: DUE });
  await server.drop(url);
  const isGood = ours >= theirs;
  write(
    `claiming ${DUE} due rows among 1,000,000 on PostgreSQL: ${ours.toFixed(0)} rows a second; pg-boss 10 from as large a queue, in batches of 200: ${theirs.toFixed(0)}; ratio ${(ours / theirs).toFixed(2)}, goal 1: ${isGood ? "ok" : "missed"}`,
  );
  return idle && isGood;
}
