import { join } from "node:path";
import { Temporal } from "temporal-polyfill";
import { groupId } from "../../shared/ids.ts";
import { manualClock } from "../../src/clock.ts";
import { compose } from "../../src/compose.ts";
import { silentLog } from "../../src/log.ts";
import { counter } from "../kit/stock.ts";
import { median, report } from "./measure.ts";
import { fillHome, fillOthers, fillPast, type Pattern } from "./stock-fill.ts";

const RECIPE = `Bench barley pot
Makes 8 portions

- 800 g lamb, diced
- 400 g pearl barley

Steps
1. Simmer for 60 minutes.

Keeps 3 days in the fridge
Freezes 3 months
`;

interface Home {
  readonly path: string;
  readonly pattern: Pattern;
  readonly ask: (path: string, raw?: Record<string, string>) => Promise<void>;
  readonly close: () => Promise<void>;
}

/** The whole bot on a file: a group, a recipe, a member with lunches and one batch. */
async function openHome(path: string): Promise<Home> {
  const app = await compose({
    face: "terminal",
    databaseUrl: `file:${path}`,
    clock: manualClock(Temporal.Instant.from("2026-10-11T18:00:00Z")),
    log: silentLog,
    newId: counter("id"),
  });
  if (!app.ok) throw new Error(app.problem.sentence);
  const { bot, stores } = app.value;
  const request = counter("request");
  const asked = () => ({
    groupId: "g",
    groupName: "g",
    requestId: request(),
    actor: { userId: "u", name: "Ines", roleIds: [], isManager: true },
  });
  const ask = async (what: string, raw: Parameters<typeof bot.command>[2] = {}) =>
    bot.command(asked(), what.split(" "), raw);
  const file = { name: "recipe.txt", bytes: new TextEncoder().encode(RECIPE) };
  const draft = await ask("recipe publish", { file });
  const publish = draft.buttons.find(({ label }) => label.startsWith("Publish"));
  await bot.press(asked(), publish?.id ?? "", []);
  await ask("meals", { days: "Mon-Fri", time: "12:30" });
  await ask("batch log", { recipe: "Bench barley pot", cooked: "17:30", split: "all freezer" });
  const member = await stores.members.open(groupId("g"), "u", "Ines");
  const { lots } = await stores.stocks.load(member.id);
  const { changes } = await stores.stocks.ledger(member.id);
  const [lot, change] = [lots[0], changes[0]];
  if (lot === undefined || change === undefined) throw new Error("the bench's batch is not there");
  return {
    path,
    pattern: { memberId: member.id, batchId: lot.batchId, lotId: lot.id, changeId: change.id },
    ask: async (what, raw) => {
      const { heading } = await ask(what, raw);
      if (!/^(?:Next|Ate|First)/u.test(heading)) throw new Error(`unexpected answer: ${heading}`);
    },
    close: () => app.value.close(),
  };
}

const RUNS = 60;
const WARMUP = 5;

/** Milliseconds of the same command in two homes by turns, so that a busy moment slows both. */
async function byTurns(
  a: Home,
  b: Home,
  run: (home: Home) => Promise<void>,
): Promise<[number, number]> {
  const took: [number[], number[]] = [[], []];
  for (let turn = 0; turn < RUNS + WARMUP; turn += 1) {
    for (const [at, home] of [a, b].entries()) {
      const start = performance.now();
      await run(home);
      if (turn >= WARMUP) took[at === 0 ? 0 : 1].push(performance.now() - start);
    }
  }
  return [median(took[0]), median(took[1])];
}

const LOTS = 30;
const PAST = 5_000;
const MEMBERS = 10_000;

/** `/stock` and `/batch ate`, the whole command through the store: with a long past, and among many. */
export async function benchStock(folder: string, write: (line: string) => void): Promise<boolean> {
  const [alone, old, crowded] = [
    await openHome(join(folder, "alone.db")),
    await openHome(join(folder, "old.db")),
    await openHome(join(folder, "crowded.db")),
  ];
  for (const home of [alone, old, crowded]) fillHome(home.path, home.pattern, LOTS);
  fillPast(old.path, old.pattern, PAST);
  fillOthers(crowded.path, crowded.pattern, MEMBERS - 1, LOTS);
  const stock = (home: Home) => home.ask("stock");
  const ate = (home: Home) => home.ask("batch ate", { portions: "½" });
  const [newStock, oldStock] = await byTurns(alone, old, stock);
  const [loneStock, crowdStock] = await byTurns(alone, crowded, stock);
  const [loneAte, crowdAte] = await byTurns(alone, crowded, ate);
  for (const home of [alone, old, crowded]) await home.close();
  const among = `among ${MEMBERS} members with ${LOTS} lots each`;
  return [
    report(
      {
        what: `/stock of ${LOTS} lots after ${PAST} movements`,
        ms: oldStock,
        budgetMs: 50,
        reference: { name: "the same without a past", ms: newStock },
      },
      write,
    ),
    report(
      {
        what: `/stock ${among}`,
        ms: crowdStock,
        budgetMs: 1.5 * loneStock,
        reference: { name: "the same alone in the database", ms: loneStock },
      },
      write,
    ),
    report(
      {
        what: `/batch ate ${among}`,
        ms: crowdAte,
        budgetMs: 1.5 * loneAte,
        reference: { name: "the same alone in the database", ms: loneAte },
      },
      write,
    ),
  ].every((ok) => ok);
}
