import type { Label, PackFigure } from "./types.ts";

export const NONE: PackFigure = { value: 0, low: 0, high: 0 };

/** Salt is sodium x 2.5: Regulation (EU) No 1169/2011, Annex I, point 11. */
export const SALT_PER_SODIUM = 2.5;
/** A spoon or a cup weighs a food to a few per cent: common practice, no published source. */
const DENSITY_SHARE = 0.03;

/** The most grams that the basis may weigh. */
export function mostG({ basis, basisG }: Label): number {
  const rounded = (basisG * (basis.amount + basis.halfStep)) / basis.amount;
  return basis.unit === "g" ? rounded : rounded * (1 + DENSITY_SHARE);
}

/** Salt in grams, from whichever the pack states. */
export function saltOf({ saltG, sodiumMg }: Label): PackFigure | null {
  return saltG ?? (sodiumMg === null ? null : timesFigure(sodiumMg, SALT_PER_SODIUM / 1000));
}

export function timesFigure({ value, low, high }: PackFigure, times: number): PackFigure {
  return { value: value * times, low: low * times, high: high * times };
}
