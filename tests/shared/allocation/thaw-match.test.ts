import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fillFrom } from "../../../shared/allocation/thaw-match.ts";

/** Supplies by the meals they can be eaten at (a bit each), and the portions of each still left. */
interface Case {
  readonly places: readonly number[];
  readonly seated: readonly { readonly meal: number; readonly alsoAt: number }[];
  readonly left: readonly { readonly portions: number; readonly at: number }[];
}

const anyCase: fc.Arbitrary<Case> = fc.integer({ min: 1, max: 5 }).chain((meals) => {
  const someMeals = fc.integer({ min: 0, max: 2 ** meals - 1 });
  return fc.record({
    places: fc.array(fc.integer({ min: 1, max: 2 }), { minLength: meals, maxLength: meals }),
    seated: fc.uniqueArray(
      fc.record({ meal: fc.integer({ min: 0, max: meals - 1 }), alsoAt: someMeals }),
      { maxLength: 2, selector: (one) => one.meal },
    ),
    left: fc.array(fc.record({ portions: fc.integer({ min: 1, max: 2 }), at: someMeals }), {
      maxLength: 4,
    }),
  });
});

const mealsOf = ({ seated, left }: Case): readonly number[] => [
  ...seated.map(({ meal, alsoAt }) => alsoAt | (1 << meal)),
  ...left.map(({ at }) => at),
];
const portionsOf = ({ seated, left }: Case): readonly number[] => [
  ...seated.map(() => 1),
  ...left.map(({ portions }) => portions),
];

function solve(one: Case): readonly (readonly number[])[] {
  const supplies = mealsOf(one).map((meals, i) => ({
    left: i < one.seated.length ? 0 : (portionsOf(one)[i] ?? 0),
    serves: (meal: number) => (meals & (1 << meal)) !== 0,
  }));
  const at = one.places.map((_, meal) =>
    [...one.seated.entries()].filter(([, s]) => s.meal === meal).map(([i]) => i),
  );
  return fillFrom(supplies, one.places, at);
}

/** Portions served of each supply in the best way there is: all seated stay, the most, the first in the list. */
function best(one: Case): readonly number[] {
  const [meals, portions] = [mealsOf(one), portionsOf(one)];
  const score = (used: readonly number[]): readonly number[] => [
    ...used.slice(0, one.seated.length),
    used.reduce((sum, n) => sum + n, 0),
    ...used.slice(one.seated.length),
  ];
  let reached = new Map([[portions.map(() => 0).join(), portions.map(() => 0)]]);
  for (const [meal, count] of one.places.entries()) {
    for (let place = 0; place < count; place += 1) {
      const next = new Map(reached);
      for (const used of reached.values()) {
        for (const [i, n] of used.entries()) {
          if (n >= (portions[i] ?? 0) || ((meals[i] ?? 0) & (1 << meal)) === 0) continue;
          const more = used.map((was, j) => was + Number(i === j));
          next.set(more.join(), more);
        }
      }
      reached = next;
    }
  }
  const all = [...reached.values()];
  return all.reduce((a, b) => {
    const [x, y] = [score(a), score(b)];
    const at = x.findIndex((figure, i) => figure !== y[i]);
    return at >= 0 && (x[at] ?? 0) < (y[at] ?? 0) ? b : a;
  });
}

describe("filling meals from the freezer, against every way to do it", () => {
  it("serves the most, of those the first in the list, and unseats nothing", () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const at = solve(one);
        const used = portionsOf(one).map((_, i) => at.flat().filter((index) => index === i).length);
        expect(used).toEqual(best(one));
      }),
      { numRuns: 5000 },
    );
  });
  it("gives no meal more than it takes, nor anything it cannot have", () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        for (const [meal, list] of solve(one).entries()) {
          expect(list.length).toBeLessThanOrEqual(one.places[meal] ?? 0);
          expect(list.every((i) => ((mealsOf(one)[i] ?? 0) & (1 << meal)) !== 0)).toBe(true);
        }
      }),
      { numRuns: 2000 },
    );
  });
});
