import type { Food } from "../food/types.ts";
import { foldWords } from "../words/fold.ts";

const WATER = /^(?:water|ice)\b/u;
const LIQUID =
  /\b(?:stock|broth|bouillon|milk|wine|beer|cider|juice|passata|coconut water|cream|tomato(?:es)? sauce|pasta sauce)\b|\btomatoes\b.*\b(?:canned|tinned|chopped|crushed)\b|\b(?:canned|tinned|chopped|crushed) tomato/u;
const NOT_LIQUID = /\b(?:cube|powder|cheese|dry|dried|condensed|ice cream|concentrate)\b/u;

/** Whether a food is plain water. */
export function isWater(food: Food): boolean {
  return WATER.test(foldWords(food.name));
}

/** Water that a dry food may take out of each gram of a liquid food; 0 for what is no liquid. */
export function waterShare(food: Food): number {
  if (isWater(food)) return 1;
  const name = foldWords(food.name);
  if (food.state !== "ready" || !LIQUID.test(name) || NOT_LIQUID.test(name)) return 0;
  const { proteinG, fatG, carbohydrateG } = food.per100g;
  const solidsG = (proteinG ?? 0) + (fatG ?? 0) + (carbohydrateG ?? 0);
  return Math.max(0, food.waterG ?? 100 - solidsG) / 100;
}
