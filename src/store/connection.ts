import type { PrismaClient } from "./generated/client.ts";
import type { Taking } from "./taking.ts";

/** An open database, whichever it is. */
export interface Connection {
  readonly db: PrismaClient;
  readonly taking: Taking;
  /** Waits for what is being written, then lets the database go. */
  close(): Promise<void>;
}

/** How long a transaction waits for its turn, and may take, milliseconds. */
export const TRANSACTIONS = { maxWait: 10_000, timeout: 20_000 } as const;
