import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { batchId, lotId } from "../../../shared/ids.ts";
import { discardBy } from "../../../shared/keeping/dates.ts";
import { decideEatFirst } from "../../../shared/stock/eat-first.ts";
import { isPast } from "../../../shared/stock/lot.ts";
import type { Batch, Lot } from "../../../shared/stock/types.ts";
import { batch, date, instant, keeping, lot, stockOf } from "../../kit/stock.ts";

const NOW = { at: instant("2026-10-14T12:00:00Z"), on: date("2026-10-14") };
const any = () => true;
const first = (lots: readonly Lot[], portions = 1, batches: readonly Batch[] = [batch()]) =>
  decideEatFirst(stockOf(batches, lots), { portions, isMeant: any }, NOW);
const takenFrom = (done: ReturnType<typeof first>) =>
  done.ok ? done.value.taken.map((one) => [one.lot.id, one.portions]) : done.problem.code;

const soon = lot({ id: lotId("soon") });
const later = lot({
  id: lotId("later"),
  since: date("2026-10-13"),
  sinceAt: instant("2026-10-13T17:00:00Z"),
});
const frozen = lot({
  id: lotId("frozen"),
  place: "freezer",
  portions: 2,
  usedDays: 1,
});
const thawing = (minutes: number) =>
  lot({
    id: lotId("thawing"),
    place: "thawing",
    portions: 1,
    usedDays: 1,
    since: date("2026-10-13"),
    sinceAt: NOW.at.subtract({ minutes }),
  });

describe("eating without saying which", () => {
  it("takes what has the earliest date", () => {
    expect(takenFrom(first([later, soon]))).toEqual([["soon", 1]]);
  });
  it("goes on to the next when one lot is not enough", () => {
    expect(takenFrom(first([later, lot({ ...soon, portions: 1.5 })], 2))).toEqual([
      ["soon", 1.5],
      ["later", 0.5],
    ]);
  });
  it("leaves the freezer alone while something in the fridge is ready", () => {
    expect(takenFrom(first([frozen, later]))).toEqual([["later", 1]]);
    expect(takenFrom(first([frozen]))).toEqual([["frozen", 1]]);
  });
  it("takes a thawing portion only after half of its lead, as the plan of meals does", () => {
    expect(takenFrom(first([thawing(719)]))).toBe("thawing still");
    expect(takenFrom(first([thawing(720)]))).toEqual([["thawing", 1]]);
    expect(takenFrom(first([thawing(719), frozen]))).toEqual([["frozen", 1]]);
  });
  it("never takes what is past its date, and says so when there is nothing else", () => {
    const past = lot({ id: lotId("past"), since: date("2026-10-10") });
    expect(takenFrom(first([past, later]))).toEqual([["later", 1]]);
    expect(takenFrom(first([past]))).toBe("all past its date");
    expect(takenFrom(first([]))).toBe("none in stock");
  });
  it("counts what can be eaten, not what is past its date, when more is asked", () => {
    const past = lot({ id: lotId("past"), since: date("2026-10-10") });
    expect(first([past, frozen], 3)).toMatchObject({
      problem: { code: "not so many portions", asked: 3, have: 2 },
    });
  });
  it.each([0, -1, 0.3, Number.NaN])("refuses %s portions", (portions) => {
    expect(takenFrom(first([soon], portions))).toBe("portions not halves");
  });

  it("on the last good day it is eaten, on the next it is not", () => {
    const at = (on: string) =>
      decideEatFirst(
        stockOf([batch()], [soon]),
        { portions: 1, isMeant: any },
        { at: instant(`${on}T20:00:00Z`), on: date(on) },
      ).ok;
    expect([at("2026-10-14"), at("2026-10-15")]).toEqual([true, false]);
  });

  it("of any stock: exactly so many, none past its date, none frozen before all that is ready, none later before one that is earlier", () => {
    const anyLot = fc.record({
      batch: fc.nat(2),
      place: fc.constantFrom("fridge", "thawing", "freezer"),
      halves: fc.integer({ min: 1, max: 6 }),
      ago: fc.integer({ min: 0, max: 5 }),
      usedDays: fc.integer({ min: 0, max: 3 }),
    } as const);
    const batches = [1, 3, 5].map((fridgeDays, n) =>
      batch({ id: batchId(`b${n}`), keeping: keeping({ fridgeDays }) }),
    );
    fc.assert(
      fc.property(
        fc.array(anyLot, { maxLength: 8 }),
        fc.integer({ min: 1, max: 16 }),
        (drawn, halves) => {
          const lots = drawn.map((one, n) =>
            lot({
              id: lotId(`l${n}`),
              batchId: batchId(`b${one.batch}`),
              place: one.place,
              portions: one.halves / 2,
              usedDays: one.usedDays,
              since: NOW.on.subtract({ days: one.ago }),
              sinceAt: NOW.at.subtract({ hours: 24 * one.ago }),
            }),
          );
          const done = first(lots, halves / 2, batches);
          if (!done.ok) return;
          const { taken } = done.value;
          expect(taken.reduce((sum, one) => sum + one.portions, 0)).toBe(halves / 2);
          for (const one of taken) expect(isPast(one.lot, one.batch, NOW.on)).toBe(false);
          const left = done.value.lots.filter((one) => one.portions > 0);
          const untouched = lots.filter((one) => taken.every((took) => took.lot.id !== one.id));
          const passedOver = [...left, ...untouched].filter((one) => {
            const own = batches.find(({ id }) => id === one.batchId) ?? batch();
            const isReady =
              one.place === "fridge" ||
              (one.place === "thawing" && one.since.until(NOW.on).days > 0);
            return isReady && !isPast(one, own, NOW.on);
          });
          const day = (one: Lot): string =>
            discardBy(
              one,
              batches.find(({ id }) => id === one.batchId)?.keeping ?? keeping(),
            )?.toString() ?? "9999";
          const latest =
            taken
              .map((one) => day(one.lot))
              .toSorted()
              .at(-1) ?? "";
          for (const one of passedOver) expect(day(one) >= latest).toBe(true);
        },
      ),
      { numRuns: 500 },
    );
  });
});
