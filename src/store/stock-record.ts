import type { RecordResult, StockPlan } from "../../commands/kit/ports.ts";
import type { MemberId } from "../../shared/ids.ts";
import type { Batch, Lot, StockChange } from "../../shared/stock/types.ts";
import { keepingDocument, sumsDocument, toColumn, toColumnOrNull, toText } from "./documents.ts";
import type { Prisma, PrismaClient } from "./generated/client.ts";
import { isConflict, patiently } from "./patience.ts";
import { moveOn, readStanding, rewriteReminders, type Standing } from "./reminder-rewrite.ts";

/** How often a write is tried again when only the reminders were rewritten in between. */
const TRIES = 5;

function createBatch(db: PrismaClient, batch: Batch): Prisma.PrismaPromise<unknown> {
  return db.batch.createMany({
    data: [
      {
        ...batch,
        cookedAt: toColumn(batch.cookedAt),
        cookedOn: batch.cookedOn.toString(),
        keeping: toText(keepingDocument, batch.keeping),
        perPortion: toText(sumsDocument, batch.perPortion),
      },
    ],
  });
}

/** A lot as it is afterwards. One that belongs to somebody else fails the transaction. */
function writeLot(db: PrismaClient, memberId: MemberId, lot: Lot): Prisma.PrismaPromise<unknown> {
  const { id, batchId, place, portions, usedDays } = lot;
  const state = {
    place,
    portions,
    usedDays,
    since: lot.since.toString(),
    sinceAt: toColumn(lot.sinceAt),
  };
  return db.lot.upsert({
    where: { id, memberId, batchId },
    create: { id, memberId, batchId, ...state },
    update: state,
    select: { id: true },
  });
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
        portions: movement.portions,
        fromLotId: movement.from,
        toLotId: movement.to,
        at: toColumn(movement.at),
        on: movement.on.toString(),
        undoes: movement.undoes,
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
  standing: Standing,
  newId: () => string,
): Promise<unknown> {
  const { change } = plan;
  const { memberId } = change;
  const after = { stockVersion: change.version, replanAt: toColumnOrNull(plan.replanAt) };
  const [newChange, ...movements] = createChange(db, change);
  return db.$transaction([
    moveOn(db, memberId, standing, after),
    ...(newChange === undefined ? [] : [newChange]),
    ...(plan.newBatch === null ? [] : [createBatch(db, plan.newBatch)]),
    ...plan.lots.map((lot) => writeLot(db, memberId, lot)),
    ...movements,
    ...rewriteReminders(db, memberId, standing.known, plan.reminders, newId),
  ]);
}

/** A plan that contradicts itself is a bug of its maker, and must not reach the ledger. */
function check(plan: StockPlan): void {
  const { change, newBatch } = plan;
  const owned = newBatch === null || newBatch.memberId === change.memberId;
  const whole = plan.lots.every((lot) => Number.isSafeInteger(lot.portions) && lot.portions >= 0);
  if (!owned) throw new Error(`change ${change.id} brings in a batch of another member`);
  if (!whole)
    throw new Error(`change ${change.id} leaves a lot without a whole number of portions`);
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
    const standing = await readStanding(db, memberId, plan.reminders);
    // After the versions: a change recorded in between is found here or makes the write fail.
    const done = await db.stockChange.findUnique({ where: { causeId }, select: { id: true } });
    if (done !== null) return "already";
    if (standing.stockVersion !== version - 1) return "moved on";
    try {
      await patiently(() => write(db, plan, standing, newId));
      return "recorded";
    } catch (error) {
      if (!isConflict(error) || tries === TRIES) throw error;
    }
  }
}
