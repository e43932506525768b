import type { BatchId, LotId } from "../ids.ts";
import { discardBy, usedDaysOn } from "../keeping/dates.ts";
import { type Instant, isDateBefore, type PlainDate } from "../time.ts";
import type { Batch, Lot, Place } from "./types.ts";

/** Where portions of `from` would be after moving to `place`: the dates that follow, with no portions yet. */
export function lotAfterMove(
  from: Lot,
  place: Place,
  move: { readonly id: LotId; readonly at: Instant; readonly on: PlainDate },
): Lot {
  return {
    id: move.id,
    batchId: from.batchId,
    place,
    portions: 0,
    since: move.on,
    sinceAt: move.at,
    usedDays: usedDaysOn(from, move.on),
  };
}

/** The lot a batch starts as: in the fridge from the end of cooking. */
export function firstLot(batch: Batch, id: LotId): Lot {
  return {
    id,
    batchId: batch.id,
    place: "fridge",
    portions: 0,
    since: batch.cookedOn,
    sinceAt: batch.cookedAt,
    usedDays: 0,
  };
}

/** Same batch, place and dates: the portions cannot be told apart, so they are one lot. Thawing ones can, by the moment. */
export function sameDates(a: Lot, b: Lot): boolean {
  return (
    a.batchId === b.batchId &&
    a.place === b.place &&
    (a.place !== "thawing" || a.sinceAt.equals(b.sinceAt)) &&
    a.since.equals(b.since) &&
    a.usedDays === b.usedDays
  );
}

export function withPortions(lot: Lot, portions: number): Lot {
  return { ...lot, portions };
}

/** Past its safety date on `today`. Never true in the freezer. */
export function isPast(lot: Lot, batch: Batch, today: PlainDate): boolean {
  const last = discardBy(lot, batch.keeping);
  return last !== null && isDateBefore(last, today);
}

export function batchOf(batches: readonly Batch[], id: BatchId): Batch {
  const found = batches.find((batch) => batch.id === id);
  if (found === undefined) throw new Error(`stock without its batch ${id}`);
  return found;
}
