/**
 * Rounds to the nearest multiple of `step`, halves away from zero. A hair's tolerance makes up for
 * binary fractions: 1.005 to a step of 0.01 is 1.01.
 */
export function roundTo(value: number, step: number): number {
  const steps = Math.abs(value) / step;
  const whole = Math.floor(steps + 0.5 + 1e-9);
  // Dividing by the inverse keeps 0.1 steps clean ("1.2", not "1.2000000000000002").
  const rounded = step < 1 ? whole / Math.round(1 / step) : whole * step;
  return value < 0 ? -rounded : rounded;
}

/** Grams as a kitchen scale shows them: whole from 10 g up, halves below. */
export function roundGrams(grams: number): number {
  return Math.abs(grams) < 9.75 ? roundTo(grams, 0.5) : roundTo(grams, 1);
}
