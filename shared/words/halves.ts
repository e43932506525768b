/**
 * A number as it is read off a box: halves as "½" and "1½", anything else with at most two decimals.
 * Never negative zero or an exponent for what a kitchen counts.
 */
export function writeHalves(n: number): string {
  const shown = Math.round(n * 100) / 100;
  const whole = Math.trunc(shown);
  if (Math.abs(shown - whole) !== 0.5) return String(shown);
  const sign = shown < 0 ? "-" : "";
  return `${sign}${whole === 0 ? "" : Math.abs(whole)}½`;
}

/** Whether it is a number of portions that the stock can hold: halves, at least one half. */
export function isHalves(n: number): boolean {
  return Number.isSafeInteger(n * 2) && n > 0;
}
