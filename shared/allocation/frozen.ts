import { daysLeftAfterThaw, usedDaysOn } from "../keeping/dates.ts";
import { thawLeadHours } from "../keeping/thaw.ts";
import { batchOf } from "../stock/lot.ts";
import type { Batch, Lot, Stock } from "../stock/types.ts";
import type { PlainDate } from "../time.ts";
import type { Fresh } from "./fresh.ts";
import type { ThawNeed } from "./thaw-time.ts";
import type { Surplus } from "./types.ts";

/** Portions in the freezer, or to be frozen now, that later meals can be served from. */
export interface Frozen {
  readonly lot: Lot;
  readonly portions: number;
  readonly need: ThawNeed;
}

/** What is in the freezer, oldest first, then what is to be frozen now. */
export function frozenSupply(
  stock: Stock,
  fresh: readonly Fresh[],
  surplus: readonly Surplus[],
  today: PlainDate,
): readonly Frozen[] {
  const standing = stock.lots
    .filter((lot) => lot.place === "freezer")
    .sort(
      (a, b) => a.sinceAt.epochMilliseconds - b.sinceAt.epochMilliseconds || (a.id < b.id ? -1 : 1),
    )
    .map((lot) => supply(lot, lot.portions, batchOf(stock.batches, lot.batchId), today));
  const toFreeze = surplus
    .filter((one) => one.advice === "freeze")
    .flatMap((one) => {
      const found = fresh.find((candidate) => candidate.lot.id === one.lotId);
      return found === undefined ? [] : [supply(found.lot, one.portions, found.batch, today)];
    });
  return [...standing, ...toFreeze];
}

function supply(lot: Lot, portions: number, batch: Batch, today: PlainDate): Frozen {
  return {
    lot,
    portions: Math.floor(portions),
    need: {
      leadHours: thawLeadHours(batch.portionG),
      daysLeft: daysLeftAfterThaw(usedDaysOn(lot, today), batch.keeping),
    },
  };
}
