import { afterAll, beforeAll } from "vitest";
import { migratePostgres } from "../../../src/store/migrate.ts";
import { storeContract } from "./contract.ts";
import { postgresPlace } from "./postgres-place.ts";
import { type PostgresServer, startPostgres } from "./postgres-server.ts";

let server: PostgresServer;
let prepared = "";
beforeAll(async () => {
  server = await startPostgres();
  prepared = await server.database();
  await migratePostgres(prepared);
}, 60_000);
afterAll(() => server.stop());

storeContract("the store on a PostgreSQL server", () => postgresPlace(server, prepared));
