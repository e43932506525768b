import { daysLeftAfterThaw, discardBy, usedDaysOn } from "../keeping/dates.ts";
import { leastThawHours, thawLeadHours } from "../keeping/thaw.ts";
import { batchOf, isPast } from "../stock/lot.ts";
import type { Batch, Lot, Stock } from "../stock/types.ts";
import { dateIn, type Instant, isDateBefore, type PlainDate } from "../time.ts";
import { claimInOrder, type Seated, type Seating, seat } from "./seat.ts";
import { type ThawHours, thawMoment } from "./thaw-time.ts";
import type { Allocation, MealSlot, Serving, Surplus } from "./types.ts";

/** A lot in the fridge (or thawing there) that is still good, with what decides its meals. */
interface Fresh {
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

/** Portions in the freezer, or to be frozen now, that later meals can be served from. */
interface Frozen {
  readonly lot: Lot;
  left: number;
  readonly leadHours: number;
  readonly daysLeft: number;
}

/**
 * Decides which portion goes to which meal, what to freeze now and what to thaw when. In this order:
 * the fewest portions wasted, the fewest frozen, the first expired first. Portions that freeze badly
 * claim meals first; the others take what is left; what then remains is frozen at once, or is spare.
 * Meals still empty are served from the freezer, oldest first, each with its moment to thaw.
 */
export function allocate(
  stock: Stock,
  slots: readonly MealSlot[],
  now: Instant,
  hours: ThawHours,
): Allocation {
  const today = dateIn(now, hours.zone);
  const fresh = freshLots(stock, today);
  // A meal takes whole portions: a lone half is nobody's meal.
  const claimants = fresh.map((one) => ({ ...one, portions: Math.floor(one.lot.portions) }));
  const order = fresh.map((_, index) => index).sort((a, b) => compareAt(fresh, a, b));
  // Claims are settled inside the days the fridge can serve; later meals are nobody's to claim.
  const near = slots.filter((slot) => fresh.some(({ until }) => !isDateBefore(until, slot.date)));
  const counts = claimInOrder(claimants, order, near);
  const { seated, free } = seat(claimants, counts, order, slots);
  const surplus = fresh.flatMap((one, index) =>
    surplusOf(one, one.lot.portions - (counts[index] ?? 0)),
  );
  const frozen = frozenSupply(stock, fresh, surplus, today);
  const thawed = serveFromFreezer(frozen, free, now, hours);
  const servings = [...seated.flatMap((one) => servingsOf(one, fresh)), ...thawed].sort(
    (a, b) => a.slot.at.epochMilliseconds - b.slot.at.epochMilliseconds,
  );
  return { servings, surplus };
}

function servingsOf(one: Seated, fresh: readonly Fresh[]): readonly Serving[] {
  const chosen = fresh[one.index];
  if (chosen === undefined) return [];
  return Array.from({ length: one.portions }, () => ({
    slot: one.slot,
    lotId: chosen.lot.id,
    from: chosen.lot.place === "thawing" ? "thawing" : "fridge",
    thawAt: null,
    why: chosen.batch.keeping.freezes === "well" ? "first expired" : "freezes badly",
  }));
}

function freshLots(stock: Stock, today: PlainDate): readonly Fresh[] {
  const fresh = stock.lots.flatMap((lot): readonly Fresh[] => {
    const batch = batchOf(stock.batches, lot.batchId);
    const until = discardBy(lot, batch.keeping);
    if (until === null || isPast(lot, batch, today)) return [];
    const lead = lot.place === "thawing" ? leastThawHours(batch.portionG) * 60 : 0;
    return [
      {
        lot,
        batch,
        until,
        readyAt: lot.sinceAt.add({ minutes: lead }),
        mustEat: batch.keeping.freezes !== "well" || lot.place === "thawing",
      },
    ];
  });
  return fresh.sort((a, b) => Number(b.mustEat) - Number(a.mustEat) || firstExpired(a, b));
}

function firstExpired(a: Fresh, b: Fresh): number {
  if (isDateBefore(a.until, b.until)) return -1;
  if (isDateBefore(b.until, a.until)) return 1;
  return (
    a.batch.cookedAt.epochMilliseconds - b.batch.cookedAt.epochMilliseconds ||
    (a.lot.id < b.lot.id ? -1 : 1)
  );
}

function compareAt(fresh: readonly Fresh[], a: number, b: number): number {
  const [one, other] = [fresh[a], fresh[b]];
  return one === undefined || other === undefined ? 0 : firstExpired(one, other);
}

function surplusOf(one: Fresh, portions: number): readonly Surplus[] {
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

/** What is in the freezer, oldest first, then what is to be frozen now. */
function frozenSupply(
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
    left: Math.floor(portions),
    leadHours: thawLeadHours(batch.portionG),
    daysLeft: daysLeftAfterThaw(usedDaysOn(lot, today), batch.keeping),
  };
}

function serveFromFreezer(
  frozen: readonly Frozen[],
  free: Seating["free"],
  now: Instant,
  hours: ThawHours,
): readonly Serving[] {
  return free.flatMap(({ slot, portions }) => thawFor(frozen, slot, portions, now, hours));
}

/** Up to `portions` for one meal, oldest first. */
function thawFor(
  frozen: readonly Frozen[],
  slot: MealSlot,
  portions: number,
  now: Instant,
  hours: ThawHours,
): readonly Serving[] {
  const served: Serving[] = [];
  for (const one of frozen) {
    if (served.length === portions) break;
    const thawAt = one.left > 0 ? thawMoment(slot, one, now, hours) : null;
    if (thawAt === null) continue;
    const taken = Math.min(one.left, portions - served.length);
    one.left -= taken;
    for (let n = 0; n < taken; n += 1) {
      served.push({ slot, lotId: one.lot.id, from: "freezer", thawAt, why: "oldest frozen" });
    }
  }
  return served;
}
