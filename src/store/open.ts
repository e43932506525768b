import { randomBytes } from "node:crypto";
import { resolve } from "node:path";
import type { Stores } from "../../commands/kit/ports.ts";
import { fail, type Outcome, ok } from "../../shared/outcome.ts";
import type { Deliveries, Upkeep } from "../jobs/ports.ts";
import { connectPostgres } from "./connect-postgres.ts";
import { connectSqlite } from "./connect-sqlite.ts";
import type { Connection } from "./connection.ts";
import { prismaDeliveries } from "./deliveries.ts";
import { prismaDrafts } from "./drafts.ts";
import { prismaGroupFoods } from "./group-foods.ts";
import { prismaGroups } from "./groups.ts";
import { prismaKeepingWords } from "./keeping-words.ts";
import { prismaMembers } from "./members.ts";
import { fileProblem, type OpenProblem, serverProblem, unsupported } from "./open-problems.ts";
import { prismaRecipes } from "./recipes.ts";
import { prismaMeals, prismaReminders } from "./reminders.ts";
import { prismaSettings, type Settings } from "./settings.ts";
import { prismaStocks } from "./stocks.ts";
import { prismaTargets } from "./targets.ts";
import { prismaUndelivered } from "./undelivered.ts";
import { prismaUpkeep } from "./upkeep.ts";

export type { OpenProblem } from "./open-problems.ts";

export interface Store {
  readonly stores: Stores;
  readonly deliveries: Deliveries;
  readonly settings: Settings;
  readonly upkeep: Upkeep;
  /** Waits for what is being written, then lets the file or the server go. */
  close(): Promise<void>;
}

export interface OpenOptions {
  /** Ids for members and reminders: 12 characters of [0-9a-z]. By default unguessable. */
  readonly newId?: () => string;
}

function unguessableId(): string {
  const digits = BigInt(`0x${randomBytes(8).toString("hex")}`).toString(36);
  return digits.padStart(12, "0").slice(-12);
}

function assemble({ db, taking, close }: Connection, newId: () => string): Store {
  return {
    stores: {
      groups: prismaGroups(db),
      members: prismaMembers(db, newId),
      recipes: prismaRecipes(db),
      keepingWords: prismaKeepingWords(db),
      drafts: prismaDrafts(db),
      foods: prismaGroupFoods(db),
      targets: prismaTargets(db),
      stocks: prismaStocks(db, newId),
      meals: prismaMeals(db),
      reminders: prismaReminders(db, newId),
      undelivered: prismaUndelivered(db),
    },
    deliveries: prismaDeliveries(db, taking),
    settings: prismaSettings(db),
    upkeep: prismaUpkeep(db),
    close,
  };
}

/**
 * Connects to the database an address names: `file:` and a path, or `postgresql://`. What is missing is
 * made: folder, file, tables. Failures are values with a sentence for whoever runs the bot.
 */
export async function connect(databaseUrl: string): Promise<Outcome<Connection, OpenProblem>> {
  if (/^postgres(ql)?:\/\//iu.test(databaseUrl)) {
    try {
      return ok(await connectPostgres(databaseUrl));
    } catch (error) {
      return fail(serverProblem(databaseUrl, error));
    }
  }
  const path = /^file:(?<path>[^?#]+)$/u.exec(databaseUrl)?.groups?.["path"];
  if (path === undefined) return fail(unsupported());
  try {
    return ok(await connectSqlite(resolve(path)));
  } catch (error) {
    return fail(fileProblem(resolve(path), error));
  }
}

/**
 * Opens the store behind an address. A file belongs to one process at a time; any number may open one
 * server.
 */
export async function openStore(
  databaseUrl: string,
  options: OpenOptions = {},
): Promise<Outcome<Store, OpenProblem>> {
  const connected = await connect(databaseUrl);
  if (!connected.ok) return connected;
  return ok(assemble(connected.value, options.newId ?? unguessableId));
}
