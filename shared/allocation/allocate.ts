import type { Stock } from "../stock/types.ts";
import type { Instant } from "../time.ts";
import { type Fresh, firstExpired } from "./fresh.ts";
import { type Frozen, frozenToday } from "./frozen.ts";
import { type Kitchen, kitchenOf, thawed, type Way } from "./kitchen.ts";
import { setAside } from "./pins.ts";
import { type Claimant, claimInOrder, mealsBetween, seat } from "./seat.ts";
import { servingsOf } from "./serve.ts";
import { halfOf, merged, surplusOf } from "./surplus.ts";
import { fillFrom } from "./thaw-match.ts";
import type { ThawHours } from "./thaw-time.ts";
import type { Allocation, MealSlot, Pin, Serving } from "./types.ts";

/**
 * Decides which portion goes to which meal, what to freeze now and what to thaw when. What a member
 * keeps for a meal is set aside first. Then, in this order: the fewest portions wasted, the fewest
 * frozen, the first expired first. Portions that freeze badly claim meals first; the others take what
 * is left; what then remains is frozen at once, or is spare. Meals still empty are served from the
 * freezer, as many as can be, oldest first, each with its moment to thaw. `slots` are in order of time.
 */
export function allocate(
  stock: Stock,
  slots: readonly MealSlot[],
  now: Instant,
  hours: ThawHours,
  pins: readonly Pin[] = [],
): Allocation {
  const kitchen = kitchenOf(stock, slots, now, hours);
  const kept = setAside(kitchen, pins);
  const { fresh, places } = kept;
  const claims = claimsOf(fresh, slots, places);
  const left = fresh.map((one, index) => one.portions - (claims[index]?.portions ?? 0));
  const toFreeze = fresh
    .map((one, index) => frozenToday(one, left[index] ?? 0, kitchen.today))
    .filter((one) => one !== null);
  const frozen = [...kept.frozen, ...toFreeze];
  const seated = seatAll(kitchen, { fresh, claims, frozen, places });
  const servings = slots.flatMap((slot, meal): readonly Serving[] => [
    ...kept.servings.filter((one) => one.slot === slot),
    ...(seated[meal] ?? [])
      .map((index) => wayOf(kitchen, fresh, frozen, meal, index))
      .flatMap((way) => (way === null ? [] : servingsOf(slot, way))),
  ]);
  const surplus = fresh.flatMap((one, index) => surplusOf(one, left[index] ?? 0));
  return {
    servings,
    surplus: merged([...surplus, ...kept.surplus, ...kitchen.halves.map(halfOf)]),
  };
}

/** How many portions are eaten from the fridge, and between which meals. */
function claimsOf(
  fresh: readonly Fresh[],
  slots: readonly MealSlot[],
  places: readonly number[],
): readonly Claimant[] {
  const claimants = fresh.map((one) => ({
    portions: one.portions,
    ...mealsBetween(slots, one.readyAt, one.until),
  }));
  const counts = claimInOrder(claimants, places);
  return claimants.map((one, index) => ({ ...one, portions: counts[index] ?? 0 }));
}

interface ToSeat {
  readonly fresh: readonly Fresh[];
  readonly claims: readonly Claimant[];
  readonly frozen: readonly Frozen[];
  readonly places: readonly number[];
}

/** Which of `fresh` and then `frozen` (by index) is at each meal. */
function seatAll(kitchen: Kitchen, { fresh, claims, frozen, places }: ToSeat) {
  const order = [...fresh.entries()].sort(([, a], [, b]) => firstExpired(a, b)).map(([i]) => i);
  const supplies = [
    // Seated in full already; it may still change its meal for another.
    ...claims.map(({ first, last }) => ({
      left: 0,
      serves: (meal: number) => first <= meal && meal <= last,
    })),
    ...frozen.map(({ portions, need }) => {
      const moments = kitchen.moments(need);
      return { left: portions, serves: (meal: number) => moments[meal] != null };
    }),
  ];
  return fillFrom(supplies, places, seat(claims, order, places));
}

function wayOf(
  kitchen: Kitchen,
  fresh: readonly Fresh[],
  frozen: readonly Frozen[],
  meal: number,
  index: number,
): Way | null {
  const own = fresh[index];
  if (own !== undefined) return { kind: "as it stands", of: own };
  const one = frozen[index - fresh.length];
  return one === undefined ? null : thawed(kitchen, one, meal);
}
