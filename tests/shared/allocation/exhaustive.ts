import { canBeFrozen, goodFresh, goodThawed, isFresh, lastDay } from "./kitchen-rules.ts";
import type { Kitchen, KitchenLot } from "./small-kitchen.ts";

/**
 * What a plan costs, each figure mattering more than all after it: portions wasted, portions frozen,
 * less what each lot serves from the fridge (those that must be eaten first, then the first to expire),
 * less the meals served from the freezer, less what each lot serves from there (oldest first).
 */
export type Cost = readonly number[];

interface Order {
  /** Lots in the fridge, in the order in which they claim meals. */
  readonly claims: readonly number[];
  /** Lots that can be thawed, in the order in which they are used. */
  readonly thaws: readonly number[];
}

export function orderOf(kitchen: Kitchen): Order {
  const { lots } = kitchen;
  const fresh = [...lots.keys()].filter((i) => isFresh(kitchen, lotAt(kitchen, i)));
  const since = (i: number): number => -lotAt(kitchen, i).hoursAgo;
  const saved = (i: number): number => Number(canBeFrozen(lotAt(kitchen, i)));
  const last = (i: number): number => lastDay(kitchen, lotAt(kitchen, i));
  const claims = fresh.sort(
    (a, b) => saved(a) - saved(b) || last(a) - last(b) || since(a) - since(b) || a - b,
  );
  const standing = [...lots.keys()]
    .filter((i) => lots[i]?.place === "freezer")
    .sort((a, b) => since(a) - since(b) || a - b);
  return { claims, thaws: [...standing, ...claims.filter((i) => saved(i) === 1)] };
}

function lotAt(kitchen: Kitchen, index: number): KitchenLot {
  const found = kitchen.lots[index];
  if (found === undefined) throw new Error(`no lot ${index}`);
  return found;
}

/** The cost of what was eaten from the fridge (`fresh`) and from the freezer (`thawed`), by lot. */
export function costOf(
  kitchen: Kitchen,
  fresh: readonly number[],
  thawed: readonly number[],
): Cost {
  const { claims, thaws } = orderOf(kitchen);
  const left = (i: number): number => lotAt(kitchen, i).portions - (fresh[i] ?? 0);
  const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
  return [
    sum(claims.filter((i) => !canBeFrozen(lotAt(kitchen, i))).map(left)),
    sum(claims.filter((i) => canBeFrozen(lotAt(kitchen, i))).map(left)),
    ...claims.map((i) => -(fresh[i] ?? 0)),
    -sum(thawed),
    ...thaws.map((i) => -(thawed[i] ?? 0)),
  ];
}

export function compareCosts(a: Cost, b: Cost): number {
  for (const [i, figure] of a.entries()) {
    const other = b[i] ?? 0;
    if (figure !== other) return figure - other;
  }
  return 0;
}

/** The least cost of all ways to fill the places at the meals, found by trying each. */
export function leastCost(kitchen: Kitchen): Cost {
  const places = kitchen.meals.flatMap((meal) => Array.from({ length: meal.portions }, () => meal));
  const zero = kitchen.lots.map(() => 0);
  // What has been eaten so far, without regard to which meal: all that later choices depend on.
  let reached = new Map([[`${zero}/${zero}`, { fresh: zero, thawed: zero }]]);
  for (const meal of places) {
    const next = new Map(reached);
    for (const { fresh, thawed } of reached.values()) {
      for (const [i, one] of kitchen.lots.entries()) {
        if ((fresh[i] ?? 0) + (thawed[i] ?? 0) >= one.portions) continue;
        const add = (list: readonly number[]) => list.map((n, j) => n + Number(j === i));
        if (isFresh(kitchen, one) && goodFresh(kitchen, one, meal)) {
          const more = { fresh: add(fresh), thawed };
          next.set(`${more.fresh}/${thawed}`, more);
        }
        const mayThaw = one.place === "freezer" || (isFresh(kitchen, one) && canBeFrozen(one));
        if (mayThaw && goodThawed(kitchen, one, meal)) {
          const more = { fresh, thawed: add(thawed) };
          next.set(`${fresh}/${more.thawed}`, more);
        }
      }
    }
    reached = next;
  }
  const costs = [...reached.values()].map(({ fresh, thawed }) => costOf(kitchen, fresh, thawed));
  return costs.reduce((a, b) => (compareCosts(a, b) <= 0 ? a : b));
}
