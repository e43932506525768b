import type { Stocks } from "../../commands/kit/ports.ts";
import { batchId, lotId } from "../../shared/ids.ts";
import type { PrismaClient } from "./generated/client.ts";
import { toBatch, toChange, toLot, WITH_MOVEMENTS } from "./rows.ts";
import { record } from "./stock-record.ts";

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
      const row = await db.stockChange.findFirst({
        where: { memberId, undoesId: null, undoneBy: null },
        orderBy: { version: "desc" },
        include: WITH_MOVEMENTS,
      });
      if (row === null) return null;
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
