import { foldWords } from "../words/fold.ts";
import { singular } from "../words/plural.ts";

/** Words that make a line a seasoning, a thickener or a leavening whatever else it says. */
const STRONG = new Set(
  `salt peppercorn cayenne paprika cumin coriander turmeric cinnamon nutmeg clove cardamom allspice mace
  saffron sumac oregano thyme rosemary sage marjoram tarragon basil dill fennel aniseed anise fenugreek
  zaatar masala curry chili chilli harissa mustard wasabi horseradish vinegar msg seasoning spice stock
  bouillon cornflour cornstarch arrowroot gelatine gelatin agar xanthan psyllium pectin yeast bicarbonate
  baking garlic ginger`
    .split(/\s+/u)
    .filter((word) => word !== ""),
);

/** Fresh herbs and the like in the hundreds of grams are a vegetable, not a seasoning. */
const SEASONING_SHARE_MAX = 0.03;

const PEPPER =
  /\b(?:black|white|ground|szechuan|sichuan|cracked|lemon) pepper\b|^pepper$|\bpepper flake/u;
const NOT_SEASONING = /\b(?:baking potato|coconut milk|garlic bread|salt beef|curry leaf)\b/u;

/**
 * Whether a line's food is a seasoning, a thickener or a leavening that makes up at most three per
 * cent of the recipe: what the trade holds back in big batches. `share` is its part of the recipe's
 * mass; null when it cannot be weighed (a pinch, a teaspoon).
 */
export function isSeasoning(foodText: string, share: number | null): boolean {
  const name = foldWords(foodText).split(" ").map(singular).join(" ");
  if (NOT_SEASONING.test(name) || (share !== null && share > SEASONING_SHARE_MAX)) return false;
  return PEPPER.test(name) || name.split(" ").some((word) => STRONG.has(word));
}
