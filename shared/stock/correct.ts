import type { LotId } from "../ids.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import { withPortions } from "./lot.ts";
import { movementOf, type StockStep, type When } from "./movement.ts";
import type { StockProblem } from "./problems.ts";
import type { Stock } from "./types.ts";

/** The most portions a lot can be counted to hold: with the rest of its batch, no more than were cooked. */
export function mostCounted(stock: Stock, lotId: LotId): number {
  const lot = stock.lots.find((one) => one.id === lotId);
  const batch = stock.batches.find((one) => one.id === lot?.batchId);
  if (lot === undefined || batch === undefined) return 0;
  const elsewhere = stock.lots
    .filter((one) => one.batchId === lot.batchId && one.id !== lotId)
    .reduce((sum, one) => sum + one.portions, 0);
  return Math.max(0, batch.portionsCooked - elsewhere);
}

/**
 * Puts a wrong count right: `counted` portions are what is really in the lot. The ledger keeps the
 * difference as a movement of its own, so that what was eaten stays what it was. A count above what was
 * cooked is refused: then the log itself was wrong, or another batch is meant. A lot of none may be among
 * the stock's: a box of it has turned up.
 */
export function decideCorrect(
  stock: Stock,
  { lotId, counted }: { readonly lotId: LotId; readonly counted: number },
  when: When,
): Outcome<StockStep, StockProblem> {
  const lot = stock.lots.find((one) => one.id === lotId);
  if (lot === undefined) return fail({ code: "lot is gone" });
  if (!Number.isSafeInteger(counted * 2) || counted < 0) {
    return fail({ code: "portions not halves", asked: counted });
  }
  if (counted === lot.portions) return fail({ code: "counted so already", portions: counted });
  const most = mostCounted(stock, lotId);
  if (counted > Math.max(most, lot.portions)) {
    return fail({ code: "counted more than cooked", counted, most });
  }
  const less = movementOf("corrected", lot, Math.abs(counted - lot.portions), when, null);
  const movement = counted < lot.portions ? less : { ...less, from: null, to: lot.id };
  return ok({ movements: [movement], lots: [withPortions(lot, counted)] });
}
