import { PrismaPg } from "@prisma/adapter-pg";
import { withCleanText } from "./clean-text.ts";
import { type Connection, TRANSACTIONS } from "./connection.ts";
import type { PrismaClient } from "./generated/client.ts";
import { PrismaClient as ServerClient } from "./generated/postgresql/client.ts";
import { migratePostgres } from "./migrate.ts";
import { connectionSettings, heard, WrongEncoding } from "./server-connection.ts";
import { takingFromServer } from "./taking.ts";

/**
 * A client for the server. Prisma makes one client for each database. Both come from the same models,
 * and the one for PostgreSQL can do all that the one for SQLite can, so the store knows only the type
 * of the latter: what it asks for is possible on both.
 */
function makeClient(url: string): PrismaClient {
  const adapter = withCleanText(heard(new PrismaPg(connectionSettings(url))));
  const client: unknown = new ServerClient({ adapter, transactionOptions: TRANSACTIONS });
  return client as PrismaClient;
}

/** Opens the database behind a `postgresql://` address, making its tables as needed. */
export async function connectPostgres(url: string): Promise<Connection> {
  await migratePostgres(url);
  const db = makeClient(url);
  try {
    const [row] = await db.$queryRaw<{ encoding: string }[]>`
      SELECT current_setting('server_encoding') AS "encoding"`;
    if (row?.encoding !== "UTF8") throw new WrongEncoding(`it keeps text as ${row?.encoding}`);
    return { db, taking: takingFromServer(db), close: () => db.$disconnect() };
  } catch (error) {
    await db.$disconnect();
    throw error;
  }
}
