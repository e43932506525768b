import { migratePostgres } from "../../../src/store/migrate.ts";
import { openStore, type Store } from "../../../src/store/open.ts";
import type { Place } from "./kit.ts";
import { type PostgresServer, startPostgres } from "./postgres-server.ts";

/** Empties all tables of the bot. Much faster than another database for each test. */
const EMPTY = `DO $$ DECLARE t text; BEGIN
  SET LOCAL session_replication_role = replica;
  FOR t IN SELECT tablename FROM pg_tables WHERE schemaname = 'public' AND tablename NOT LIKE '\\_prisma%'
  LOOP EXECUTE format('DELETE FROM %I', t); END LOOP;
END $$`;

/** The server of a test file, with one migrated database that its tests use in turn. */
export interface PostgresRun {
  readonly server: PostgresServer;
  readonly url: string;
  /** The database without a row in it. */
  place(): Promise<Place & { readonly url: string }>;
}

export async function startRun(): Promise<PostgresRun> {
  const server = await startPostgres();
  const url = await server.database();
  await migratePostgres(url);
  return {
    server,
    url,
    place: async () => {
      await server.ask(url, EMPTY);
      return { url, open: () => openUrl(url), remove: async () => undefined };
    },
  };
}

export async function openUrl(url: string): Promise<Store> {
  const opened = await openStore(url);
  if (!opened.ok) throw new Error(opened.problem.sentence);
  return opened.value;
}
