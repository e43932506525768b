import type { Upkeep } from "../jobs/ports.ts";
import { WAITS_FOR_MEMBER } from "./deliveries.ts";
import { toColumn, toInstant } from "./documents.ts";
import type { Prisma, PrismaClient } from "./generated/client.ts";
import { patiently } from "./patience.ts";

/**
 * Rows read, and at most deleted, at a time. Deleting touches a page of each of the indexes, anywhere in
 * the file: 250 rows of half a million stopped the whole bot for 150 ms, so it takes fewer.
 */
const PIECE = 50;

const DONE = ["sent", "failed", "expired"] as const;

/** Where a walk through the rows stands. */
interface Mark {
  readonly dueAt: Date;
  readonly id: string;
}

function after(mark: Mark | null): Prisma.ReminderWhereInput {
  if (mark === null) return {};
  const { dueAt, id } = mark;
  return { dueAt: { gte: dueAt }, NOT: { dueAt, id: { lte: id } } };
}

/**
 * One piece of a walk through the rows of a state by due time. A row whose message may still help is
 * passed over although it is old enough: deriving the member's reminders anew would bring it back, and
 * it would be sent a second time.
 */
async function prunePiece(
  db: PrismaClient,
  state: string,
  before: Date,
  mark: Mark | null,
): Promise<{ readonly removed: number; readonly mark: Mark | null }> {
  const rows = await db.reminder.findMany({
    where: { AND: [{ state, dueAt: { lt: before } }, after(mark)] },
    orderBy: [{ dueAt: "asc" }, { id: "asc" }],
    take: PIECE,
    select: { id: true, dueAt: true, settledAt: true, helpsUntil: true },
  });
  const isOver = (time: Date | null): boolean => time !== null && time < before;
  const ids = rows
    .filter((row) => isOver(row.settledAt) && isOver(row.helpsUntil))
    .map(({ id }) => id);
  const { count } =
    ids.length === 0
      ? { count: 0 }
      : await patiently(() => db.reminder.deleteMany({ where: { id: { in: ids }, state } }));
  return { removed: count, mark: rows.length < PIECE ? null : (rows.at(-1) ?? null) };
}

export function prismaUpkeep(db: PrismaClient): Upkeep {
  return {
    backlog: async (now) => {
      const at = toColumn(now);
      const scheduled = { state: "scheduled", dueAt: { lte: at } };
      const again: Prisma.ReminderWhereInput = {
        state: "claimed",
        OR: [{ leaseUntil: { lte: at } }, { claimedBy: null, reason: { not: WAITS_FOR_MEMBER } }],
      };
      let due = 0;
      let oldest: Date | null = null;
      for (const where of [scheduled, again]) {
        due += await db.reminder.count({ where });
        const orderBy = { dueAt: "asc" } as const;
        const first = await db.reminder.findFirst({ where, orderBy, select: { dueAt: true } });
        if (first !== null && (oldest === null || first.dueAt < oldest)) oldest = first.dueAt;
      }
      return { due, oldestDueAt: oldest === null ? null : toInstant(oldest) };
    },

    giveBack: async (worker, now) => {
      const { count } = await patiently(() =>
        db.reminder.updateMany({
          where: { state: "claimed", claimedBy: worker },
          data: { claimedBy: null, leaseUntil: toColumn(now) },
        }),
      );
      return count;
    },

    pruneReminders: async (before, goOn) => {
      let removed = 0;
      for (const state of DONE) {
        let mark: Mark | null = null;
        do {
          if (!(await goOn())) return removed;
          const piece = await prunePiece(db, state, toColumn(before), mark);
          removed += piece.removed;
          mark = piece.mark;
        } while (mark !== null);
      }
      return removed;
    },

    pruneMealExceptions: async (before, goOn) => {
      const old = { date: { lt: before.toString() } };
      let removed = 0;
      while (await goOn()) {
        const rows = await db.mealException.findMany({
          where: old,
          take: PIECE,
          select: { id: true },
        });
        if (rows.length === 0) break;
        const ids = rows.map(({ id }) => id);
        const { count } = await patiently(() =>
          db.mealException.deleteMany({ where: { id: { in: ids } } }),
        );
        removed += count;
      }
      return removed;
    },

    pruneDrafts: async (before, goOn) => {
      const old = { changedAt: { lt: toColumn(before) } };
      let removed = 0;
      while (await goOn()) {
        const rows = await db.draft.findMany({ where: old, take: PIECE, select: { id: true } });
        if (rows.length === 0) break;
        const ids = rows.map(({ id }) => id);
        const { count } = await patiently(() =>
          // Once more by age: its coach may have gone on writing it meanwhile.
          db.draft.deleteMany({ where: { ...old, id: { in: ids } } }),
        );
        removed += count;
      }
      return removed;
    },
  };
}
