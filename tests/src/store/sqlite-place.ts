import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openStore, type Store } from "../../../src/store/open.ts";
import type { Place } from "./kit.ts";

/** A folder of its own with room for one SQLite file. */
export async function sqlitePlace(): Promise<Place & { readonly path: string }> {
  const folder = await mkdtemp(join(tmpdir(), "store-"));
  const path = join(folder, "clerk.db");
  return {
    path,
    open: () => openFile(path),
    remove: () => rm(folder, { recursive: true }),
  };
}

export async function openFile(path: string): Promise<Store> {
  const opened = await openStore(`file:${path}`);
  if (!opened.ok) throw new Error(opened.problem.sentence);
  return opened.value;
}
