import { mkdtemp, rm } from "node:fs/promises";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { startPostgres } from "../../src/store/postgres-server.ts";
import { benchGrowth } from "./growth.ts";
import { benchLoad } from "./load.ts";
import { benchMillionInFile, benchMillionOnServer } from "./million.ts";
import { benchSender } from "./sender.ts";
import { benchWorkers } from "./workers.ts";

// The figures of a service that many groups share: some minutes, `npm run bench:service`. A word after
// it runs what bears that name only: `npm run bench:service load`.

const write = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

const folder = await mkdtemp(join(tmpdir(), "batch-clerk-bench-"));

async function onServer(
  work: (server: Awaited<ReturnType<typeof startPostgres>>) => Promise<boolean>,
): Promise<boolean> {
  const server = await startPostgres();
  try {
    return await work(server);
  } finally {
    await server.stop();
  }
}

const BENCHES: Readonly<Record<string, () => Promise<boolean>>> = {
  file: () => benchMillionInFile(folder, write),
  server: () => onServer((server) => benchMillionOnServer(server, write)),
  workers: () => onServer((server) => benchWorkers(server, write)),
  growth: () => benchGrowth(folder, write),
  sender: () => benchSender(folder, write),
  load: () => benchLoad(folder, write),
};

const [, , ...asked] = process.argv;
write(
  `Node ${process.version}, ${cpus().length} cores; load of the machine before: ${loadavg()[0]?.toFixed(1)}`,
);
let isGood = true;
for (const [name, bench] of Object.entries(BENCHES)) {
  if (asked.length > 0 && !asked.includes(name)) continue;
  if (!(await bench())) isGood = false;
}
await rm(folder, { recursive: true, force: true });
// Said outright: the server's package ends a process that has nothing left to do with 0.
process.exit(isGood ? 0 : 1);
