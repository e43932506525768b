/** Units as they are written in recipes. Exact sizes are in `unit.ts` (NIST SP 811, Handbook 44). */
export const UNITS = [
  "g",
  "kg",
  "mg",
  "oz",
  "lb",
  "ml",
  "cl",
  "dl",
  "l",
  "tsp",
  "tbsp",
  "fl oz",
  "cup",
  "pint",
  "quart",
  "gallon",
  "piece",
  "pinch",
] as const;
export type Unit = (typeof UNITS)[number];

/** How big a spoon or a cup is: US customary, metric (5/15/250 ml), or the US label sizes (5/15/240). */
export type SpoonSet = "us" | "metric" | "label";

/** An amount as written: `to` is the upper end of a range ("3-4 cloves"), else null. */
export interface Amount {
  readonly value: number;
  readonly to: number | null;
  readonly unit: Unit;
}
