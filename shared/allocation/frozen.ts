import { daysLeftAfterThaw, usedDaysOn } from "../keeping/dates.ts";
import { thawLeadHours } from "../keeping/thaw.ts";
import { batchOf } from "../stock/lot.ts";
import type { Batch, Stock } from "../stock/types.ts";
import type { PlainDate } from "../time.ts";
import type { Fresh } from "./fresh.ts";
import { type Shares, sharesOf } from "./halves.ts";
import type { ThawNeed } from "./thaw-time.ts";

/** Portions in the freezer, or to be frozen now, that later meals can be served from. */
export interface Frozen extends Shares {
  readonly batch: Batch;
  readonly need: ThawNeed;
}

/** What is in the freezer, oldest first. */
export function frozenLots(stock: Stock, today: PlainDate): readonly Frozen[] {
  const lots = stock.lots
    .filter((lot) => lot.place === "freezer")
    .sort(
      (a, b) => a.sinceAt.epochMilliseconds - b.sinceAt.epochMilliseconds || (a.id < b.id ? -1 : 1),
    );
  return sharesOf(lots).shares.map((shares) =>
    frozenOf(shares, batchOf(stock.batches, shares.lots[0].batchId), today),
  );
}

/** Portions still in the fridge as they would be in the freezer from today on; null where they are not to be frozen. */
export function frozenToday(fresh: Fresh, portions: number, today: PlainDate): Frozen | null {
  return fresh.mustEat || portions <= 0
    ? null
    : frozenOf({ lots: fresh.lots, portions }, fresh.batch, today);
}

/** With two lots, as few days as the older half has left. */
function frozenOf(shares: Shares, batch: Batch, today: PlainDate): Frozen {
  const used = Math.max(...shares.lots.map((lot) => usedDaysOn(lot, today)));
  return {
    ...shares,
    batch,
    need: {
      leadHours: thawLeadHours(batch.portionG),
      daysLeft: daysLeftAfterThaw(used, batch.keeping),
    },
  };
}
