import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { allocate } from "../../../shared/allocation/allocate.ts";
import { mealKey, mealsKept } from "../../../shared/allocation/exceptions.ts";
import { mealSlots } from "../../../shared/allocation/slots.ts";
import type { Allocation } from "../../../shared/allocation/types.ts";
import { batchId, lotId, slotRuleId } from "../../../shared/ids.ts";
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
import { costOf, leastCost } from "./exhaustive.ts";
import { canBeFrozen, goodFresh, goodThawed, isFresh } from "./kitchen-rules.ts";
import { anyKitchen, asStock, type Kitchen } from "./small-kitchen.ts";

/** Thousands of cases on a busy machine. */
const SLOW_MS = 60_000;

const NOW = instant("2026-10-11T18:00:00Z");
const lunch = {
  id: slotRuleId("lunch"),
  name: "lunch",
  weekdays: [1, 2, 3, 4, 5],
  time: time("12:30"),
  portions: 1,
};
const slots = mealSlots([lunch], NOW, ZONE, 7);
const on = (day: string): string => mealKey({ mealId: lunch.id, date: date(day) });

describe("salmon that keeps until Tuesday, kept for Thursday lunch", () => {
  const salmon = batch({ id: batchId("salmon"), keeping: keeping({ fridgeDays: 2 }) });
  const pot = batch({ id: batchId("pot"), keeping: keeping({ fridgeDays: 3 }) });
  const lots = [
    lot({ id: lotId("s"), batchId: salmon.id, portions: 1 }),
    lot({ id: lotId("p"), batchId: pot.id, portions: 5 }),
  ];
  const pins = [{ slotKey: on("2026-10-15"), batchId: salmon.id }];
  const found = allocate(stockOf([salmon, pot], lots), slots, NOW, choice(), pins);

  it("is frozen now and set to thaw for that meal", () => {
    const [own] = found.servings.filter((one) => one.lotId === "s");
    expect(own).toMatchObject({ from: "freezer", why: "pinned", slot: { key: on("2026-10-15") } });
    expect(own?.thawAt?.toString()).toBe("2026-10-14T07:00:00Z");
    expect(found.surplus).toContainEqual({
      lotId: "s",
      portions: 1,
      advice: "freeze",
      why: "kept for a later meal",
    });
  });
  it("leaves the other meals to the other batch", () => {
    const others = found.servings.filter((one) => one.lotId === "p");
    expect(others.map((one) => one.slot.date.toString())).toEqual([
      "2026-10-12",
      "2026-10-13",
      "2026-10-14",
      "2026-10-16",
    ]);
  });
});

describe("a meal that is skipped or eaten out", () => {
  it("takes nothing from stock, and the rest of its rule stays", () => {
    const exceptions = [
      { mealId: lunch.id, date: date("2026-10-12"), kind: "skip" as const },
      { mealId: lunch.id, date: date("2026-10-14"), kind: "out" as const },
    ];
    expect(mealsKept(slots, exceptions).map((one) => one.date.toString())).toEqual([
      "2026-10-13",
      "2026-10-15",
      "2026-10-16",
    ]);
  });
});

const small = anyKitchen({ lots: 4, meals: 5, days: 6 });

function canHold(kitchen: Kitchen, lotIndex: number, mealIndex: number): boolean {
  const one = kitchen.lots[lotIndex];
  const meal = kitchen.meals[mealIndex];
  if (one === undefined || meal === undefined) return false;
  const own = isFresh(kitchen, one);
  return (
    (own && goodFresh(kitchen, one, meal)) ||
    ((one.place === "freezer" || (own && canBeFrozen(one))) && goodThawed(kitchen, one, meal))
  );
}

function plan(kitchen: Kitchen, lotIndex: number, mealIndex: number): Allocation {
  const { stock, slots: meals, now, hours } = asStock(kitchen);
  const pins = [{ slotKey: `${mealIndex}`, batchId: batchId(`b${lotIndex}`) }];
  return allocate(stock, meals, now, hours, pins);
}

const pinned = fc.tuple(small, fc.nat({ max: 3 }), fc.nat({ max: 4 }));

describe("any one pin", () => {
  it(
    "is held exactly when a portion can be eaten at that meal, for as many as there are and it takes",
    () => {
      fc.assert(
        fc.property(pinned, ([kitchen, lotIndex, mealIndex]) => {
          const own = plan(kitchen, lotIndex, mealIndex).servings.filter((s) => s.why === "pinned");
          const most = Math.min(
            kitchen.lots[lotIndex]?.portions ?? 0,
            kitchen.meals[mealIndex]?.portions ?? 0,
          );
          expect(own.length).toBe(canHold(kitchen, lotIndex, mealIndex) ? most : 0);
          expect(
            own.every((s) => s.slot.key === `${mealIndex}` && s.lotId === `l${lotIndex}`),
          ).toBe(true);
        }),
        { numRuns: 2000 },
      );
    },
    SLOW_MS,
  );

  it(
    "leaves a rest that no plan gives out better",
    () => {
      fc.assert(
        fc.property(pinned, ([kitchen, lotIndex, mealIndex]) => {
          const found = plan(kitchen, lotIndex, mealIndex);
          const taken = found.servings.filter((s) => s.why === "pinned").length;
          const less = <T extends { readonly portions: number }>(list: readonly T[], at: number) =>
            list.map((one, i) => (i === at ? { ...one, portions: one.portions - taken } : one));
          const rest: Kitchen = {
            ...kitchen,
            lots: less(kitchen.lots, lotIndex),
            meals: less(kitchen.meals, mealIndex),
          };
          const served = (frozen: boolean) =>
            rest.lots.map(
              (_, i) =>
                found.servings.filter(
                  (s) =>
                    s.lotId === `l${i}` && s.why !== "pinned" && (s.from === "freezer") === frozen,
                ).length,
            );
          expect(costOf(rest, served(false), served(true))).toEqual(leastCost(rest));
        }),
        { numRuns: 1500 },
      );
    },
    SLOW_MS,
  );
});

describe("many pins at once", () => {
  const many = fc.tuple(
    anyKitchen({ lots: 6, meals: 12, days: 9 }),
    fc.array(fc.tuple(fc.nat({ max: 5 }), fc.nat({ max: 11 })), { maxLength: 8 }),
  );
  it(
    "serve nothing past its date nor thawed too late, and no portion twice",
    () => {
      fc.assert(
        fc.property(many, ([kitchen, wishes]) => {
          const { stock, slots: meals, now, hours } = asStock(kitchen);
          const pins = wishes.map(([i, m]) => ({ slotKey: `${m}`, batchId: batchId(`b${i}`) }));
          const { servings, surplus } = allocate(stock, meals, now, hours, pins);
          for (const one of servings) {
            const own = kitchen.lots[Number(one.lotId.slice(1))];
            const meal = kitchen.meals[Number(one.slot.key)];
            if (own === undefined || meal === undefined) expect.unreachable();
            const fits = one.from === "freezer" ? goodThawed : goodFresh;
            expect(fits(kitchen, own, meal)).toBe(true);
          }
          for (const [i, own] of kitchen.lots.entries()) {
            const eaten = servings.filter(
              (s) => s.lotId === `l${i}` && s.from !== "freezer",
            ).length;
            const thawed = servings.filter(
              (s) => s.lotId === `l${i}` && s.from === "freezer",
            ).length;
            const left = surplus
              .filter((s) => s.lotId === `l${i}`)
              .reduce((sum, s) => sum + s.portions, 0);
            if (isFresh(kitchen, own)) expect(eaten + left).toBe(own.portions);
            expect(thawed).toBeLessThanOrEqual(own.place === "freezer" ? own.portions : left);
          }
          for (const [m, meal] of kitchen.meals.entries()) {
            expect(servings.filter((s) => s.slot.key === `${m}`).length).toBeLessThanOrEqual(
              meal.portions,
            );
          }
        }),
        { numRuns: 1500 },
      );
    },
    SLOW_MS,
  );
});
