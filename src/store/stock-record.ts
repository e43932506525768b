import type { RecordResult, StockPlan } from "../../commands/kit/ports.ts";
import type { MemberId } from "../../shared/ids.ts";
import type { Batch, Lot, StockChange } from "../../shared/stock/types.ts";
import { isHalves } from "../../shared/words/halves.ts";
import { asMadeDocument } from "./as-made.ts";
import { keepingDocument, sumsDocument, toColumn, toText } from "./documents.ts";
import type { Prisma, PrismaClient } from "./generated/client.ts";
import { isConflict, patiently } from "./patience.ts";
import {
  isAsPlanned,
  moveOn,
  readStanding,
  rewriteReminders,
  type Standing,
} from "./reminder-rewrite.ts";

/** How often a write is tried again when only the reminders were rewritten in between. */
const TRIES = 20;

function createBatch(db: PrismaClient, batch: Batch): Prisma.PrismaPromise<unknown> {
  return db.batch.createMany({
    data: [
      {
        ...batch,
        cookedAt: toColumn(batch.cookedAt),
        cookedOn: batch.cookedOn.toString(),
        keeping: toText(keepingDocument, batch.keeping),
        perPortion: toText(sumsDocument, batch.perPortion),
        asMade: batch.asMade === undefined ? null : toText(asMadeDocument, batch.asMade),
      },
    ],
  });
}

/**
 * A lot as it is afterwards. One that exists but is not this member's fails the transaction: `create`
 * on its id, `update` on its owner. (Not `upsert`, which would pass over it without a word.)
 */
function writeLot(
  db: PrismaClient,
  memberId: MemberId,
  lot: Lot,
  isKnown: boolean,
): Prisma.PrismaPromise<unknown> {
  const { id, batchId, place, usedDays } = lot;
  const since = lot.since.toString();
  const data = { place, halves: lot.portions * 2, usedDays, since, sinceAt: toColumn(lot.sinceAt) };
  const select = { id: true } as const;
  return isKnown
    ? db.lot.update({ where: { id, memberId, batchId }, data, select })
    : db.lot.create({ data: { id, memberId, batchId, ...data }, select });
}

async function readKnownLots(db: PrismaClient, plan: StockPlan): Promise<ReadonlySet<string>> {
  const rows = await db.lot.findMany({
    where: { id: { in: plan.lots.map((lot) => lot.id) }, memberId: plan.change.memberId },
    select: { id: true },
  });
  return new Set(rows.map((row) => row.id));
}

function createChange(db: PrismaClient, change: StockChange): Prisma.PrismaPromise<unknown>[] {
  const { id, memberId, version, causeId } = change;
  return [
    db.stockChange.createMany({
      data: [
        {
          id,
          memberId,
          version,
          causeId,
          recordedAt: toColumn(change.recordedAt),
          undoesId: change.undoes,
        },
      ],
    }),
    db.movement.createMany({
      data: change.movements.map((movement, position) => ({
        changeId: id,
        position,
        kind: movement.kind,
        batchId: movement.batchId,
        halves: movement.portions * 2,
        fromLotId: movement.from,
        toLotId: movement.to,
        at: toColumn(movement.at),
        on: movement.on.toString(),
        undoes: movement.undoes,
        reason: movement.reason,
      })),
    }),
  ];
}

/**
 * All of a plan as one array transaction. The first statement holds the member's row and fails unless
 * the versions stand; unique cause and unique version of the change are the second lock.
 */
function write(
  db: PrismaClient,
  plan: StockPlan,
  standing: Standing & { readonly lots: ReadonlySet<string> },
  newId: () => string,
): Promise<unknown> {
  const { change } = plan;
  const { memberId } = change;
  const [newChange, ...movements] = createChange(db, change);
  return db.$transaction([
    moveOn(db, memberId, standing, { stockVersion: change.version }),
    ...(newChange === undefined ? [] : [newChange]),
    ...(plan.newBatch === null ? [] : [createBatch(db, plan.newBatch)]),
    ...plan.lots.map((lot) => writeLot(db, memberId, lot, standing.lots.has(lot.id))),
    ...movements,
    ...rewriteReminders(
      db,
      memberId,
      { ...plan, known: standing.known, now: change.recordedAt },
      newId,
    ),
  ]);
}

/** A plan that contradicts itself is a bug of its maker, and must not reach the ledger. */
function check(plan: StockPlan): void {
  const { change, newBatch } = plan;
  const refuse = (why: string): never => {
    throw new Error(`the plan of change ${change.id} ${why}`);
  };
  if (newBatch !== null && newBatch.memberId !== change.memberId) {
    refuse("brings in a batch of another member");
  }
  if (plan.lots.some((lot) => !Number.isSafeInteger(lot.portions * 2) || lot.portions < 0)) {
    refuse("leaves a lot without a number of portions in halves");
  }
  // The lots are written only if they are the member's own; that holds for the movements too if they
  // touch nothing else.
  const batchOf = new Map(plan.lots.map((lot) => [lot.id, lot.batchId]));
  for (const { from, to, batchId, portions } of change.movements) {
    if (!isHalves(portions)) refuse("moves what is no number of portions");
    const touched = [from, to].filter((id) => id !== null);
    const known = touched.every((id) => batchOf.get(id) === batchId);
    if (touched.length === 0 || !known) refuse("moves a lot that it does not name");
  }
}

/** Writes everything one command changes about a member's stock, or nothing. See `Stocks.record`. */
export async function record(
  db: PrismaClient,
  plan: StockPlan,
  newId: () => string,
): Promise<RecordResult> {
  check(plan);
  const { memberId, causeId, version } = plan.change;
  for (let tries = 1; ; tries++) {
    const versions = await readStanding(db, memberId, plan.reminders);
    const standing = { ...versions, lots: await readKnownLots(db, plan) };
    // After the versions: a change recorded in between is found here or makes the write fail.
    const done = await db.stockChange.findUnique({ where: { causeId }, select: { id: true } });
    if (done !== null) return "already";
    if (standing.stockVersion !== version - 1 || !isAsPlanned(standing, plan)) return "moved on";
    try {
      await patiently(() => write(db, plan, standing, newId));
      return "recorded";
    } catch (error) {
      if (!isConflict(error) || tries === TRIES) throw error;
    }
  }
}
