import { daysLeftAfterThaw, discardBy, usedDaysOn } from "../keeping/dates.ts";
import { thawLeadHours } from "../keeping/thaw.ts";
import { batchOf, isPast } from "../stock/lot.ts";
import type { Batch, Lot, Stock } from "../stock/types.ts";
import { dateIn, type Instant, isBefore, isDateBefore, type PlainDate } from "../time.ts";
import { seatInOrder } from "./pick.ts";
import { type ThawHours, thawMoment } from "./thaw-time.ts";
import type { Allocation, MealSlot, Serving, Surplus } from "./types.ts";

/** A lot in the fridge (or thawing there) that is still good, with what decides its meals. */
interface Fresh {
  readonly lot: Lot;
  readonly batch: Batch;
  readonly until: PlainDate;
  /** Not before this: the lead of a lot that is still thawing. */
  readonly readyAt: Instant;
  /** Must be eaten from the fridge: freezes badly, was thawed, or would have no day left after freezing. */
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
  const seats = slots.flatMap((slot) => Array.from({ length: slot.portions }, () => slot));
  const counts = seatInOrder(
    fresh.map((one) => ({ portions: one.lot.portions, mayServe: (slot) => mayServe(one, slot) })),
    seats,
  );
  const { servings, empty } = serveInOrder(fresh, counts, seats);
  const surplus = fresh.flatMap((one, index) =>
    surplusOf(one, one.lot.portions - (counts[index] ?? 0)),
  );
  const frozen = frozenSupply(stock, fresh, surplus, today);
  const { thawed, stillEmpty } = serveFromFreezer(frozen, empty, now, hours);
  return { servings: [...servings, ...thawed], surplus, emptySlots: stillEmpty };
}

function freshLots(stock: Stock, today: PlainDate): readonly Fresh[] {
  const fresh = stock.lots.flatMap((lot): readonly Fresh[] => {
    const batch = batchOf(stock.batches, lot.batchId);
    const until = discardBy(lot, batch.keeping);
    if (until === null || isPast(lot, batch, today)) return [];
    const lead = lot.place === "thawing" ? Math.ceil(thawLeadHours(batch.portionG) * 60) : 0;
    return [
      {
        lot,
        batch,
        until,
        readyAt: lot.sinceAt.add({ minutes: lead }),
        mustEat:
          batch.keeping.freezes !== "well" ||
          lot.place === "thawing" ||
          daysLeftAfterThaw(usedDaysOn(lot, today), batch.keeping) < 1,
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

function mayServe(one: Fresh, slot: MealSlot): boolean {
  return !isDateBefore(one.until, slot.date) && !isBefore(slot.at, one.readyAt);
}

/**
 * Gives the meals, in order of time, the chosen portion that expires first. For portions of unit size
 * with a first and a last day this seats every chosen set that can be seated at all (earliest deadline
 * first), and leaves the late meals empty rather than the early ones.
 */
function serveInOrder(
  fresh: readonly Fresh[],
  counts: readonly number[],
  seats: readonly MealSlot[],
): { readonly servings: readonly Serving[]; readonly empty: readonly MealSlot[] } {
  const left = [...counts];
  const order = fresh.map((_, index) => index).sort((a, b) => compareAt(fresh, a, b));
  const servings: Serving[] = [];
  const empty: MealSlot[] = [];
  for (const slot of seats) {
    const index = order.find((one) => {
      const lot = fresh[one];
      return (left[one] ?? 0) > 0 && lot !== undefined && mayServe(lot, slot);
    });
    const chosen = index === undefined ? undefined : fresh[index];
    if (index === undefined || chosen === undefined) {
      empty.push(slot);
      continue;
    }
    left[index] = (left[index] ?? 0) - 1;
    servings.push({
      slot,
      lotId: chosen.lot.id,
      from: chosen.lot.place === "thawing" ? "thawing" : "fridge",
      thawAt: null,
      why: chosen.batch.keeping.freezes === "well" ? "first expired" : "freezes badly",
    });
  }
  return { servings, empty };
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
    left: portions,
    leadHours: thawLeadHours(batch.portionG),
    daysLeft: daysLeftAfterThaw(usedDaysOn(lot, today), batch.keeping),
  };
}

function serveFromFreezer(
  frozen: readonly Frozen[],
  empty: readonly MealSlot[],
  now: Instant,
  hours: ThawHours,
): { readonly thawed: readonly Serving[]; readonly stillEmpty: readonly MealSlot[] } {
  const thawed: Serving[] = [];
  const stillEmpty: MealSlot[] = [];
  for (const slot of empty) {
    const serving = firstThatThaws(frozen, slot, now, hours);
    if (serving === null) stillEmpty.push(slot);
    else thawed.push(serving);
  }
  return { thawed, stillEmpty };
}

function firstThatThaws(
  frozen: readonly Frozen[],
  slot: MealSlot,
  now: Instant,
  hours: ThawHours,
): Serving | null {
  for (const one of frozen) {
    const thawAt = one.left > 0 ? thawMoment(slot, one, now, hours) : null;
    if (thawAt === null) continue;
    one.left -= 1;
    return { slot, lotId: one.lot.id, from: "freezer", thawAt, why: "oldest frozen" };
  }
  return null;
}
