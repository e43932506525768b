import type { Allocation, Serving } from "../../shared/allocation/types.ts";
import {
  bestBefore,
  daysLeftAfterThaw,
  discardBy,
  LEAST_DAYS_TO_THAW,
  usedDaysOn,
} from "../../shared/keeping/dates.ts";
import { thawLeadHours } from "../../shared/keeping/thaw.ts";
import { batchOf, isPast } from "../../shared/stock/lot.ts";
import type { Batch, Lot, Stock } from "../../shared/stock/types.ts";
import { type Instant, isBefore, type PlainDate } from "../../shared/time.ts";
import { count } from "../../shared/words/plural.ts";
import { writeDate, writeWhen } from "../../shared/words/write-when.ts";
import { sayWhose } from "./keeping.ts";

/** A lot with its batch, for wording. */
export interface Shown {
  readonly lot: Lot;
  readonly batch: Batch;
}

/** Lots in the order in which they must go: past their date first, then by date, the freezer last. */
export function lotsByUrgency(stock: Stock): readonly Shown[] {
  const shown = stock.lots.map((lot) => ({ lot, batch: batchOf(stock.batches, lot.batchId) }));
  return shown.sort((a, b) => {
    const frozen = Number(a.lot.place === "freezer") - Number(b.lot.place === "freezer");
    if (frozen !== 0) return frozen;
    const byDate = dateOf(a).localeCompare(dateOf(b));
    return byDate !== 0 ? byDate : a.lot.id.localeCompare(b.lot.id);
  });
}

function dateOf({ lot, batch }: Shown): string {
  return (discardBy(lot, batch.keeping) ?? bestBefore(lot, batch.keeping))?.toString() ?? "";
}

/** "3 portions". */
export function portionsOf({ lot, batch }: Shown, portions: number = lot.portions): string {
  return count(portions, batch.portionWord);
}

/** Whether a frozen lot has days enough left to be thawed in the fridge. */
export function canThaw({ lot, batch }: Shown): boolean {
  return daysLeftAfterThaw(lot.usedDays, batch.keeping) >= LEAST_DAYS_TO_THAW;
}

/** Whether a lot frozen on `today` could still be thawed in the fridge later. */
export function staysThawable({ lot, batch }: Shown, today: PlainDate): boolean {
  return daysLeftAfterThaw(usedDaysOn(lot, today), batch.keeping) >= LEAST_DAYS_TO_THAW;
}

/** "eat by Wed 28 Oct", "best before Sun 24 Jan", "past its date: throw away". */
export function untilOf({ lot, batch }: Shown, today: PlainDate): string {
  const last = discardBy(lot, batch.keeping);
  if (last === null) {
    const best = bestBefore(lot, batch.keeping);
    const how = canThaw({ lot, batch }) ? "" : ", heat straight from frozen";
    return best === null ? "" : `best before ${writeDate(best)}${how}`;
  }
  if (isPast(lot, batch, today)) return `was good until ${writeDate(last)}: throw away`;
  return last.equals(today) ? "eat today, last good day" : `eat by ${writeDate(last)}`;
}

/** "eat by Sat 28 Nov; coach's word, 5 days; chart: 4 days": the date, and whose word it rests on where there are two. */
export function untilAndWhose(one: Shown, today: PlainDate): string {
  const whose = one.lot.place === "freezer" ? "" : sayWhose(one.batch.keeping);
  return [untilOf(one, today), whose].filter((said) => said !== "").join("; ");
}

/** "thawed by Thu 29 Oct, 19:00" for a lot that is thawing, "thawed" once it is. */
export function readyOf({ lot, batch }: Shown, now: Instant, zone: string): string {
  const readyAt = lot.sinceAt.add({ minutes: Math.ceil(thawLeadHours(batch.portionG) * 60) });
  return isBefore(now, readyAt) ? `thawed by ${writeWhen(readyAt, zone)}` : "thawed";
}

/** "Mon 26 Oct, 12:30 lunch". */
export function mealOf(serving: Serving, zone: string): string {
  return `${writeWhen(serving.slot.at, zone)} ${serving.slot.name}`;
}

/** The meals a lot is meant for, in order. */
export function servingsOf(allocation: Allocation, lot: Lot): readonly Serving[] {
  return allocation.servings.filter((serving) => serving.lotId === lot.id);
}
