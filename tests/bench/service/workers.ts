import { type ChildProcess, fork } from "node:child_process";
import { once } from "node:events";
import { cpus } from "node:os";
import { fileURLToPath } from "node:url";
import { Temporal } from "temporal-polyfill";
import { z } from "zod";
import { migratePostgres } from "../../../src/store/migrate.ts";
import type { PostgresServer } from "../../src/store/postgres-server.ts";
import { fillServer } from "./rows.ts";

const WORKER = fileURLToPath(new URL("./worker.ts", import.meta.url));
const NOW = Temporal.Instant.from("2026-10-25T12:00:00Z");
const GOAL = 2.5;
/** What a message takes to send: nothing, so that work is all there is; and as long as over a slow network. */
const ROUNDS = [
  { sendMs: 0, members: 2_000 },
  { sendMs: 300, members: 600 },
] as const;

const workerSaid = z.object({ sent: z.array(z.string()), errors: z.number() });

interface Run {
  readonly perSecond: number;
  /** Messages that more than one worker sent, and messages that none did. */
  readonly twice: number;
  readonly missing: number;
}

/** So many processes send one message of two reminders to each member, from one server. */
async function run(
  server: PostgresServer,
  workers: number,
  { sendMs, members }: (typeof ROUNDS)[number],
): Promise<Run> {
  const url = await server.database();
  await migratePostgres(url);
  const due = members * 2;
  await fillServer(server, url, NOW, { groups: 100, members, waiting: due, due });
  const children = await Promise.all(
    Array.from({ length: workers }, async () => {
      const child = fork(WORKER, [url, NOW.toString(), String(sendMs)], {
        execArgv: ["--import", "tsx"],
      });
      await once(child, "message");
      return child;
    }),
  );
  const began = performance.now();
  const said = await Promise.all(children.map(work));
  const seconds = (performance.now() - began) / 1_000;
  await Promise.all(children.map(async (child) => child.exitCode ?? (await once(child, "exit"))));
  const nonces = said.flatMap(({ sent }) => sent);
  const left = await server.ask(url, `SELECT 1 FROM "Reminder" WHERE "state" <> 'sent'`);
  await server.drop(url);
  const errors = said.reduce((sum, one) => sum + one.errors, 0);
  if (errors > 0) throw new Error(`${errors} errors in the sweeps of ${workers} workers`);
  return {
    perSecond: nonces.length / seconds,
    twice: nonces.length - new Set(nonces).size,
    missing: left.length,
  };
}

async function work(child: ChildProcess) {
  child.send("go");
  const [told] = await once(child, "message");
  return workerSaid.parse(told);
}

/** Four processes on one server beside one, each with the whole sweep. */
export async function benchWorkers(
  server: PostgresServer,
  write: (line: string) => void,
): Promise<boolean> {
  let isGood = true;
  for (const round of ROUNDS) {
    const { sendMs } = round;
    const one = await run(server, 1, round);
    const four = await run(server, 4, round);
    const ratio = four.perSecond / one.perSecond;
    const isWhole = [one, four].every(({ twice, missing }) => twice === 0 && missing === 0);
    // Where a message takes no time to send, four processes want four cores and the server's own besides.
    const isFast = ratio >= GOAL || (sendMs === 0 && cpus().length < 5);
    isGood = isGood && isWhole && isFast;
    write(
      `whole sweeps on PostgreSQL, ${sendMs} ms to send: one worker ${one.perSecond.toFixed(0)} messages a second, four ${four.perSecond.toFixed(0)}, ${ratio.toFixed(1)} x, goal ${GOAL} x where the cores allow it (here ${cpus().length}); sent twice ${one.twice + four.twice}, left over ${one.missing + four.missing}: ${isWhole && isFast ? "ok" : "missed"}`,
    );
  }
  return isGood;
}
