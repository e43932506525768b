import { discardBy } from "../keeping/dates.ts";
import { leastThawHours } from "../keeping/thaw.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import { type Instant, isBefore } from "../time.ts";
import { isHalves } from "../words/halves.ts";
import { batchOf, isPast, withPortions } from "./lot.ts";
import { movementOf, type StockStep, type When } from "./movement.ts";
import type { StockProblem } from "./problems.ts";
import type { Batch, Lot, Stock } from "./types.ts";

/** Portions of one lot, as it was before they were taken. */
export interface Taken {
  readonly lot: Lot;
  readonly batch: Batch;
  readonly portions: number;
}

interface Held {
  readonly lot: Lot;
  readonly batch: Batch;
}

/**
 * Eats portions without being told which: the first expired first, of what is ready in the fridge or
 * has thawed; from the freezer only what those leave open, oldest first; never past its date. A lot
 * that thaws is ready after half its lead, as it is for the allocation.
 */
export function decideEatFirst(
  stock: Stock,
  wish: { readonly portions: number; readonly isMeant: (batch: Batch) => boolean },
  when: When,
): Outcome<StockStep & { readonly taken: readonly Taken[] }, StockProblem> {
  if (!isHalves(wish.portions)) return fail({ code: "portions not halves", asked: wish.portions });
  const meant = stock.lots
    .map((lot) => ({ lot, batch: batchOf(stock.batches, lot.batchId) }))
    .filter(({ batch }) => wish.isMeant(batch));
  const order = mustGoFirst(meant, when);
  const have = order.reduce((sum, { lot }) => sum + lot.portions, 0);
  if (have === 0) return fail(whyNothing(meant, when));
  if (have < wish.portions) {
    return fail({ code: "not so many portions", asked: wish.portions, have });
  }
  let open = wish.portions;
  const taken = order.flatMap((held): readonly Taken[] => {
    const portions = Math.min(open, held.lot.portions);
    open -= portions;
    return portions === 0 ? [] : [{ ...held, portions }];
  });
  return ok({
    taken,
    movements: taken.map(({ lot, portions }) => movementOf("ate", lot, portions, when, null)),
    lots: taken.map(({ lot, portions }) => withPortions(lot, lot.portions - portions)),
  });
}

/** From when on a thawing lot can be eaten; for any other the moment it came to its place. */
function readyAt({ lot, batch }: Held): Instant {
  const minutes = lot.place === "thawing" ? Math.ceil(leastThawHours(batch.portionG) * 60) : 0;
  return lot.sinceAt.add({ minutes });
}

/** What can be eaten now, in the order in which it must go. */
function mustGoFirst(held: readonly Held[], when: When): readonly Held[] {
  const edible = held.filter(
    (one) => !isPast(one.lot, one.batch, when.on) && !isBefore(when.at, readyAt(one)),
  );
  const cold = edible.filter(({ lot }) => lot.place !== "freezer");
  const frozen = edible.filter(({ lot }) => lot.place === "freezer");
  return [...cold.sort(byDate), ...frozen.sort(byAge)];
}

function byDate(a: Held, b: Held): number {
  const day = ({ lot, batch }: Held): string => discardBy(lot, batch.keeping)?.toString() ?? "";
  const [one, other] = [day(a), day(b)];
  if (one !== other) return one < other ? -1 : 1;
  return (
    a.batch.cookedAt.epochMilliseconds - b.batch.cookedAt.epochMilliseconds || byId(a.lot, b.lot)
  );
}

function byAge(a: Held, b: Held): number {
  return a.lot.sinceAt.epochMilliseconds - b.lot.sinceAt.epochMilliseconds || byId(a.lot, b.lot);
}

function byId(a: Lot, b: Lot): number {
  return a.id < b.id ? -1 : 1;
}

/** Nothing can be eaten: it is thawing still, or past its date, or there is none. */
function whyNothing(held: readonly Held[], when: When): StockProblem {
  const [soonest] = held
    .filter(({ lot, batch }) => !isPast(lot, batch, when.on))
    .map(readyAt)
    .sort((a, b) => a.epochMilliseconds - b.epochMilliseconds);
  if (soonest !== undefined) return { code: "thawing still", readyAt: soonest.toString() };
  return held.length === 0 ? { code: "none in stock" } : { code: "all past its date" };
}
