import fc from "fast-check";
import highsLoader from "highs";
import { describe, expect, it } from "vitest";
import { allocate } from "../../shared/allocation/allocate.ts";
import { canBeFrozen, goodFresh, goodThawed, isFresh } from "../shared/allocation/kitchen-rules.ts";
import { anyKitchen, asStock, type Kitchen } from "../shared/allocation/small-kitchen.ts";

/**
 * The allocation against a mixed-integer model solved by HiGHS (Huangfu and Hall, "Parallelizing the
 * dual revised simplex method", Mathematical Programming Computation 10, 2018; package `highs`). The
 * model knows the rules of `kitchen-rules.ts` only: which portion may be eaten at which meal. Its
 * objective puts a wasted portion above all frozen ones, and a frozen one above all meals served.
 */
// The package's types describe its CommonJS build; what is imported is the other one, the loader itself.
const load = highsLoader as unknown as typeof highsLoader.default;
const highs = await load();

const WASTED = 1e6;
const FROZEN = 1e3;

interface Totals {
  readonly wasted: number;
  readonly frozen: number;
  readonly thawed: number;
}

/** The model in LP format. With `fresh`, what each lot serves from the fridge is given beforehand. */
function model(kitchen: Kitchen, fresh: readonly number[] | null): string {
  const costs: string[] = [];
  const rows: string[] = [];
  const whole: string[] = [];
  const atMeal = kitchen.meals.map((): string[] => []);
  for (const [i, one] of kitchen.lots.entries()) {
    const own = isFresh(kitchen, one);
    const eaten: string[] = [];
    const thawed: string[] = [];
    for (const [m, meal] of kitchen.meals.entries()) {
      if (own && goodFresh(kitchen, one, meal)) {
        eaten.push(`e${i}_${m}`);
        atMeal[m]?.push(`e${i}_${m}`);
      }
      const mayThaw = one.place === "freezer" || (own && canBeFrozen(one));
      if (mayThaw && goodThawed(kitchen, one, meal)) {
        thawed.push(`t${i}_${m}`);
        atMeal[m]?.push(`t${i}_${m}`);
      }
    }
    whole.push(...eaten, ...thawed);
    costs.push(...thawed.map((name) => `- ${name}`));
    if (own) {
      // left: portions not eaten from the fridge, which are frozen (and may be thawed) or wasted.
      const freezable = canBeFrozen(one);
      costs.push(`+ ${freezable ? FROZEN : WASTED} left${i}`);
      rows.push(`${[...eaten, `left${i}`].join(" + ")} = ${one.portions}`);
      if (freezable && thawed.length > 0) rows.push(`${thawed.join(" + ")} - left${i} <= 0`);
      if (fresh !== null) rows.push(`left${i} = ${one.portions - (fresh[i] ?? 0)}`);
    } else if (thawed.length > 0) rows.push(`${thawed.join(" + ")} <= ${one.portions}`);
  }
  for (const [m, names] of atMeal.entries()) {
    if (names.length > 0) rows.push(`${names.join(" + ")} <= ${kitchen.meals[m]?.portions}`);
  }
  const list = (names: readonly string[]) => names.join("\n ");
  return `Minimize\n obj: ${list(costs.length === 0 ? ["0 x"] : costs)}\nSubject To\n ${list(rows.length === 0 ? ["x >= 0"] : rows)}\nGeneral\n ${list(whole.length === 0 ? ["x"] : whole)}\nEnd\n`;
}

function leastTotals(kitchen: Kitchen, fresh: readonly number[] | null = null): Totals {
  const found = highs.solve(model(kitchen, fresh), { mip_rel_gap: 0 });
  expect(found.Status).toBe("Optimal");
  const sum = (wanted: (name: string) => boolean): number =>
    Math.round(
      Object.entries(found.Columns).reduce(
        (total, [name, column]) => total + (wanted(name) && "Primal" in column ? column.Primal : 0),
        0,
      ),
    );
  const left = (freezable: boolean) =>
    sum((name) => {
      const lot = name.startsWith("left") ? kitchen.lots[Number(name.slice(4))] : undefined;
      return lot !== undefined && canBeFrozen(lot) === freezable;
    });
  return { wasted: left(false), frozen: left(true), thawed: sum((name) => name.startsWith("t")) };
}

function plan(kitchen: Kitchen): { readonly totals: Totals; readonly fresh: readonly number[] } {
  const { stock, slots, now, hours } = asStock(kitchen);
  const { servings, surplus } = allocate(stock, slots, now, hours);
  const advised = (advice: string) =>
    surplus.reduce((sum, one) => sum + (one.advice === advice ? one.portions : 0), 0);
  return {
    totals: {
      wasted: advised("spare"),
      frozen: advised("freeze"),
      thawed: servings.filter((one) => one.from === "freezer").length,
    },
    fresh: kitchen.lots.map(
      (_, i) => servings.filter((one) => one.from !== "freezer" && one.lotId === `l${i}`).length,
    ),
  };
}

describe("the allocation against a mixed-integer model", () => {
  it("wastes and freezes as little as the model over kitchens of up to thirty lots and sixty meals", () => {
    fc.assert(
      fc.property(anyKitchen({ lots: 30, meals: 60, days: 27 }), (kitchen) => {
        const { wasted, frozen } = leastTotals(kitchen);
        expect(plan(kitchen).totals).toMatchObject({ wasted, frozen });
      }),
      { numRuns: 60 },
    );
  }, 60_000);

  it("serves as many meals from the freezer as the model, which portions are eaten fresh being given", () => {
    fc.assert(
      fc.property(anyKitchen({ lots: 30, meals: 60, days: 27 }), (kitchen) => {
        const { totals, fresh } = plan(kitchen);
        expect(totals).toEqual(leastTotals(kitchen, fresh));
      }),
      { numRuns: 60 },
    );
  }, 60_000);
});
