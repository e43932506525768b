import type { BatchId, LotId } from "../ids.ts";
import { batchOf, firstLot, lotAfterMove, withPortions } from "./lot.ts";
import type { Batch, Lot, Movement, Place, StockChange } from "./types.ts";

/** Where every portion of a batch is or went: `cooked` and `corrected` together equal the sum of the rest, always. */
export interface Balance {
  readonly batchId: BatchId;
  readonly cooked: number;
  /** Counted more than the ledger knew; below 0 where less was. */
  readonly corrected: number;
  readonly fridge: number;
  readonly freezer: number;
  readonly thawing: number;
  readonly ate: number;
  readonly gave: number;
  readonly threwAway: number;
}

/** Builds the lots from the ledger alone: what the kept lots must equal. Empty lots are left out. */
export function foldLots(
  batches: readonly Batch[],
  changes: readonly StockChange[],
): readonly Lot[] {
  const lots = new Map<LotId, Lot>();
  for (const movement of changes.flatMap((change) => change.movements)) {
    const from = movement.from === null ? undefined : lots.get(movement.from);
    const to =
      movement.to === null
        ? undefined
        : (lots.get(movement.to) ?? bornOf(movement, from, movement.to, batches));
    if (from !== undefined)
      lots.set(from.id, withPortions(from, from.portions - movement.portions));
    if (to !== undefined) lots.set(to.id, withPortions(to, to.portions + movement.portions));
  }
  return [...lots.values()].filter((lot) => lot.portions !== 0);
}

function bornOf(
  movement: Movement,
  from: Lot | undefined,
  id: LotId,
  batches: readonly Batch[],
): Lot {
  if (movement.kind === "cooked" || from === undefined)
    return firstLot(batchOf(batches, movement.batchId), id);
  const place: Place = movement.kind === "froze" ? "freezer" : "thawing";
  return lotAfterMove(from, place, { id, at: movement.at, on: movement.on });
}

/** The balance of one batch: what is there by the lots, what left by the movements. */
export function balanceOf(
  batch: Batch,
  changes: readonly StockChange[],
  lots: readonly Lot[],
): Balance {
  const own = changes
    .flatMap((change) => change.movements)
    .filter((one) => one.batchId === batch.id);
  const total = (kind: Movement["kind"]): number =>
    own.reduce(
      (sum, one) =>
        sum + (one.kind === kind ? one.portions : one.undoes === kind ? -one.portions : 0),
      0,
    );
  const corrected = own
    .filter((one) => one.kind === "corrected" || one.undoes === "corrected")
    .reduce((sum, one) => sum + (one.to === null ? -one.portions : one.portions), 0);
  const standing = (place: Place): number =>
    lots.reduce(
      (sum, lot) => sum + (lot.batchId === batch.id && lot.place === place ? lot.portions : 0),
      0,
    );
  return {
    batchId: batch.id,
    cooked: total("cooked"),
    corrected,
    fridge: standing("fridge"),
    freezer: standing("freezer"),
    thawing: standing("thawing"),
    ate: total("ate"),
    gave: total("gave"),
    threwAway: total("threw away"),
  };
}

/** Whether every portion is accounted for, and none below zero. */
export function balances(balance: Balance): boolean {
  const { cooked, corrected, fridge, freezer, thawing, ate, gave, threwAway } = balance;
  const parts = [fridge, freezer, thawing, ate, gave, threwAway];
  return (
    parts.every((part) => part >= 0) && parts.reduce((a, b) => a + b, 0) === cooked + corrected
  );
}
