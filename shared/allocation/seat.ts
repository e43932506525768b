import { type Instant, isBefore, isDateBefore, type PlainDate } from "../time.ts";
import type { MealSlot } from "./types.ts";

/** Portions that look for a meal from a first to a last one (indexes into the meals); none when last < first. */
export interface Claimant {
  readonly portions: number;
  readonly first: number;
  readonly last: number;
}

/** The meals from an instant on to the end of a day, as indexes into `slots`, which are in order of time. */
export function mealsBetween(
  slots: readonly MealSlot[],
  from: Instant,
  until: PlainDate,
): Pick<Claimant, "first" | "last"> {
  return {
    first: countWhile(slots, (slot) => isBefore(slot.at, from)),
    last: countWhile(slots, (slot) => !isDateBefore(until, slot.date)) - 1,
  };
}

/** How many of `slots` come before the first that fails; it fails for all after it, too. */
function countWhile(slots: readonly MealSlot[], holds: (slot: MealSlot) => boolean): number {
  let [low, high] = [0, slots.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    const slot = slots[middle];
    if (slot !== undefined && holds(slot)) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** A run of meals, and how many of its places nobody has claimed who can eat nowhere else. */
interface Run {
  readonly first: number;
  readonly last: number;
  room: number;
}

/**
 * How many portions of each claimant can be seated when they claim in the order given: each takes as
 * many as can still be seated together with all before it. Sets of portions that can be seated
 * together form a transversal matroid, so claiming greedily by weight seats the heaviest set there is.
 * They can be seated exactly when no run of meals is all there is for more portions than it has places
 * (Hall's theorem; runs suffice, because a claimant's meals follow one another). `places[i]` are the
 * portions that meal i takes.
 */
export function claimInOrder(
  claimants: readonly Claimant[],
  places: readonly number[],
): readonly number[] {
  const runs = runsOf(claimants, places);
  return claimants.map((one) => {
    if (one.last < one.first) return 0;
    const around = runs.filter((run) => run.first <= one.first && one.last <= run.last);
    const claimed = around.reduce((most, run) => Math.min(most, run.room), one.portions);
    for (const run of around) run.room -= claimed;
    return claimed;
  });
}

/** The runs that begin where some claimant's meals do and end where some claimant's do. */
function runsOf(claimants: readonly Claimant[], places: readonly number[]): readonly Run[] {
  const before = [0];
  for (const place of places) before.push((before.at(-1) ?? 0) + place);
  const firsts = new Set(claimants.map((one) => one.first));
  const lasts = new Set(claimants.map((one) => one.last));
  return [...firsts].flatMap((first) =>
    [...lasts]
      .filter((last) => first <= last)
      .map((last) => ({ first, last, room: (before[last + 1] ?? 0) - (before[first] ?? 0) })),
  );
}

/**
 * Gives the meals, in order of time, the portions that expire first: for each meal the claimants (by
 * index) of the portions it has, one entry a portion. For portions of one size with a first and a last
 * meal, earliest deadline first seats every set that can be seated at all, and it leaves the late meals
 * free rather than the early ones. `order` holds the indexes of the claimants, first expired first.
 */
export function seat(
  claimants: readonly Claimant[],
  order: readonly number[],
  places: readonly number[],
): readonly (readonly number[])[] {
  const left = claimants.map((one) => one.portions);
  const take = (index: number, most: number): number => {
    const taken = Math.min(most, left[index] ?? 0);
    left[index] = (left[index] ?? 0) - taken;
    return taken;
  };
  return places.map((count, meal) => {
    const seated: number[] = [];
    for (const index of order) {
      if (seated.length === count) break;
      const portions = mayServe(claimants[index], meal) ? take(index, count - seated.length) : 0;
      for (let n = 0; n < portions; n += 1) seated.push(index);
    }
    return seated;
  });
}

function mayServe(one: Claimant | undefined, meal: number): boolean {
  return one !== undefined && one.first <= meal && meal <= one.last;
}
