import { rm } from "node:fs/promises";
import { dirname, join } from "node:path";
import Database from "better-sqlite3";
import type { Lot } from "../../../shared/stock/types.ts";
import { cooked, eating, type World, world } from "./kit.ts";
import { openFile, sqlitePlace } from "./sqlite-place.ts";

/** A folder with room for a database and its backups. */
export interface Shelf {
  /** Where the database is. */
  readonly path: string;
  /** A file of this name beside it. */
  readonly file: (name: string) => string;
  readonly folder: string;
  readonly remove: () => Promise<void>;
}

export async function shelf(): Promise<Shelf> {
  const { path } = await sqlitePlace();
  const folder = dirname(path);
  return {
    path,
    folder,
    file: (name) => join(folder, name),
    remove: () => rm(folder, { recursive: true }),
  };
}

/** Runs SQL on a file with the driver alone, as somebody might by hand. */
export function byHand(path: string, sql: string): void {
  const db = new Database(path);
  db.pragma("foreign_keys = OFF");
  db.exec(sql);
  db.close();
}

/** A member who cooked six and ate two, and is to be reminded. */
export async function stocked(path: string): Promise<World> {
  const w = await world(await openFile(path));
  const lot = await cooked(w);
  await w.store.stores.stocks.record(eating(w, lot, 2, "eat", 2));
  return w;
}

/** The same in a file that no process has open. */
export async function atRest(path: string): Promise<string> {
  const { store } = await stocked(path);
  await store.close();
  return path;
}

/** The one lot that the member has. */
export async function lotOf(w: World): Promise<Lot> {
  const { lots } = await w.store.stores.stocks.load(w.member.id);
  const [lot] = lots;
  if (lot === undefined) throw new Error("nothing is in stock");
  return lot;
}
