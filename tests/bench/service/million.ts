import { join } from "node:path";
import Database from "better-sqlite3";
import { Temporal } from "temporal-polyfill";
import type { Deliveries } from "../../../src/jobs/ports.ts";
import { openStore } from "../../../src/store/open.ts";
import type { PostgresServer } from "../../src/store/postgres-server.ts";
import { median } from "../measure.ts";
import { claimRate, startBoss } from "./claim.ts";
import { type Fill, fillFile, fillServer } from "./rows.ts";
import { benchIdleSweep } from "./sweep.ts";

const NOW = Temporal.Instant.from("2026-10-25T12:00:00Z");
const DUE = 10_000;
const ROUNDS = 5;
const WARM_UP_BATCH = 50;
/** The sweep claims 8 at a time, one for each of its lanes; the others are for comparison. */
const BATCHES = [
  { batch: 8, isJudged: true },
  { batch: 50, isJudged: false },
  { batch: 200, isJudged: false },
  { batch: 1_000, isJudged: false },
] as const;
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
  const isGood = await benchClaims(server, url, store.deliveries, write);
  await store.close();
  await server.drop(url);
  return idle && isGood;
}

/**
 * Rounds in turn, each of 10,000 rows that have just fallen due, one of each member: every one is a message
 * of its own. The first round of each compiles the code and is not counted.
 */
async function benchClaims(
  server: PostgresServer,
  url: string,
  deliveries: Deliveries,
  write: (line: string) => void,
): Promise<boolean> {
  const boss = await startBoss(server, url, MILLION.waiting);
  let due = NOW.add({ seconds: 3_599 });
  const round = async (batch: number) => {
    due = due.add({ seconds: DUE });
    const ours = await claimRate(deliveries, due, batch);
    await boss.due(DUE);
    return { ours, theirs: await boss.rate(DUE, batch) };
  };
  let isGood = true;
  try {
    await round(WARM_UP_BATCH);
    for (const { batch, isJudged } of BATCHES) {
      const rounds: Awaited<ReturnType<typeof round>>[] = [];
      for (let n = 0; n < ROUNDS; n += 1) rounds.push(await round(batch));
      const ours = median(rounds.map((one) => one.ours));
      const theirs = median(rounds.map((one) => one.theirs));
      const isEnough = ours >= theirs;
      const verdict = isJudged ? `, goal 1: ${isEnough ? "ok" : "missed"}` : "";
      write(
        `claiming ${DUE} due rows among 1,000,000 on PostgreSQL in batches of ${batch}: ${ours.toFixed(0)} rows a second; pg-boss 10 from as large a queue: ${theirs.toFixed(0)}; median of ${ROUNDS} rounds in turn, ratio ${(ours / theirs).toFixed(2)}${verdict}`,
      );
      if (isJudged) isGood = isGood && isEnough;
    }
  } finally {
    await boss.stop();
  }
  return isGood;
}
