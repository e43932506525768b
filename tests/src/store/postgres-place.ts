import { openStore, type Store } from "../../../src/store/open.ts";
import type { Place } from "./kit.ts";
import type { PostgresServer } from "./postgres-server.ts";

/** A fresh database on the server, a copy of `prepared` (a migrated one, say) when that is given. */
export async function postgresPlace(
  server: PostgresServer,
  prepared?: string,
): Promise<Place & { readonly url: string }> {
  const url = await server.database(prepared);
  return {
    url,
    open: () => openUrl(url),
    remove: () => server.drop(url),
  };
}

export async function openUrl(url: string): Promise<Store> {
  const opened = await openStore(url);
  if (!opened.ok) throw new Error(opened.problem.sentence);
  return opened.value;
}
