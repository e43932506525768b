import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { allocate } from "../../../shared/allocation/allocate.ts";
import { mealSlots } from "../../../shared/allocation/slots.ts";
import { batchId, lotId, slotRuleId } from "../../../shared/ids.ts";
import { discardBy } from "../../../shared/keeping/dates.ts";
import type { Stock } from "../../../shared/stock/types.ts";
import { dateIn, isDateBefore } from "../../../shared/time.ts";
import { batch, choice, instant, keeping, lot, stockOf, time, ZONE } from "../../kit/stock.ts";
import { anyKitchen, asStock } from "./small-kitchen.ts";

/** Thousands of cases on a busy machine. */
const SLOW_MS = 60_000;

const NOW = instant("2026-10-11T18:00:00Z");
const slots = mealSlots(
  [
    {
      id: slotRuleId("lunch"),
      name: "lunch",
      weekdays: [1, 2, 3, 4, 5],
      time: time("12:30"),
      portions: 1,
    },
  ],
  NOW,
  ZONE,
  7,
);

describe("half portions", () => {
  it("a half that is alone is nobody's meal: it is spare, whether it freezes or not", () => {
    for (const freezes of ["well", "no"] as const) {
      const pot = batch({ keeping: keeping({ freezes }) });
      const found = allocate(stockOf([pot], [lot({ portions: 2.5 })]), slots, NOW, choice());
      expect(found.servings.map((one) => one.portions)).toEqual([1, 1]);
      expect(found.surplus).toEqual([
        { lotId: "lot1", portions: 0.5, advice: "spare", why: "half a portion" },
      ]);
    }
  });
  it("two halves of one batch make a portion, as good as the shorter of the two", () => {
    const pot = batch({ keeping: keeping({ fridgeDays: 3 }) });
    const lots = [
      lot({ id: lotId("a"), portions: 0.5 }),
      // One day less: part of it was in the fridge once before.
      lot({ id: lotId("b"), portions: 0.5, usedDays: 2 }),
    ];
    const found = allocate(stockOf([pot], lots), slots, NOW, choice());
    expect(found.surplus).toEqual([]);
    expect(found.servings.map((one) => [one.lotId, one.portions, one.slot.key])).toEqual([
      ["a", 0.5, "lunch/2026-10-12"],
      ["b", 0.5, "lunch/2026-10-12"],
    ]);
  });
  it("halves of different batches are no portion", () => {
    const pots = [batch({ id: batchId("x") }), batch({ id: batchId("y") })];
    const lots = [
      lot({ id: lotId("a"), batchId: batchId("x"), portions: 0.5 }),
      lot({ id: lotId("b"), batchId: batchId("y"), portions: 0.5 }),
    ];
    expect(allocate(stockOf(pots, lots), slots, NOW, choice()).servings).toEqual([]);
  });
});

describe("any stock with halves in it", () => {
  const anyHalves = fc.tuple(
    anyKitchen({ lots: 8, meals: 12, days: 9 }),
    fc.array(fc.integer({ min: 1, max: 7 }), { minLength: 8, maxLength: 8 }),
    fc.integer({ min: 1, max: 4 }),
  );
  /** The kitchen's lots as halves of few batches. */
  const halved = (stock: Stock, halves: readonly number[], batches: number): Stock => ({
    ...stock,
    lots: stock.lots.map((one, i) => ({
      ...one,
      batchId: batchId(`b${i % Math.min(batches, stock.batches.length)}`),
      portions: (halves[i] ?? 2) / 2,
    })),
  });

  it(
    "loses no half and invents none, and every meal is of whole portions",
    () => {
      fc.assert(
        fc.property(anyHalves, ([kitchen, halves, batches]) => {
          const { stock, slots: meals, now, hours } = asStock(kitchen);
          const own = halved(stock, halves, batches);
          const { servings, surplus } = allocate(own, meals, now, hours);
          const today = dateIn(now, hours.zone);
          const sum = (list: readonly { readonly portions: number }[]): number =>
            list.reduce((total, one) => total + one.portions, 0);
          for (const one of own.lots) {
            const mine = servings.filter((s) => s.lotId === one.id);
            const [thawed, eaten] = [
              sum(mine.filter((s) => s.from === "freezer")),
              sum(mine.filter((s) => s.from !== "freezer")),
            ];
            const spare = sum(surplus.filter((s) => s.lotId === one.id));
            const pot = own.batches.find(({ id }) => id === one.batchId);
            const last = pot === undefined ? null : discardBy(one, pot.keeping);
            const isGood = last !== null && !isDateBefore(last, today);
            expect(eaten + spare).toBe(isGood ? one.portions : 0);
            expect(thawed).toBeLessThanOrEqual(one.place === "freezer" ? one.portions : spare);
            expect(
              mine.every(
                (s) => last === null || s.from === "freezer" || !isDateBefore(last, s.slot.date),
              ),
            ).toBe(true);
          }
          for (const meal of meals) {
            const here = servings.filter((s) => s.slot.key === meal.key);
            const byBatch = own.batches.map(({ id }) =>
              sum(here.filter((s) => own.lots.find((one) => one.id === s.lotId)?.batchId === id)),
            );
            expect(byBatch.every(Number.isInteger)).toBe(true);
            expect(sum(here)).toBeLessThanOrEqual(meal.portions);
          }
        }),
        { numRuns: 2000 },
      );
    },
    SLOW_MS,
  );
});
