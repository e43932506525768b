import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { allocate } from "../../../shared/allocation/allocate.ts";
import { mealSlots } from "../../../shared/allocation/slots.ts";
import type { MealRule, MealSlot } from "../../../shared/allocation/types.ts";
import { batchId, lotId, slotRuleId } from "../../../shared/ids.ts";
import { discardBy } from "../../../shared/keeping/dates.ts";
import type { Batch, Lot } from "../../../shared/stock/types.ts";
import {
  batch,
  choice,
  date,
  instant,
  keeping,
  lot,
  stockOf,
  time,
  ZONE,
} from "../../kit/stock.ts";

const SUNDAY_EVENING = instant("2026-10-11T18:00:00Z");
const lunches: MealRule = {
  id: slotRuleId("lunch"),
  name: "lunch",
  weekdays: [1, 2, 3, 4, 5],
  time: time("12:30"),
  portions: 1,
};
const slots = (rules: readonly MealRule[], days = 7): readonly MealSlot[] =>
  mealSlots(rules, SUNDAY_EVENING, ZONE, days);

describe("a batch of eight on Sunday, lunches on weekdays", () => {
  const found = allocate(
    stockOf([batch({ portionsCooked: 8 })], [lot({ portions: 8 })]),
    slots([lunches]),
    SUNDAY_EVENING,
    choice(),
  );

  it("keeps three in the fridge, for Monday to Wednesday", () => {
    const fridge = found.servings.filter((one) => one.from === "fridge");
    expect(fridge.map((one) => one.slot.date.toString())).toEqual([
      "2026-10-12",
      "2026-10-13",
      "2026-10-14",
    ]);
  });
  it("freezes the five that no meal takes before their date", () => {
    expect(found.surplus).toEqual([
      { lotId: "lot1", portions: 5, advice: "freeze", why: "no meal before its date" },
    ]);
  });
  it("serves Thursday and Friday from the freezer, each thawing a full day and inside its life", () => {
    const frozen = found.servings.filter((one) => one.from === "freezer");
    expect(frozen.map((one) => [one.slot.date.toString(), one.thawAt?.toString()])).toEqual([
      ["2026-10-15", "2026-10-13T18:00:00Z"],
      ["2026-10-16", "2026-10-14T18:00:00Z"],
    ]);
  });
});

describe("one lunch left, a freezable lot due Monday and a salad due Tuesday", () => {
  it("gives the salad the lunch and freezes the other", () => {
    const pot = batch({ id: batchId("pot"), keeping: keeping({ fridgeDays: 1 }) });
    const salad = batch({
      id: batchId("salad"),
      keeping: keeping({ fridgeDays: 2, freezes: "no" }),
    });
    const lots = [
      lot({ id: lotId("p"), batchId: pot.id, portions: 1 }),
      lot({ id: lotId("s"), batchId: salad.id, portions: 1 }),
    ];
    const monday = slots([{ ...lunches, weekdays: [1] }], 2);
    const found = allocate(stockOf([pot, salad], lots), monday, SUNDAY_EVENING, choice());
    expect(found.servings.map((one) => one.lotId)).toEqual(["s"]);
    expect(found.surplus).toMatchObject([{ lotId: "p", advice: "freeze" }]);
  });
});

interface SmallLot {
  readonly portions: number;
  readonly days: number;
  readonly freezes: boolean;
}
const smallLot = fc.record({
  portions: fc.integer({ min: 1, max: 3 }),
  days: fc.integer({ min: 1, max: 4 }),
  freezes: fc.boolean(),
});

function build(list: readonly SmallLot[]): { batches: Batch[]; lots: Lot[] } {
  const batches = list.map((one, index) =>
    batch({
      id: batchId(`b${index}`),
      keeping: keeping({ fridgeDays: one.days, freezes: one.freezes ? "well" : "no" }),
    }),
  );
  const lots = list.map((one, index) =>
    lot({ id: lotId(`l${index}`), batchId: batchId(`b${index}`), portions: one.portions }),
  );
  return { batches, lots };
}

/** Every way to fill the meals in order: the least waste, then the least freezing, found by trying all. */
function exhaustive(
  list: readonly SmallLot[],
  dates: readonly number[],
): readonly [number, number] {
  let best: readonly [number, number] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const left = list.map((one) => one.portions);
  const visit = (seat: number): void => {
    const day = dates[seat];
    if (day === undefined) {
      const waste = left.reduce((sum, n, i) => sum + (list[i]?.freezes ? 0 : n), 0);
      const froze = left.reduce((sum, n, i) => sum + (list[i]?.freezes ? n : 0), 0);
      if (waste < best[0] || (waste === best[0] && froze < best[1])) best = [waste, froze];
      return;
    }
    visit(seat + 1);
    for (const [index, one] of list.entries()) {
      if ((left[index] ?? 0) === 0 || one.days < day) continue;
      left[index] = (left[index] ?? 0) - 1;
      visit(seat + 1);
      left[index] = (left[index] ?? 0) + 1;
    }
  };
  visit(0);
  return best;
}

describe("against exhaustive search", () => {
  it("no assignment wastes less, and none that wastes as little freezes less", () => {
    fc.assert(
      fc.property(
        fc.array(smallLot, { minLength: 1, maxLength: 4 }),
        fc.uniqueArray(fc.integer({ min: 1, max: 5 }), { maxLength: 5 }),
        (list, weekdays) => {
          const { batches, lots } = build(list);
          const meals = slots([{ ...lunches, weekdays }], 5);
          const found = allocate(stockOf(batches, lots), meals, SUNDAY_EVENING, choice());
          const sum = (advice: string) =>
            found.surplus.reduce((n, one) => n + (one.advice === advice ? one.portions : 0), 0);
          const dates = meals.map((slot) => date("2026-10-11").until(slot.date).days);
          expect([sum("spare"), sum("freeze")]).toEqual(exhaustive(list, dates));
        },
      ),
      { numRuns: 1500 },
    );
  });

  it("serves no portion past its date, no portion twice, and every portion is accounted for", () => {
    fc.assert(
      fc.property(
        fc.array(smallLot, { minLength: 1, maxLength: 6 }),
        fc.uniqueArray(fc.integer({ min: 1, max: 7 })),
        fc.integer({ min: 1, max: 3 }),
        (list, weekdays, portions) => {
          const { batches, lots } = build(list);
          const found = allocate(
            stockOf(batches, lots),
            slots([{ ...lunches, weekdays, portions }], 14),
            SUNDAY_EVENING,
            choice(),
          );
          for (const [index, one] of lots.entries()) {
            const own = batches[index];
            const last = own === undefined ? null : discardBy(one, own.keeping);
            const fresh = found.servings.filter((s) => s.lotId === one.id && s.from === "fridge");
            expect(fresh.every((s) => last !== null && s.slot.date.until(last).days >= 0)).toBe(
              true,
            );
            const spare = found.surplus
              .filter((s) => s.lotId === one.id)
              .reduce((n, s) => n + s.portions, 0);
            expect(fresh.length + spare).toBe(one.portions);
          }
          for (const served of found.servings.filter((s) => s.from === "freezer")) {
            const lead =
              served.thawAt === null ? 0 : served.slot.at.since(served.thawAt).total("hours");
            expect(lead).toBeGreaterThanOrEqual(24);
            const own = batches.find(
              (b) => lots.find((l) => l.id === served.lotId)?.batchId === b.id,
            );
            const thawedOn = served.thawAt?.toZonedDateTimeISO(ZONE).toPlainDate();
            // Frozen on the day of cooking, one day is used; the day of thawing counts.
            expect((thawedOn?.until(served.slot.date).days ?? 99) + 1).toBeLessThanOrEqual(
              (own?.keeping.fridgeDays ?? 0) + 1 - 1,
            );
          }
        },
      ),
      { numRuns: 500 },
    );
  });
});
