import fc from "fast-check";
import { expect } from "vitest";
import { batchId, lotId } from "../../../shared/ids.ts";
import { decideCorrect } from "../../../shared/stock/correct.ts";
import { decideLog, decideMove, type MoveKind } from "../../../shared/stock/decide.ts";
import { decideEatFirst } from "../../../shared/stock/eat-first.ts";
import { type Lot, WASTE_REASONS } from "../../../shared/stock/types.ts";
import { decideUndo } from "../../../shared/stock/undo.ts";
import { batch } from "../../kit/stock.ts";
import {
  commandOf,
  type Effect,
  effect,
  freshCause,
  type LedgerCommand,
  plus,
  type RealLedger,
  stockOf,
  took,
  type Where,
  when,
  write,
} from "./ledger-model.ts";

// What can be done to a stock, rightly and wrongly, and what the model makes of it.

const log = (cooked: number, froze: number, ate: number): LedgerCommand =>
  commandOf(`log ${cooked}, froze ${froze}, ate ${ate}`, async (model, real) => {
    const { at, on } = when(real);
    const { member, published, newId } = real.world;
    const made = batch({
      id: batchId(newId()),
      memberId: member.id,
      revisionId: published.revisionId,
      portionsCooked: cooked,
      cookedAt: at,
      cookedOn: on,
    });
    const cause = freshCause(real);
    const done = await write(real, cause, {
      newBatch: made,
      decide: () => decideLog(made, froze, { at, on }, () => lotId(newId()), ate),
    });
    expect(done.ok).toBe(froze + ate <= cooked);
    if (!done.ok) return;
    real.lastCause = cause;
    took(
      model,
      effect(made.id, [
        ["cooked", cooked],
        ["fridge", cooked - froze - ate],
        ["freezer", froze],
        ["ate", ate],
      ]),
    );
  });

interface Wish {
  readonly pick: number;
  readonly kind: MoveKind;
  readonly portions: number;
  readonly reason: number;
}

const OUT: Readonly<Record<MoveKind, Where>> = {
  froze: "freezer",
  "set to thaw": "thawing",
  ate: "ate",
  gave: "gave",
  "threw away": "threw away",
};

/** A move of the lot picked, and what it does if it is taken. */
async function moved(real: RealLedger, lot: Lot | undefined, wish: Wish, by: 0 | 1 = 0) {
  const cause = freshCause(real);
  const lotWish = {
    lotId: lot?.id ?? lotId("nolot"),
    kind: wish.kind,
    portions: wish.portions,
    reason: WASTE_REASONS[wish.reason] ?? null,
  };
  const done = await write(
    real,
    cause,
    { decide: (own) => decideMove(own, lotWish, when(real), () => lotId(real.world.newId())) },
    by,
  );
  if (lot === undefined || wish.portions <= 0 || wish.portions % 0.5 !== 0)
    expect(done.ok).toBe(false);
  const what =
    lot === undefined
      ? new Map()
      : plus(
          effect(lot.batchId, [[lot.place, -wish.portions]]),
          effect(lot.batchId, [[OUT[wish.kind], wish.portions]]),
        );
  return { done, cause, what };
}

const pickLot = async (real: RealLedger, pick: number): Promise<Lot | undefined> => {
  const { lots } = await stockOf(real);
  return lots[pick % (lots.length + 1)];
};

const move = (wish: Wish): LedgerCommand =>
  commandOf(`${wish.kind} ${wish.portions} of lot ${wish.pick}`, async (model, real) => {
    const lot = await pickLot(real, wish.pick);
    const { done, cause, what } = await moved(real, lot, wish);
    if (!done.ok) return;
    expect(wish.portions).toBeLessThanOrEqual(lot?.portions ?? 0);
    real.lastCause = cause;
    took(model, what);
  });

const twoAtOnce = (one: Wish, other: Wish): LedgerCommand =>
  commandOf(
    `at once ${one.kind} ${one.portions} and ${other.kind} ${other.portions} of lot ${one.pick}`,
    async (model, real) => {
      const lot = await pickLot(real, one.pick);
      const both = await Promise.all([moved(real, lot, one, 0), moved(real, lot, other, 1)]);
      const { stocks } = real.stores[0].stores;
      const taken = await Promise.all(
        both
          .filter(({ done }) => done.ok)
          .map(async ({ cause, what }) => ({
            what,
            cause,
            version: (await stocks.findByCause(cause))?.version ?? Number.NaN,
          })),
      );
      for (const { what, cause } of taken.toSorted((a, b) => a.version - b.version)) {
        took(model, what);
        real.lastCause = cause;
      }
    },
  );

const eatFirst = (portions: number): LedgerCommand =>
  commandOf(`ate ${portions} of whatever must go first`, async (model, real) => {
    let what: Effect = new Map();
    const cause = freshCause(real);
    const done = await write(real, cause, {
      decide: (own) => {
        const step = decideEatFirst(own, { portions, isMeant: () => true }, when(real));
        if (step.ok) {
          what = step.value.taken
            .map(({ lot, portions: n }) =>
              effect(lot.batchId, [
                [lot.place, -n],
                ["ate", n],
              ]),
            )
            .reduce((a, b) => plus(a, b));
        }
        return step;
      },
    });
    if (!done.ok) return;
    real.lastCause = cause;
    took(model, what);
  });

const correct = (pick: number, counted: number): LedgerCommand =>
  commandOf(`there are ${counted} in lot ${pick}`, async (model, real) => {
    const lot = await pickLot(real, pick);
    const cause = freshCause(real);
    const wish = { lotId: lot?.id ?? lotId("nolot"), counted };
    const done = await write(real, cause, {
      decide: (own) => decideCorrect(own, wish, when(real)),
    });
    if (!done.ok || lot === undefined) return expect(done.ok).toBe(false);
    real.lastCause = cause;
    const more = counted - lot.portions;
    return took(
      model,
      effect(lot.batchId, [
        [lot.place, more],
        ["corrected", more],
      ]),
    );
  });

/** As the button does it: the last change is read first, then taken back. */
const undo = (): LedgerCommand =>
  commandOf("undo", async (model, real) => {
    const { member } = real.world;
    const last = await real.stores[0].stores.stocks.lastChange(member.id);
    expect(last === null).toBe(model.undoable.length === 0);
    if (last === null) return;
    const done = await write(real, freshCause(real), {
      undoes: last.change.id,
      emptied: last.batches,
      decide: () => decideUndo(last.change, last.lots, when(real)),
    });
    if (!done.ok) return expect(done.problem.code).toBe("thawed since");
    model.held = plus(model.held, model.undoable.pop() ?? new Map(), -1);
    model.changes += 1;
  });

const repeat = (): LedgerCommand =>
  commandOf("the last one again", async (_model, real) => {
    if (real.lastCause === null) return;
    const [lot] = (await stockOf(real)).lots;
    const wish = { lotId: lot?.id ?? lotId("nolot"), kind: "ate", portions: 0.5 } as const;
    const done = await write(
      real,
      real.lastCause,
      { decide: (own) => decideMove(own, wish, when(real), () => lotId(real.world.newId())) },
      1,
    );
    expect(done).toMatchObject({ ok: true, value: { already: true } });
  });

const wait = (hours: number): LedgerCommand =>
  commandOf(`${hours} h later`, async (_model, real) => {
    real.now = real.now.add({ hours });
  });

const wish = fc.record({
  pick: fc.nat(9),
  kind: fc.constantFrom<MoveKind[]>("froze", "set to thaw", "ate", "gave", "threw away"),
  portions: fc.oneof(
    { weight: 8, arbitrary: fc.integer({ min: 1, max: 8 }).map((halves) => halves / 2) },
    { weight: 1, arbitrary: fc.constantFrom(0, -1, 0.25, 1.3, 1e9, Number.NaN) },
  ),
  reason: fc.nat(4),
});

/** Any sequence of valid and invalid commands. */
export const ledgerCommands = fc.commands(
  [
    fc
      .tuple(fc.integer({ min: 1, max: 9 }), fc.nat(6), fc.nat(4))
      .map(([cooked, froze, ate]) => log(cooked, froze / 2, ate / 2)),
    wish.map(move),
    wish.map(move),
    wish.map(move),
    fc.tuple(wish, wish).map(([one, other]) => twoAtOnce(one, other)),
    fc.integer({ min: 1, max: 7 }).map((halves) => eatFirst(halves / 2)),
    fc
      .tuple(fc.nat(9), fc.integer({ min: -1, max: 20 }))
      .map(([pick, halves]) => correct(pick, halves / 2)),
    fc.constant(undo()),
    fc.constant(repeat()),
    fc.integer({ min: 1, max: 40 }).map(wait),
  ],
  { maxCommands: 30, size: "max" },
);
