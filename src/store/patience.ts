import { setTimeout as pause } from "node:timers/promises";
import { z } from "zod";
import { Prisma } from "./generated/client.ts";

/** Pauses between tries when another process holds the file, milliseconds. */
const PAUSES_MS = [20, 60, 150, 400];

/** Prisma: "Operations timed out". The SQLite adapter says so when the file is locked. */
const BUSY = "P1008";
/** Prisma: unique constraint failed. */
const NOT_UNIQUE = "P2002";
/** Prisma: a row that the write depends on was not found. */
const NOT_FOUND = "P2025";
/** Prisma: write conflict or deadlock; only a server with several connections says so. */
const WRITE_CONFLICT = "P2034";

function codeOf(error: unknown): string | null {
  return error instanceof Prisma.PrismaClientKnownRequestError ? error.code : null;
}

/** The write did not happen because what it was decided on does not stand any more. */
export function isConflict(error: unknown): boolean {
  const code = codeOf(error);
  return code === NOT_UNIQUE || code === NOT_FOUND;
}

/** A statement in SQL of our own says the same in another form. */
const isWriteConflict = z.object({
  code: z.literal("P2010"),
  meta: z.object({
    driverAdapterError: z.object({
      cause: z.object({ kind: z.literal("TransactionWriteConflict") }),
    }),
  }),
});

function isPassing(error: unknown): boolean {
  const code = codeOf(error);
  return code === BUSY || code === WRITE_CONFLICT || isWriteConflict.safeParse(error).success;
}

/** Tries again, a few times with growing pauses, while the database is held by somebody else. */
export async function patiently<T>(work: () => Promise<T>): Promise<T> {
  for (const ms of PAUSES_MS) {
    try {
      return await work();
    } catch (error) {
      if (!isPassing(error)) throw error;
    }
    await pause(ms);
  }
  return await work();
}
