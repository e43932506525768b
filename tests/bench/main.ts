import { mkdtemp, rm } from "node:fs/promises";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { Temporal } from "temporal-polyfill";
import { memberId } from "../../shared/ids.ts";
import { benchAllocation } from "./allocation.ts";
import { benchBook } from "./book.ts";
import { benchCard } from "./card.ts";
import { fillReminders, openBench } from "./fill.ts";
import { benchFind } from "./find.ts";
import { median, report, timed } from "./measure.ts";
import { benchRead } from "./read.ts";
import { benchStock } from "./stock.ts";

// The figures that every change is held to: a minute at most. Those of a service that many groups share
// take longer: `npm run bench:service` (service/main.ts).

const write = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

const folder = await mkdtemp(join(tmpdir(), "batch-clerk-bench-"));
write(`Node ${process.version}, ${cpus().length} cores`);
const results: boolean[] = [];

results.push(await benchCard(write));
results.push(await benchFind(write));
results.push(await benchBook(write));
results.push(await benchRead(write));
results.push(await benchAllocation(write));
results.push(await benchStock(folder, write));

// A batch logged through the store, against as many rows in one plain transaction.
const bench = await openBench(join(folder, "log.db"));
// Forty batches are more than a home holds at once; with each the stock grows.
const log = await timed(() => bench.logOne(), 40);
await bench.close();
const plain = new Database(join(folder, "plain.db"));
plain.pragma("journal_mode = WAL");
plain.pragma("synchronous = FULL");
plain.exec("CREATE TABLE row (id INTEGER PRIMARY KEY, text TEXT)");
const insert = plain.prepare("INSERT INTO row (text) VALUES (?)");
const eight = plain.transaction(() => {
  for (let i = 0; i < 8; i += 1) insert.run("x".repeat(200));
});
const rows = await timed(eight, 200);
plain.close();
results.push(
  report(
    {
      what: "a batch logged: stock, ledger and reminders",
      ms: median(log),
      budgetMs: 40,
      reference: { name: "8 rows in one better-sqlite3 transaction", ms: median(rows), times: 300 },
    },
    write,
  ),
);

// The claim of a message among 100,000 waiting rows, of which 100 fall due each hour.
const full = await openBench(join(folder, "sweep.db"));
const now = Temporal.Instant.from("2026-10-25T12:00:00Z");
fillReminders(join(folder, "sweep.db"), memberId(full.memberId), now, {
  waiting: 100_000,
  due: 100,
});
let hour = 0;
const sweep = await timed(async () => {
  const at = now.add({ hours: hour });
  hour += 1;
  const lease = { worker: "bench", now: at, until: at, leaseUntil: at.add({ minutes: 2 }) };
  const { rows } = await full.deliveries.claimNext({ ...lease, limit: 8 });
  if (rows.length < 99) throw new Error(`expected a hundred due rows, got ${rows.length}`);
}, 100);
const raw = new Database(join(folder, "sweep.db"), { readonly: true });
const select = raw.prepare(
  "SELECT * FROM Reminder WHERE state = 'scheduled' AND dueAt <= ? ORDER BY dueAt LIMIT 100",
);
// A hundred rows that no sweep above has taken.
const next = full.instantText(now.add({ hours: hour }));
const bare = await timed(() => {
  if (select.all(next).length < 99) throw new Error("expected a hundred rows that nobody took");
}, 100);
raw.close();
await full.close();
results.push(
  report(
    {
      what: "the claim of a hundred due rows among 100,000 waiting ones",
      ms: median(sweep),
      budgetMs: 25,
      reference: { name: "the bare better-sqlite3 query", ms: median(bare) },
    },
    write,
  ),
);

await rm(folder, { recursive: true, force: true });
// Not 1, which says that the bench itself broke.
if (results.includes(false)) process.exitCode = 2;
