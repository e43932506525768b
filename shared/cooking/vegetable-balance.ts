import type { Food } from "../food/types.ts";
import { PACK_LABEL } from "../food/types.ts";
import type { Basis, HeatMethod } from "./types.ts";

type Pair = readonly [raw: string, cooked: string, factor: number];

/**
 * Dry-matter balance of USDA SR28 (2015) rows, raw and cooked: (100 - water raw) / (100 - water cooked); our
 * own calculation. Boiling and draining also takes solids out, so a balance well above 1 shows that the two
 * rows are of different vegetables and not that water was taken up: pairs above 1.06 are left out (carrot
 * 1.19, kale 1.81, Brussels sprouts 1.26, cauliflower 1.13, courgette 1.09, baked butternut 1.11, frozen green
 * beans 1.17, sweetcorn from frozen 1.09, spaghetti squash 1.09, boiled sweet potato 1.14, mixed vegetables
 * from frozen 1.07).
 */
const BOILED: readonly Pair[] = [
  ["11011", "11012", 0.92],
  ["11052", "11053", 0.898],
  ["11080", "11081", 0.96],
  ["11090", "11091", 0.995],
  ["11092", "11093", 0.92],
  ["11109", "11110", 1.052],
  ["11116", "11117", 1.052],
  ["11130", "11131", 1.029],
  ["11143", "11144", 0.776],
  ["11167", "11168", 0.901],
  ["11209", "11210", 0.745],
  ["11211", "11212", 0.912],
  ["11260", "11261", 0.846],
  ["11282", "11283", 0.897],
  ["11312", "11313", 0.978],
  ["11352", "11367", 0.921],
  ["11457", "11458", 0.978],
  ["11463", "11464", 0.889],
];
const BAKED: readonly Pair[] = [
  ["11352", "11674", 0.826],
  ["11353", "11356", 0.838],
  ["11482", "11483", 0.715],
  ["11507", "11508", 0.938],
];

const index = (pairs: readonly Pair[]): ReadonlyMap<string, Basis> =>
  new Map(
    pairs.map(([raw, cooked, factor]) => [
      raw,
      { factor, source: `USDA SR28 (2015), dry matter of ${raw} and ${cooked}` },
    ]),
  );
const BY_METHOD: Readonly<Partial<Record<HeatMethod, ReadonlyMap<string, Basis>>>> = {
  boil: index(BOILED),
  roast: index(BAKED),
};

/** What a raw vegetable weighs cooked, per gram; null where no published pair of rows tells. */
export function vegetableBalance(food: Food, method: HeatMethod): Basis | null {
  if (food.source.table === PACK_LABEL) return null;
  return BY_METHOD[method]?.get(food.source.number) ?? null;
}
