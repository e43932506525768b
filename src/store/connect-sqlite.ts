import { statSync } from "node:fs";
import { appendFile, mkdir } from "node:fs/promises";
import { dirname } from "node:path";
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import { withCleanText } from "./clean-text.ts";
import type { Connection } from "./connection.ts";
import { TRANSACTIONS } from "./connection.ts";
import { takeFile } from "./file-owner.ts";
import { PrismaClient } from "./generated/client.ts";
import { migrateSqlite } from "./migrate.ts";
import { oneAtATime } from "./one-at-a-time.ts";
import { takingFromFile } from "./taking.ts";

/** How long a statement waits for another process's lock; the adapter blocks the event loop meanwhile. */
const BUSY_TIMEOUT_MS = 500;

/** Every commit reaches the disk: a sent reminder that is forgotten would be sent twice. */
const ON_CONNECT =
  "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;";

/**
 * Opens the file, making it, its folder and its tables as needed. Throws `FileTaken` when another
 * process has it open.
 */
export async function connectSqlite(path: string): Promise<Connection> {
  await mkdir(dirname(path), { recursive: true });
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory()) throw new Error("it is a folder");
  const release = takeFile(path);
  try {
    // A new one is its owner's only, as backups are: members tell the bot who eats and what they must not.
    await appendFile(path, "", { mode: 0o600 });
    await migrateSqlite(path);
    const file = new PrismaBetterSqlite3({ url: path, timeout: BUSY_TIMEOUT_MS });
    const adapter = oneAtATime(withCleanText(file), ON_CONNECT);
    const db = new PrismaClient({ adapter, transactionOptions: TRANSACTIONS });
    await db.$connect();
    return {
      db,
      taking: takingFromFile(db),
      close: () => db.$disconnect().finally(release),
    };
  } catch (error) {
    release();
    throw error;
  }
}
