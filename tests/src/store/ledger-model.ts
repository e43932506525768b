import type fc from "fast-check";
import { expect } from "vitest";
import { type Changed, changeStock, loadStock } from "../../../commands/kit/plan.ts";
import { type CauseId, causeId } from "../../../shared/ids.ts";
import type { Outcome } from "../../../shared/outcome.ts";
import { balanceOf, balances, foldLots } from "../../../shared/stock/ledger.ts";
import type { StockProblem } from "../../../shared/stock/problems.ts";
import type { Lot, Place } from "../../../shared/stock/types.ts";
import { dateIn, type Instant } from "../../../shared/time.ts";
import type { Store } from "../../../src/store/open.ts";
import type { World } from "./kit.ts";

// A second, simpler idea of the ledger: for each batch how many portions are where, changed by what was
// asked and taken, and by nothing else. The real store is held against it after every command.

export type Where = Place | "cooked" | "corrected" | "ate" | "gave" | "threw away";
/** "<batch>/<where>" -> portions more (or fewer) there. */
export type Effect = ReadonlyMap<string, number>;

interface LedgerModel {
  held: Effect;
  /** What an undo would take back, the newest last. */
  readonly undoable: Effect[];
  changes: number;
}

export interface RealLedger {
  /** Where the commands are carried out by turns: two processes have a store each. */
  readonly stores: readonly [Store, Store];
  readonly world: World;
  now: Instant;
  lastCause: CauseId | null;
}

export const emptyModel = (): LedgerModel => ({ held: new Map(), undoable: [], changes: 0 });

export function effect(batch: string, parts: readonly (readonly [Where, number])[]): Effect {
  return plus(new Map(), new Map(parts.map(([where, n]) => [`${batch}/${where}`, n])));
}

export function plus(a: Effect, b: Effect, sign = 1): Effect {
  const sum = new Map(a);
  for (const [key, n] of b) sum.set(key, (sum.get(key) ?? 0) + sign * n);
  return new Map([...sum].filter(([, n]) => n !== 0));
}

type Done = Outcome<Changed, StockProblem>;
type Deed = Omit<
  Parameters<typeof changeStock>[0],
  "stores" | "member" | "now" | "newId" | "causeId"
>;

export function write(real: RealLedger, cause: CauseId, deed: Deed, by: 0 | 1 = 0): Promise<Done> {
  const { member, newId } = real.world;
  const { stores } = real.stores[by];
  return changeStock({ stores, member, now: real.now, newId, causeId: cause, ...deed });
}

export const when = (real: RealLedger) => ({
  at: real.now,
  on: dateIn(real.now, real.world.member.choice.zone),
});
export const freshCause = (real: RealLedger): CauseId => causeId(`cause ${real.world.newId()}`);
export const stockOf = (real: RealLedger) => loadStock(real.stores[0].stores, real.world.member);

export function took(model: LedgerModel, what: Effect): void {
  model.held = plus(model.held, what);
  model.undoable.push(what);
  model.changes += 1;
}

/** The store says the same as the model, the lots the same as the ledger, and nothing is below none. */
async function agree(model: LedgerModel, real: RealLedger): Promise<void> {
  const { member } = real.world;
  const { stocks } = real.stores[1].stores;
  const { batches, changes } = await stocks.ledger(member.id);
  const { lots, version } = await stocks.load(member.id);
  const brief = (list: readonly Lot[]) =>
    list
      .map(
        (one) =>
          `${one.id} ${one.batchId} ${one.place} ${one.portions} ${one.since} ${one.usedDays}`,
      )
      .toSorted();
  expect(brief(foldLots(batches, changes))).toEqual(brief(lots));
  let held: Effect = new Map();
  for (const own of batches) {
    const sum = balanceOf(own, changes, lots);
    expect(balances(sum)).toBe(true);
    const { cooked, corrected, fridge, freezer, thawing, ate, gave, threwAway } = sum;
    held = plus(
      held,
      effect(
        own.id,
        Object.entries({
          cooked,
          corrected,
          fridge,
          freezer,
          thawing,
          ate,
          gave,
          "threw away": threwAway,
        }) as [Where, number][],
      ),
    );
    expect(fridge + freezer + thawing).toBeLessThanOrEqual(own.portionsCooked);
  }
  expect(Object.fromEntries(held)).toEqual(Object.fromEntries(model.held));
  expect([version, changes.length]).toEqual([model.changes, model.changes]);
  expect(lots.every((one) => one.portions > 0)).toBe(true);
}

export type LedgerCommand = fc.AsyncCommand<LedgerModel, RealLedger>;

export function commandOf(
  name: string,
  run: (model: LedgerModel, real: RealLedger) => Promise<void>,
): LedgerCommand {
  return {
    check: () => true,
    run: async (model, real) => {
      await run(model, real);
      await agree(model, real);
    },
    toString: () => name,
  };
}
