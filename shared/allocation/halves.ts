import type { Lot } from "../stock/types.ts";

/** Whole portions, each taken in equal shares from these lots: all of one lot, or half from each of two. */
export interface Shares {
  readonly lots: readonly [Lot] | readonly [Lot, Lot];
  readonly portions: number;
}

/** Lots as the meals can have them. */
export interface Shared {
  readonly shares: readonly Shares[];
  /** Lots that have a half which no other half of their batch makes whole: nobody's meal. */
  readonly alone: readonly Lot[];
}

/**
 * A meal takes whole portions: each lot gives those it has, and two halves that are left over of one
 * batch make one more. Only lots that stand in the same kind of place may be given here together.
 */
export function sharesOf(lots: readonly Lot[]): Shared {
  const shares = lots
    .filter((lot) => lot.portions >= 1)
    .map((lot): Shares => ({ lots: [lot], portions: Math.floor(lot.portions) }));
  const alone = new Map<string, Lot>();
  for (const lot of lots.filter(({ portions }) => portions % 1 !== 0)) {
    const other = alone.get(lot.batchId);
    if (other === undefined) alone.set(lot.batchId, lot);
    else {
      alone.delete(lot.batchId);
      shares.push({ lots: [other, lot], portions: 1 });
    }
  }
  return { shares, alone: [...alone.values()] };
}

/** The part of each portion that comes from one lot. */
export function shareOf({ lots }: Shares): 1 | 0.5 {
  return lots.length === 1 ? 1 : 0.5;
}
