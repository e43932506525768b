import { afterAll, beforeAll, describe } from "vitest";
import { storeContract } from "./contract.ts";
import { migrationsOnServer } from "./postgres/migrations.ts";
import { movingToServer } from "./postgres/moving.ts";
import { openingOnServer } from "./postgres/opening.ts";
import { racesOnServer } from "./postgres/races.ts";
import { ticksOnServer } from "./postgres/ticks.ts";
import { workersOnServer } from "./postgres/workers.ts";
import { type PostgresRun, startRun } from "./postgres-place.ts";

// One file, so that one server serves the whole run.
let run: PostgresRun | null = null;
const given = (): PostgresRun => {
  if (run === null) throw new Error("the server runs only while its tests do");
  return run;
};
beforeAll(async () => {
  run = await startRun();
}, 60_000);
afterAll(() => run?.server.stop());

storeContract("the store on a PostgreSQL server", () => given().place(), true);

describe("a PostgreSQL server", () => {
  migrationsOnServer(given);
  openingOnServer(given);
  movingToServer(given);
  racesOnServer(given);
  workersOnServer(given);
  ticksOnServer(given);
});
