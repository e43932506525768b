import type { Stocks } from "../../commands/kit/ports.ts";
import { batchId, lotId } from "../../shared/ids.ts";
import type { PrismaClient } from "./generated/client.ts";
import { toBatch, toChange, toLot, WITH_MOVEMENTS } from "./rows.ts";
import { record } from "./stock-record.ts";

/** Changes looked at in one go; more are needed only after so many undos in a row. */
const LOOK_BACK = 16;

/**
 * The newest change that is neither undone nor an undo. Looked for backwards by version: an undo is always
 * newer than what it takes back, and asking the database for "not undone" would go through everybody's undos.
 */
async function lastStanding(db: PrismaClient, memberId: string): Promise<string | null> {
  const undone = new Set<string>();
  for (let version: number | undefined; ; ) {
    const rows: { id: string; version: number; undoesId: string | null }[] =
      await db.stockChange.findMany({
        where: { memberId, ...(version !== undefined && { version: { lt: version } }) },
        orderBy: { version: "desc" },
        take: LOOK_BACK,
        select: { id: true, version: true, undoesId: true },
      });
    for (const { id, undoesId } of rows) {
      if (undoesId !== null) undone.add(undoesId);
      else if (!undone.has(id)) return id;
    }
    if (rows.length < LOOK_BACK) return null;
    version = rows.at(-1)?.version;
  }
}

export function prismaStocks(db: PrismaClient, newId: () => string): Stocks {
  return {
    load: async (memberId) => {
      // The version first: if the stock moves between the two reads, what is decided on it will not stand.
      const { stockVersion } = await db.member.findUniqueOrThrow({
        where: { id: memberId },
        select: { stockVersion: true },
      });
      const rows = await db.lot.findMany({
        where: { memberId, halves: { gt: 0 } },
        orderBy: [{ batch: { cookedAt: "asc" } }, { sinceAt: "asc" }, { id: "asc" }],
        include: { batch: true },
      });
      const batches = new Map(rows.map(({ batch }) => [batch.id, batch]));
      return {
        memberId,
        version: stockVersion,
        batches: [...batches.values()].map(toBatch),
        lots: rows.map(toLot),
      };
    },

    findLot: async (id) => {
      const row = await db.lot.findUnique({ where: { id }, include: { batch: true } });
      return row === null ? null : { lot: toLot(row), batch: toBatch(row.batch) };
    },

    everyLot: async (memberId) => {
      const rows = await db.lot.findMany({
        where: { memberId },
        orderBy: [{ sinceAt: "desc" }, { id: "asc" }],
        select: { id: true, batchId: true },
      });
      return rows.map(({ id, batchId: batch }) => ({ id: lotId(id), batchId: batchId(batch) }));
    },

    lastChange: async (memberId) => {
      const id = await lastStanding(db, memberId);
      if (id === null) return null;
      const row = await db.stockChange.findUniqueOrThrow({
        where: { id },
        include: WITH_MOVEMENTS,
      });
      const change = toChange(row);
      const ids = change.movements.flatMap(({ from, to }) => [from, to]);
      const lots = await db.lot.findMany({
        where: { id: { in: ids.filter((id) => id !== null) } },
        orderBy: [{ sinceAt: "asc" }, { id: "asc" }],
        include: { batch: true },
      });
      const batches = new Map(lots.map(({ batch }) => [batch.id, batch]));
      return { change, lots: lots.map(toLot), batches: [...batches.values()].map(toBatch) };
    },

    findByCause: async (causeId) => {
      const row = await db.stockChange.findUnique({ where: { causeId }, include: WITH_MOVEMENTS });
      return row === null ? null : toChange(row);
    },

    record: (plan) => record(db, plan, newId),

    ledger: async (memberId) => {
      const batches = await db.batch.findMany({
        where: { memberId },
        orderBy: [{ cookedAt: "asc" }, { id: "asc" }],
      });
      const changes = await db.stockChange.findMany({
        where: { memberId },
        orderBy: { version: "asc" },
        include: WITH_MOVEMENTS,
      });
      return { batches: batches.map(toBatch), changes: changes.map(toChange) };
    },
  };
}
