import { type Instant, isBefore, isDateBefore, type PlainDate } from "../time.ts";
import type { MealSlot } from "./types.ts";

/** Portions that look for a meal between a first instant and a last day. */
export interface Claimant {
  readonly portions: number;
  readonly readyAt: Instant;
  readonly until: PlainDate;
}

/** So many portions of one claimant (by its index) at one meal. */
export interface Seated {
  readonly slot: MealSlot;
  readonly index: number;
  readonly portions: number;
}

export interface Seating {
  readonly seated: readonly Seated[];
  /** Portions of each claimant that found no meal. */
  readonly left: readonly number[];
  /** Places at meals that stay free. */
  readonly free: readonly { readonly slot: MealSlot; readonly portions: number }[];
}

/**
 * Gives the meals, in order of time, the portions that expire first, `counts` of each claimant. For
 * portions of unit size with a first and a last moment, earliest deadline first seats every set that
 * can be seated at all, and it leaves the late meals free rather than the early ones. `order` holds
 * the indexes of the claimants, first expired first.
 */
export function seat(
  claimants: readonly Claimant[],
  counts: readonly number[],
  order: readonly number[],
  slots: readonly MealSlot[],
): Seating {
  const left = [...counts];
  const seated: Seated[] = [];
  const free: { slot: MealSlot; portions: number }[] = [];
  for (const slot of slots) {
    let places = slot.portions;
    for (const index of order) {
      const portions = Math.min(places, left[index] ?? 0);
      const one = claimants[index];
      if (portions <= 0 || one === undefined || !mayServe(one, slot)) continue;
      left[index] = (left[index] ?? 0) - portions;
      places -= portions;
      seated.push({ slot, index, portions });
    }
    if (places > 0) free.push({ slot, portions: places });
  }
  return { seated, left, free };
}

function mayServe(one: Claimant, slot: MealSlot): boolean {
  return !isDateBefore(one.until, slot.date) && !isBefore(slot.at, one.readyAt);
}

/**
 * How many portions of each claimant can be seated when they claim in the order given: each takes as
 * many as can still be seated together with all before it. Sets of portions that can be seated
 * together form a transversal matroid, so claiming greedily by weight seats the heaviest set there is.
 */
export function claimInOrder(
  claimants: readonly Claimant[],
  order: readonly number[],
  slots: readonly MealSlot[],
): readonly number[] {
  const counts = claimants.map(() => 0);
  const fits = (index: number, portions: number): boolean => {
    const tried = counts.map((count, other) => (other === index ? portions : count));
    return seat(claimants, tried, order, slots).left.every((left) => left === 0);
  };
  for (const [index, { portions }] of claimants.entries()) {
    counts[index] = fits(index, portions) ? portions : most(portions, (n) => fits(index, n));
  }
  return counts;
}

/** The largest n below `limit` that still fits; fitting is monotone. */
function most(limit: number, fits: (n: number) => boolean): number {
  let [low, high] = [0, limit];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}
