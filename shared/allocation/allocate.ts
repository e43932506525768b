import type { Stock } from "../stock/types.ts";
import { dateIn, type Instant } from "../time.ts";
import { type Fresh, firstExpired, freshLots, surplusOf } from "./fresh.ts";
import { type Frozen, frozenSupply } from "./frozen.ts";
import { type Claimant, claimInOrder, mealsBetween, seat } from "./seat.ts";
import { fillFrom, type Supply } from "./thaw-match.ts";
import { type ThawHours, type ThawMoments, thawMoments } from "./thaw-time.ts";
import type { Allocation, MealSlot, Serving } from "./types.ts";

/**
 * Decides which portion goes to which meal, what to freeze now and what to thaw when. In this order:
 * the fewest portions wasted, the fewest frozen, the first expired first. Portions that freeze badly
 * claim meals first; the others take what is left; what then remains is frozen at once, or is spare.
 * Meals still empty are served from the freezer, as many as can be, oldest first, each with its moment
 * to thaw. `slots` are in order of time.
 */
export function allocate(
  stock: Stock,
  slots: readonly MealSlot[],
  now: Instant,
  hours: ThawHours,
): Allocation {
  const today = dateIn(now, hours.zone);
  const places = slots.map((slot) => slot.portions);
  const fresh = freshLots(stock, today);
  const claims = claimsOf(fresh, slots, places);
  const surplus = fresh.flatMap((one, index) =>
    surplusOf(one, one.lot.portions - (claims[index]?.portions ?? 0)),
  );
  const frozen = frozenSupply(stock, fresh, surplus, today);
  const moments = thawMoments(slots, now, hours);
  const order = [...fresh.entries()].sort(([, a], [, b]) => firstExpired(a, b)).map(([i]) => i);
  const seated = fillFrom(
    [...claims.map(seatedSupply), ...frozen.map((one) => frozenLeft(one, moments))],
    places,
    seat(claims, order, places),
  );
  const servings = slots.flatMap((slot, meal) =>
    (seated[meal] ?? []).flatMap((index): readonly Serving[] => {
      const own = fresh[index];
      if (own !== undefined) return [fridgeServing(slot, own)];
      const one = frozen[index - fresh.length];
      return one === undefined ? [] : [freezerServing(slot, one, moments(one.need)[meal] ?? null)];
    }),
  );
  return { servings, surplus };
}

/** How many portions of each lot are eaten from the fridge, and between which meals. */
function claimsOf(
  fresh: readonly Fresh[],
  slots: readonly MealSlot[],
  places: readonly number[],
): readonly Claimant[] {
  const claimants = fresh.map((one) => ({
    // A meal takes whole portions: a lone half is nobody's meal.
    portions: Math.floor(one.lot.portions),
    ...mealsBetween(slots, one.readyAt, one.until),
  }));
  const counts = claimInOrder(claimants, places);
  return claimants.map((one, index) => ({ ...one, portions: counts[index] ?? 0 }));
}

/** Seated in full already; it may still change its meal for another. */
function seatedSupply({ first, last }: Claimant): Supply {
  return { left: 0, serves: (meal) => first <= meal && meal <= last };
}

function frozenLeft({ portions, need }: Frozen, moments: ThawMoments): Supply {
  const at = moments(need);
  return { left: portions, serves: (meal) => at[meal] != null };
}

function fridgeServing(slot: MealSlot, { lot, batch }: Fresh): Serving {
  return {
    slot,
    lotId: lot.id,
    from: lot.place === "thawing" ? "thawing" : "fridge",
    thawAt: null,
    why: batch.keeping.freezes === "well" ? "first expired" : "freezes badly",
  };
}

function freezerServing(slot: MealSlot, { lot }: Frozen, thawAt: Instant | null): Serving {
  return { slot, lotId: lot.id, from: "freezer", thawAt, why: "oldest frozen" };
}
