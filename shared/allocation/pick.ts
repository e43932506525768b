import type { MealSlot } from "./types.ts";

/** A lot as the allocation sees it: how many portions, and the meals it may serve. */
export interface Candidate {
  readonly portions: number;
  readonly mayServe: (slot: MealSlot) => boolean;
}

/**
 * How many portions of each candidate can be eaten, when the candidates claim meals in the order
 * given. Each claim may push earlier ones to other meals but never out (augmenting paths). Sets of
 * portions that can be seated together form a transversal matroid, so claiming greedily in order of
 * weight seats the heaviest set there is; here: all that freezes badly, as far as it can be placed,
 * then as much of the rest as possible.
 *
 * `seats` is one entry a place at a meal (a meal of two portions stands there twice). Returns the
 * count for each candidate, in their order.
 */
export function seatInOrder(
  candidates: readonly Candidate[],
  seats: readonly MealSlot[],
): readonly number[] {
  const holder: (number | null)[] = seats.map(() => null);
  return candidates.map((candidate, index) => {
    let placed = 0;
    while (placed < candidate.portions && claim(index, candidates, seats, holder, new Set()))
      placed += 1;
    return placed;
  });
}

/** Finds a free seat for one more portion of `index`, moving others along if need be. */
function claim(
  index: number,
  candidates: readonly Candidate[],
  seats: readonly MealSlot[],
  holder: (number | null)[],
  tried: Set<number>,
): boolean {
  for (const [seat, slot] of seats.entries()) {
    if (tried.has(seat) || candidates[index]?.mayServe(slot) !== true) continue;
    tried.add(seat);
    const other = holder[seat] ?? null;
    if (other === index) continue;
    if (other === null || claim(other, candidates, seats, holder, tried)) {
      holder[seat] = index;
      return true;
    }
  }
  return false;
}
