import { randomBytes } from "node:crypto";
import { mkdir } from "node:fs/promises";
import { dirname, resolve } from "node:path";
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import type { Stores } from "../../commands/kit/ports.ts";
import { fail, type Outcome, ok } from "../../shared/outcome.ts";
import type { Deliveries } from "../jobs/ports.ts";
import { prismaDeliveries } from "./deliveries.ts";
import { PrismaClient } from "./generated/client.ts";
import { prismaGroupFoods } from "./group-foods.ts";
import { prismaGroups } from "./groups.ts";
import { prismaMembers } from "./members.ts";
import { migrateSqlite } from "./migrate.ts";
import { oneAtATime } from "./one-at-a-time.ts";
import { prismaRecipes } from "./recipes.ts";
import { prismaMeals, prismaReminders } from "./reminders.ts";
import { prismaSettings, type Settings } from "./settings.ts";
import { prismaStocks } from "./stocks.ts";
import { prismaTargets } from "./targets.ts";

export interface Store {
  readonly stores: Stores;
  readonly deliveries: Deliveries;
  readonly settings: Settings;
  /** Waits for what is being written, then lets the file go. */
  close(): Promise<void>;
}

/** Why a store could not be opened, each ending in what to do about it. */
export type OpenProblem =
  | { readonly code: "unsupported database"; readonly sentence: string }
  | { readonly code: "cannot open the file"; readonly sentence: string };

export interface OpenOptions {
  /** Ids for members and reminders: 12 characters of [0-9a-z]. By default unguessable. */
  readonly newId?: () => string;
}

/** How long a statement waits for another process's lock; the adapter blocks the event loop meanwhile. */
const BUSY_TIMEOUT_MS = 500;

/** Every commit reaches the disk: a sent reminder that is forgotten would be sent twice. */
const ON_CONNECT =
  "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;";

/** How long a transaction waits for its turn, and may take, milliseconds. */
const TRANSACTIONS = { maxWait: 10_000, timeout: 20_000 };

function unguessableId(): string {
  const digits = BigInt(`0x${randomBytes(8).toString("hex")}`).toString(36);
  return digits.padStart(12, "0").slice(-12);
}

function assemble(db: PrismaClient, newId: () => string): Store {
  return {
    stores: {
      groups: prismaGroups(db),
      members: prismaMembers(db, newId),
      recipes: prismaRecipes(db),
      foods: prismaGroupFoods(db),
      targets: prismaTargets(db),
      stocks: prismaStocks(db, newId),
      meals: prismaMeals(db),
      reminders: prismaReminders(db, newId),
    },
    deliveries: prismaDeliveries(db),
    settings: prismaSettings(db),
    close: () => db.$disconnect(),
  };
}

async function openSqlite(path: string, newId: () => string): Promise<Store> {
  await mkdir(dirname(path), { recursive: true });
  await migrateSqlite(path);
  const adapter = oneAtATime(
    new PrismaBetterSqlite3({ url: path, timeout: BUSY_TIMEOUT_MS }),
    ON_CONNECT,
  );
  const db = new PrismaClient({ adapter, transactionOptions: TRANSACTIONS });
  await db.$connect();
  return assemble(db, newId);
}

/**
 * Opens the store behind `file:` and a path, making the folder, the file and its tables as needed. Only
 * one process may use a file at a time. Failures are values with a sentence for whoever runs the bot.
 */
export async function openStore(
  databaseUrl: string,
  options: OpenOptions = {},
): Promise<Outcome<Store, OpenProblem>> {
  const path = /^file:(?<path>[^?#]+)$/u.exec(databaseUrl)?.groups?.["path"];
  if (path === undefined) {
    return fail({
      code: "unsupported database",
      sentence:
        "DATABASE_URL must be file: and the path of a file, such as file:./data/batch-clerk.db; postgresql:// comes later.",
    });
  }
  try {
    return ok(await openSqlite(resolve(path), options.newId ?? unguessableId));
  } catch (error) {
    const why = error instanceof Error ? (error.message.split("\n")[0] ?? "") : String(error);
    return fail({
      code: "cannot open the file",
      sentence: `The database file ${resolve(path)} cannot be opened (${why}). Check that the folder can be written to, that the file is one of this bot's, and that no other copy of the bot is running; or name another file in DATABASE_URL.`,
    });
  }
}
