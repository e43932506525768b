/** Grams of one avoirdupois pound (NIST Handbook 44). */
const POUND_G = 453.59237;

/**
 * Hours a portion of this mass needs to thaw in the fridge: 24 hours for each 4 lb (the slower end of
 * USDA FSIS "24 hours for each 4 to 5 pounds"), and never less than a full day, which FSIS asks even
 * for small items.
 */
export function thawLeadHours(portionG: number): number {
  return Math.max(24, (24 * portionG) / (4 * POUND_G));
}

/**
 * Hours after which a portion may be planned for a meal although its full lead is not over, and up to
 * which a late reminder to thaw still helps: half the day, the short end of what a portion takes in
 * practice (12 to 24 hours; common practice, no published source). It may be icy inside; it is heated.
 */
export function leastThawHours(portionG: number): number {
  return thawLeadHours(portionG) / 2;
}
