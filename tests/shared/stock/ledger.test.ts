import fc from "fast-check";
import type { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { causeId, changeId, type LotId, lotId } from "../../../shared/ids.ts";
import { decideLog, decideMove, type MoveKind } from "../../../shared/stock/decide.ts";
import { balanceOf, balances, foldLots } from "../../../shared/stock/ledger.ts";
import type { StockStep } from "../../../shared/stock/movement.ts";
import type { Batch, Lot, StockChange } from "../../../shared/stock/types.ts";
import { decideUndo } from "../../../shared/stock/undo.ts";
import { batch, counter, date, instant, lot, stockOf } from "../../kit/stock.ts";

const COOKED = instant("2026-10-11T17:00:00Z");
const ON = date("2026-10-11");

function change(step: StockStep, version: number, undoes: StockChange | null = null): StockChange {
  return {
    id: changeId(`change${version}`),
    memberId: batch().memberId,
    version,
    causeId: causeId(`cause${version}`),
    recordedAt: COOKED,
    movements: step.movements,
    undoes: undoes?.id ?? null,
  };
}

function applied(lots: readonly Lot[], step: StockStep): readonly Lot[] {
  const touched = new Set(step.lots.map((one) => one.id));
  return [...lots.filter((one) => !touched.has(one.id)), ...step.lots].filter(
    (one) => one.portions > 0,
  );
}

const sorted = (lots: readonly Lot[]) =>
  [...lots]
    .map((one) => ({ ...one, since: one.since.toString(), sinceAt: one.sinceAt.toString() }))
    .sort((a, b) => (a.id < b.id ? -1 : 1));

describe("logging a batch", () => {
  it("puts all portions in the fridge and moves the frozen ones on", () => {
    const ids = counter("lot");
    const done = decideLog(batch({ portionsCooked: 8 }), 5, { at: COOKED, on: ON }, () =>
      lotId(ids()),
    );
    expect(
      done.ok && done.value.lots.map((one) => [one.place, one.portions, one.usedDays]),
    ).toEqual([
      ["fridge", 3, 0],
      ["freezer", 5, 1],
    ]);
  });

  it("refuses a cooking in the future and changes nothing", () => {
    const early = instant("2026-10-11T16:59:59Z");
    const done = decideLog(batch(), 0, { at: early, on: ON }, () => lotId("x"));
    expect(done).toMatchObject({ ok: false, problem: { code: "cooked in the future" } });
  });

  it("refuses a batch whose fridge life is over", () => {
    const late = { at: instant("2026-10-15T06:00:00Z"), on: date("2026-10-15") };
    expect(decideLog(batch(), 0, late, () => lotId("x"))).toMatchObject({
      ok: false,
      problem: { code: "cooked too long ago", daysAgo: 4, keepsDays: 3 },
    });
  });

  it("refuses to freeze more than was cooked", () => {
    expect(decideLog(batch(), 7, { at: COOKED, on: ON }, () => lotId("x"))).toMatchObject({
      ok: false,
      problem: { code: "froze more than cooked" },
    });
  });
});

describe("moving portions", () => {
  const move = (kind: MoveKind, portions: number, from: Lot, on = ON) =>
    decideMove(
      stockOf([batch()], [from]),
      { lotId: from.id, kind, portions },
      { at: COOKED, on },
      () => lotId("new"),
    );

  it("refuses more portions than there are", () => {
    expect(move("ate", 7, lot())).toMatchObject({
      ok: false,
      problem: { code: "not so many portions", have: 6 },
    });
  });
  it.each([0, -1, 1.25, 0.4, Number.NaN, Number.POSITIVE_INFINITY])(
    "refuses %s portions",
    (portions) => {
      expect(move("ate", portions, lot())).toMatchObject({ ok: false });
    },
  );
  it("does not freeze or give what is past its date, but lets it be thrown away", () => {
    const late = date("2026-10-15");
    expect(move("froze", 1, lot(), late)).toMatchObject({
      ok: false,
      problem: { code: "past its date" },
    });
    expect(move("gave", 1, lot(), late)).toMatchObject({
      ok: false,
      problem: { code: "past its date" },
    });
    expect(move("threw away", 6, lot(), late)).toMatchObject({ ok: true });
  });
  it("thaws only from the freezer", () => {
    expect(move("set to thaw", 1, lot())).toMatchObject({
      ok: false,
      problem: { code: "not in the freezer" },
    });
  });
  it("does not thaw in the fridge what has no fridge day left", () => {
    const spent = lot({ place: "freezer", usedDays: 4 });
    expect(move("set to thaw", 1, spent)).toMatchObject({
      ok: false,
      problem: { code: "no fridge days left after thawing" },
    });
  });
  it("joins portions frozen on one day into one lot", () => {
    const frozen = lot({ id: lotId("frozen"), place: "freezer", portions: 2, usedDays: 1 });
    const done = decideMove(
      stockOf([batch()], [lot(), frozen]),
      { lotId: lotId("lot1"), kind: "froze", portions: 3 },
      { at: COOKED, on: ON },
      () => lotId("new"),
    );
    expect(done.ok && done.value.lots.map((one) => [one.id, one.portions])).toEqual([
      ["lot1", 3],
      ["frozen", 5],
    ]);
  });
  it("refuses a lot that is gone", () => {
    expect(move("ate", 1, lot({ portions: 0 }))).toMatchObject({
      ok: false,
      problem: { code: "lot is gone" },
    });
  });
});

const KINDS: readonly MoveKind[] = ["froze", "set to thaw", "ate", "gave", "threw away"];
const wish = fc.record({
  pick: fc.nat(20),
  kind: fc.constantFrom(...KINDS),
  portions: fc.integer({ min: -1, max: 6 }),
  days: fc.integer({ min: 0, max: 2 }),
  undo: fc.integer({ min: 0, max: 4 }).map((n) => n === 0),
});

describe("any sequence of valid and invalid movements, with undo", () => {
  it("conserves portions, never goes negative, and leaves lots equal to the ledger's sum", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.array(wish, { maxLength: 25 }),
        (cooked, wishes) => {
          const own: Batch = batch({ portionsCooked: cooked });
          const ids = counter("lot");
          const fresh = (): LotId => lotId(ids());
          const first = decideLog(own, Math.floor(cooked / 2), { at: COOKED, on: ON }, fresh);
          if (!first.ok) throw new Error("a plain log must be taken");
          let lots = applied([], first.value);
          const all = new Map(first.value.lots.map((one) => [one.id, one]));
          const changes = [change(first.value, 1)];
          let on: Temporal.PlainDate = ON;
          for (const one of wishes) {
            on = on.add({ days: one.days });
            const when = { at: COOKED.add({ hours: 24 * on.since(ON).days }), on };
            const last = changes.at(-1);
            const chosen = lots[one.pick % Math.max(1, lots.length)];
            const undoing = one.undo && last !== undefined && last.undoes === null;
            const step = undoing
              ? decideUndo(
                  last,
                  [...all.values()].filter((held) =>
                    last.movements.some((m) => m.from === held.id || m.to === held.id),
                  ),
                  when,
                )
              : chosen === undefined
                ? null
                : decideMove(
                    stockOf([own], lots),
                    { lotId: chosen.id, kind: one.kind, portions: one.portions },
                    when,
                    fresh,
                  );
            if (step === null || !step.ok) continue;
            lots = applied(lots, step.value);
            for (const held of step.value.lots) all.set(held.id, held);
            changes.push(change(step.value, changes.length + 1, undoing ? last : null));
            const balance = balanceOf(own, changes, lots);
            expect(balances(balance)).toBe(true);
            expect(lots.every((held) => held.portions > 0)).toBe(true);
          }
          expect(sorted(foldLots([own], changes))).toEqual(sorted(lots));
        },
      ),
      { numRuns: 300 },
    );
  });

  it("undo puts everything back as it was", () => {
    const own = batch();
    const before = [lot()];
    const step = decideMove(
      stockOf([own], before),
      { lotId: lotId("lot1"), kind: "froze", portions: 4 },
      { at: COOKED, on: ON },
      () => lotId("new"),
    );
    if (!step.ok) throw new Error("the move must be taken");
    const back = decideUndo(change(step.value, 2), step.value.lots, { at: COOKED, on: ON });
    expect(back.ok && sorted(applied(applied(before, step.value), back.value))).toEqual(
      sorted(before),
    );
  });
});
