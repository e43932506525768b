import type { LotId } from "../ids.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import { withPortions } from "./lot.ts";
import type { StockStep, When } from "./movement.ts";
import type { StockProblem } from "./problems.ts";
import type { Lot, Movement, StockChange } from "./types.ts";

/**
 * Takes back a change: each of its movements runs the other way, newest first. `lots` are the lots it
 * touched as they are now; fails when portions have been thawing since an earlier day, and when portions it brought in are no longer there to be taken back.
 */
export function decideUndo(
  change: StockChange,
  lots: readonly Lot[],
  when: When,
): Outcome<StockStep, StockProblem> {
  // Its days in the fridge are used, whatever the ledger would say.
  if (change.movements.some((one) => one.kind === "set to thaw" && !one.on.equals(when.on))) {
    return fail({ code: "thawed since" });
  }
  const after = new Map(lots.map((lot) => [lot.id, lot]));
  const add = (id: LotId | null, portions: number): boolean => {
    const lot = id === null ? undefined : after.get(id);
    if (lot === undefined) return true;
    after.set(lot.id, withPortions(lot, lot.portions + portions));
    return lot.portions + portions >= 0;
  };
  const movements: Movement[] = [];
  for (const done of [...change.movements].reverse()) {
    if (done.kind === "undone" || !add(done.to, -done.portions))
      return fail({ code: "nothing to undo" });
    add(done.from, done.portions);
    movements.push({
      ...done,
      ...when,
      kind: "undone",
      from: done.to,
      to: done.from,
      undoes: done.kind,
    });
  }
  return ok({ movements, lots: [...after.values()] });
}
