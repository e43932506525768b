import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { Temporal } from "temporal-polyfill";
import { memberId } from "../../shared/ids.ts";
import { resolveKeeping } from "../../shared/keeping/resolve.ts";
import { nutritionOf } from "../../shared/nutrition/portion.ts";
import { readRecipe } from "../../shared/recipe/read.ts";
import { scaleRecipe } from "../../shared/recipe/scale.ts";
import { loadFoodBook } from "../../src/foods/load.ts";
import { fillReminders, openBench } from "./fill.ts";
import { median, report, timed } from "./measure.ts";

const write = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

const folder = await mkdtemp(join(tmpdir(), "batch-clerk-bench-"));
write(`Node ${process.version}, ${cpus().length} cores`);
const results: boolean[] = [];

// The card: scale, sum, keep. From text that has been read, as a command has it.
const foods = loadFoodBook();
const [file] = (await readdir("prisma/seed/recipes")).sort();
const read = readRecipe(await readFile(join("prisma/seed/recipes", file ?? ""), "utf8"), foods);
if (!read.ok) throw new Error("the seed recipe cannot be read");
const { recipe } = read.value;
const card = await timed(() => {
  const scaled = scaleRecipe(recipe, foods, {
    by: { kind: "portions", portions: 8 },
    without: [],
    swaps: {},
  });
  if (!scaled.ok) throw new Error("the seed recipe cannot be scaled");
  nutritionOf(scaled.value, foods, { cookedWeightG: null });
  resolveKeeping(recipe, foods, []);
}, 500);
const copy = await timed(() => structuredClone(recipe), 500);
results.push(
  report(
    {
      what: "a card's figures in the core",
      ms: median(card),
      budgetMs: 1,
      reference: { name: "structuredClone of the recipe", ms: median(copy) },
    },
    write,
  ),
);

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
      reference: { name: "8 rows in one better-sqlite3 transaction", ms: median(rows) },
    },
    write,
  ),
);

// One sweep's look at 100,000 waiting rows of which 100 are due.
const full = await openBench(join(folder, "sweep.db"));
const now = Temporal.Instant.from("2026-10-25T12:00:00Z");
fillReminders(join(folder, "sweep.db"), memberId(full.memberId), now, {
  waiting: 100_000,
  due: 100,
});
const sweep = await timed(async () => {
  const due = await full.deliveries.due(now, now, 200);
  if (due.length !== 100) throw new Error(`expected 100 due rows, got ${due.length}`);
}, 100);
const raw = new Database(join(folder, "sweep.db"), { readonly: true });
const select = raw.prepare(
  "SELECT * FROM Reminder WHERE state = 'scheduled' AND dueAt <= ? ORDER BY dueAt LIMIT 200",
);
const bare = await timed(() => select.all(full.instantText(now)), 100);
raw.close();
await full.close();
results.push(
  report(
    {
      what: "a sweep over 100,000 waiting rows, 100 due",
      ms: median(sweep),
      budgetMs: 25,
      reference: { name: "the bare better-sqlite3 query", ms: median(bare) },
    },
    write,
  ),
);

await rm(folder, { recursive: true, force: true });
if (results.includes(false)) process.exitCode = 1;
