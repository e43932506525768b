import { discardBy } from "../keeping/dates.ts";
import { leastThawHours } from "../keeping/thaw.ts";
import { batchOf } from "../stock/lot.ts";
import type { Batch, Lot, Stock } from "../stock/types.ts";
import { type Instant, isBefore, isDateBefore, type PlainDate } from "../time.ts";
import { type Shares, sharesOf } from "./halves.ts";

/** Portions in the fridge (or thawing there) that are still good, with what decides their meals. */
export interface Fresh extends Shares {
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
export function freshLots(
  stock: Stock,
  today: PlainDate,
): { readonly fresh: readonly Fresh[]; readonly alone: readonly Lot[] } {
  const { shares, alone } = sharesOf(stock.lots.filter((lot) => isGood(stock, lot, today)));
  const fresh = shares.map((one) => freshOf(stock, one));
  fresh.sort((a, b) => Number(b.mustEat) - Number(a.mustEat) || firstExpired(a, b));
  return { fresh, alone };
}

function isGood(stock: Stock, lot: Lot, today: PlainDate): boolean {
  const until = discardBy(lot, batchOf(stock.batches, lot.batchId).keeping);
  return until !== null && !isDateBefore(until, today);
}

/** As good as the worst of its halves. */
function freshOf(stock: Stock, shares: Shares): Fresh {
  const [first] = shares.lots;
  const batch = batchOf(stock.batches, first.batchId);
  const lead = Math.ceil(leastThawHours(batch.portionG) * 60);
  const until = (lot: Lot): PlainDate => discardBy(lot, batch.keeping) ?? lot.since;
  const readyAt = (lot: Lot): Instant =>
    lot.place === "thawing" ? lot.sinceAt.add({ minutes: lead }) : lot.sinceAt;
  return {
    ...shares,
    batch,
    until: shares.lots.map(until).reduce((a, b) => (isDateBefore(b, a) ? b : a)),
    readyAt: shares.lots.map(readyAt).reduce((a, b) => (isBefore(a, b) ? b : a)),
    mustEat: batch.keeping.freezes !== "well" || shares.lots.some((lot) => lot.place === "thawing"),
  };
}

export function firstExpired(a: Fresh, b: Fresh): number {
  if (isDateBefore(a.until, b.until)) return -1;
  if (isDateBefore(b.until, a.until)) return 1;
  return (
    a.batch.cookedAt.epochMilliseconds - b.batch.cookedAt.epochMilliseconds ||
    (a.lots[0].id < b.lots[0].id ? -1 : 1)
  );
}
