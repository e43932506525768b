import type { LotId } from "../ids.ts";
import { daysLeftAfterThaw, discardBy, LEAST_DAYS_TO_THAW, usedDaysOn } from "../keeping/dates.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import { daysBetween, isBefore } from "../time.ts";
import { isHalves } from "../words/halves.ts";
import { batchOf, firstLot, isPast, lotAfterMove, sameDates, withPortions } from "./lot.ts";
import { movementOf, type StockStep, type When } from "./movement.ts";
import type { StockProblem } from "./problems.ts";
import type { Batch, Lot, Movement, Stock, WasteReason } from "./types.ts";

/** Kinds a member can choose for portions that are there. */
export type MoveKind = "froze" | "set to thaw" | "ate" | "gave" | "threw away";

/** What is asked to be done with portions of a lot. */
export interface Move {
  readonly lotId: LotId;
  readonly kind: MoveKind;
  /** A multiple of one half. */
  readonly portions: number;
  /** Kept only of what is thrown away; past its date that is the reason, unless another is said. */
  readonly reason?: WasteReason | null;
}

/** A batch that went into the freezer whole may be logged this many days later; older than that it is a slip. */
const FROZEN_LOG_DAYS = 14;

/**
 * Brings a batch into the stock: all portions to the fridge, then the `froze` that went straight on to
 * the freezer on the day of cooking, and `ate` of them eaten at once.
 * Refuses a cooking in the future, and one so long ago that its fridge life is over.
 */
export function decideLog(
  batch: Batch,
  froze: number,
  now: When,
  newLotId: () => LotId,
  ate = 0,
): Outcome<StockStep, StockProblem> {
  if (isBefore(now.at, batch.cookedAt)) {
    return fail({ code: "cooked in the future", cookedAt: batch.cookedAt.toString() });
  }
  const daysAgo = daysBetween(batch.cookedOn, now.on);
  const keepsDays =
    froze + ate === batch.portionsCooked ? FROZEN_LOG_DAYS : batch.keeping.fridgeDays;
  if (daysAgo > keepsDays) {
    return fail({ code: "cooked too long ago", daysAgo, keepsDays });
  }
  if (froze + ate > batch.portionsCooked) {
    return fail({ code: "froze more than cooked", froze, cooked: batch.portionsCooked });
  }
  const odd = [froze, ate].find((part) => part !== 0 && !isHalves(part));
  if (odd !== undefined) return fail({ code: "portions not halves", asked: odd });
  const fridge = withPortions(firstLot(batch, newLotId()), batch.portionsCooked);
  const cooked: Movement = {
    kind: "cooked",
    batchId: batch.id,
    portions: batch.portionsCooked,
    from: null,
    to: fridge.id,
    at: batch.cookedAt,
    on: batch.cookedOn,
    undoes: null,
    reason: null,
  };
  const then = { at: batch.cookedAt, on: batch.cookedOn };
  const eaten = ate === 0 ? [] : [movementOf("ate", fridge, ate, then, null)];
  const left = withPortions(fridge, batch.portionsCooked - froze - ate);
  if (froze === 0) return ok({ movements: [cooked, ...eaten], lots: [left] });
  const freezer = lotAfterMove(fridge, "freezer", { id: newLotId(), ...then });
  const moved = movementOf("froze", fridge, froze, then, freezer.id);
  return ok({ movements: [cooked, ...eaten, moved], lots: [left, withPortions(freezer, froze)] });
}

/**
 * Moves portions of one lot, or takes them out of the stock. Never leaves a lot below zero. Portions
 * past their date can only be thrown away (or recorded as eaten, since the ledger tells the truth).
 */
export function decideMove(
  stock: Stock,
  move: Move,
  when: When,
  newLotId: () => LotId,
): Outcome<StockStep, StockProblem> {
  const lot = stock.lots.find((one) => one.id === move.lotId);
  if (lot === undefined || lot.portions === 0) return fail({ code: "lot is gone" });
  const problem = against(stock, lot, move, when);
  if (problem !== null) return fail(problem);
  const left = withPortions(lot, lot.portions - move.portions);
  const place = move.kind === "froze" ? "freezer" : move.kind === "set to thaw" ? "thawing" : null;
  if (place === null) {
    const gone = movementOf(move.kind, lot, move.portions, when, null);
    const reason = move.kind === "threw away" ? whyThrown(stock, lot, move, when) : null;
    return ok({ movements: [{ ...gone, reason }], lots: [left] });
  }
  const fresh = lotAfterMove(lot, place, { id: newLotId(), ...when });
  const target = stock.lots.find((one) => one.id !== lot.id && sameDates(one, fresh)) ?? fresh;
  return ok({
    movements: [movementOf(move.kind, lot, move.portions, when, target.id)],
    lots: [left, withPortions(target, target.portions + move.portions)],
  });
}

/** What is past its date needs no asking. */
function whyThrown(stock: Stock, lot: Lot, move: Move, { on }: When): WasteReason | null {
  if (move.reason != null) return move.reason;
  return isPast(lot, batchOf(stock.batches, lot.batchId), on) ? "past its date" : null;
}

function against(
  stock: Stock,
  lot: Lot,
  move: { readonly kind: MoveKind; readonly portions: number },
  when: When,
): StockProblem | null {
  if (!isHalves(move.portions)) return { code: "portions not halves", asked: move.portions };
  if (move.portions > lot.portions) {
    return { code: "not so many portions", asked: move.portions, have: lot.portions };
  }
  const batch = batchOf(stock.batches, lot.batchId);
  return move.kind === "set to thaw"
    ? againstThawing(lot, batch, when)
    : againstMoving(lot, batch, move.kind, when);
}

function againstThawing(lot: Lot, batch: Batch, when: When): StockProblem | null {
  if (lot.place !== "freezer") return { code: "not in the freezer" };
  const left = daysLeftAfterThaw(usedDaysOn(lot, when.on), batch.keeping);
  return left < LEAST_DAYS_TO_THAW ? { code: "no fridge days left after thawing" } : null;
}

function againstMoving(lot: Lot, batch: Batch, kind: MoveKind, when: When): StockProblem | null {
  if (kind === "froze" && lot.place === "freezer") return { code: "already frozen" };
  const mustBeGood = kind === "froze" || kind === "gave";
  if (!mustBeGood || !isPast(lot, batch, when.on)) return null;
  return { code: "past its date", discardBy: discardBy(lot, batch.keeping)?.toString() ?? "" };
}
