import { discardBy } from "../keeping/dates.ts";
import { leastThawHours } from "../keeping/thaw.ts";
import { batchOf } from "../stock/lot.ts";
import type { Batch, Lot, Stock } from "../stock/types.ts";
import { type Instant, isDateBefore, type PlainDate } from "../time.ts";
import type { Surplus } from "./types.ts";

/** A lot in the fridge (or thawing there) that is still good, with what decides its meals. */
export interface Fresh {
  readonly lot: Lot;
  readonly batch: Batch;
  readonly until: PlainDate;
  /** Not before this: a lot set to thaw an hour late still serves its meal, so half the lead counts. */
  readonly readyAt: Instant;
  /**
   * Must be eaten from the fridge: freezes badly, or was thawed. What freezes well can be saved to the
   * last day, if need be to be heated straight from frozen.
   */
  readonly mustEat: boolean;
}

/** In the order in which they claim meals: what must be eaten from the fridge, then first expired first. */
export function freshLots(stock: Stock, today: PlainDate): readonly Fresh[] {
  const fresh = stock.lots.flatMap((lot): readonly Fresh[] => {
    const batch = batchOf(stock.batches, lot.batchId);
    const until = discardBy(lot, batch.keeping);
    if (until === null || isDateBefore(until, today)) return [];
    const isThawing = lot.place === "thawing";
    const minutes = isThawing ? Math.ceil(leastThawHours(batch.portionG) * 60) : 0;
    const readyAt = lot.sinceAt.add({ minutes });
    const mustEat = batch.keeping.freezes !== "well" || isThawing;
    return [{ lot, batch, until, readyAt, mustEat }];
  });
  return fresh.sort((a, b) => Number(b.mustEat) - Number(a.mustEat) || firstExpired(a, b));
}

export function firstExpired(a: Fresh, b: Fresh): number {
  if (isDateBefore(a.until, b.until)) return -1;
  if (isDateBefore(b.until, a.until)) return 1;
  return (
    a.batch.cookedAt.epochMilliseconds - b.batch.cookedAt.epochMilliseconds ||
    (a.lot.id < b.lot.id ? -1 : 1)
  );
}

/** What is to be done with the portions of a lot that no meal takes. */
export function surplusOf(one: Fresh, portions: number): readonly Surplus[] {
  if (portions <= 0) return [];
  if (!one.mustEat) {
    return [{ lotId: one.lot.id, portions, advice: "freeze", why: "no meal before its date" }];
  }
  const why =
    one.batch.keeping.freezes === "well"
      ? "no meal before its date"
      : "freezes badly and no meal before its date";
  return [{ lotId: one.lot.id, portions, advice: "spare", why }];
}
