import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { allocate } from "../../../shared/allocation/allocate.ts";
import type { Allocation } from "../../../shared/allocation/types.ts";
import { costOf, leastCost } from "./exhaustive.ts";
import { canBeFrozen, goodFresh, isFresh, thawHoursFor } from "./kitchen-rules.ts";
import { anyKitchen, asStock, hoursOf, type Kitchen } from "./small-kitchen.ts";

const small = anyKitchen({ lots: 4, meals: 5, days: 6 });
const larger = anyKitchen({ lots: 8, meals: 20, days: 12 });

function plan(kitchen: Kitchen): Allocation {
  const { stock, slots, now, hours } = asStock(kitchen);
  return allocate(stock, slots, now, hours);
}

const isFrozen = (from: string): boolean => from === "freezer";

/** Portions by lot that the plan serves, from the fridge (thawing included) or from the freezer. */
function served(kitchen: Kitchen, found: Allocation, frozen: boolean): number[] {
  return kitchen.lots.map(
    (_, i) =>
      found.servings.filter((one) => one.lotId === `l${i}` && isFrozen(one.from) === frozen).length,
  );
}

describe("against exhaustive search over small kitchens", () => {
  it("no plan wastes less, then freezes less, then eats the first expired, then serves more meals from the freezer, oldest first", () => {
    fc.assert(
      fc.property(small, (kitchen) => {
        const found = plan(kitchen);
        const cost = costOf(kitchen, served(kitchen, found, false), served(kitchen, found, true));
        expect(cost).toEqual(leastCost(kitchen));
      }),
      { numRuns: 4000 },
    );
  });
});

describe("every plan", () => {
  it("serves from the fridge only what is ready and inside its date", () => {
    fc.assert(
      fc.property(larger, (kitchen) => {
        for (const one of plan(kitchen).servings.filter(({ from }) => !isFrozen(from))) {
          const lot = kitchen.lots[Number(one.lotId.slice(1))];
          const meal = kitchen.meals[Number(one.slot.key)];
          expect(lot !== undefined && meal !== undefined && goodFresh(kitchen, lot, meal)).toBe(
            true,
          );
        }
      }),
      { numRuns: 1000 },
    );
  });

  it("thaws at the last evening that fits, else the last morning, else an evening just missed", () => {
    fc.assert(
      fc.property(larger, (kitchen) => {
        for (const one of plan(kitchen).servings.filter(({ from }) => isFrozen(from))) {
          const lot = kitchen.lots[Number(one.lotId.slice(1))];
          const meal = kitchen.meals[Number(one.slot.key)];
          if (lot === undefined || meal === undefined || one.thawAt === null) expect.unreachable();
          const { evenings, mornings, missed } = thawHoursFor(kitchen, lot, meal);
          expect(hoursOf(one.thawAt)).toBe(
            evenings.at(-1) ?? mornings.at(-1) ?? missed.at(-1) ?? null,
          );
        }
      }),
      { numRuns: 1000 },
    );
  });

  it("accounts for every good portion in the fridge once, and gives no meal and no lot more than it has", () => {
    fc.assert(
      fc.property(larger, (kitchen) => {
        const found = plan(kitchen);
        const [fresh, thawed] = [served(kitchen, found, false), served(kitchen, found, true)];
        for (const [i, lot] of kitchen.lots.entries()) {
          const spare = found.surplus.filter((one) => one.lotId === `l${i}`);
          const left = spare.reduce((sum, one) => sum + one.portions, 0);
          if (isFresh(kitchen, lot)) expect((fresh[i] ?? 0) + left).toBe(lot.portions);
          else expect([fresh[i], left]).toEqual([0, 0]);
          const mayThaw = lot.place === "freezer" ? lot.portions : canBeFrozen(lot) ? left : 0;
          expect(thawed[i]).toBeLessThanOrEqual(mayThaw);
          expect(spare.map(({ advice }) => advice === "freeze")).toEqual(
            spare.map(() => canBeFrozen(lot)),
          );
        }
        for (const [i, meal] of kitchen.meals.entries()) {
          const here = found.servings.filter(({ slot }) => slot.key === `${i}`);
          expect(here.length).toBeLessThanOrEqual(meal.portions);
        }
      }),
      { numRuns: 1000 },
    );
  });
});
