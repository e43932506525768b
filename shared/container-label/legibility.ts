/**
 * How large the type of a label must be. The proportions are those of the font "DejaVu Sans": a small x
 * is 0.547 of its size, a capital 0.729.
 */

/**
 * The least size of any text, in points: its x is 1.2 mm high, as Regulation (EU) No 1169/2011, Article
 * 13(2) and Annex IV, demands of what a pack must say.
 */
export const LEAST_PT = 6.25;

/**
 * The least size of what is read at arm's length, the name as far as it goes and the date always: its
 * capitals fill 16 minutes of arc at 600 mm, the least that ISO 9241-3:1992 allows for reading (20 to 22
 * are better). That standard is for screens; for labels at home there is no published rule.
 */
export const ARM_LENGTH_PT = 11;
