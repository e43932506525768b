import { foldWords } from "../words/fold.ts";
import { singular } from "../words/plural.ts";

/** What a big batch takes less of than the factor says. */
export type StrongKind = "seasoning" | "thickener" | "leavening";

const words = (text: string): ReadonlySet<string> =>
  new Set(text.split(/\s+/u).filter((word) => word !== ""));

const SEASONING =
  words(`salt peppercorn cayenne paprika cumin coriander turmeric cinnamon nutmeg clove
  cardamom allspice mace saffron sumac oregano thyme rosemary sage marjoram tarragon basil dill fennel
  aniseed anise fenugreek zaatar masala curry chili chilli harissa mustard wasabi horseradish vinegar msg
  seasoning spice stock bouillon garlic ginger`);
const THICKENER =
  words(`cornflour cornstarch arrowroot gelatine gelatin agar xanthan psyllium pectin
  tapioca roux`);
const LEAVENING = /\b(?:yeast|baking (?:powder|soda)|bicarbonate|bicarb|cream of tartar)\b/u;

/** Fresh herbs and the like in the hundreds of grams are a vegetable, not a seasoning. */
const SHARE_MAX = 0.03;
/** Above this flour makes a dough or a batter, below it a sauce. */
const FLOUR_SHARE_MAX = 0.06;

const PEPPER =
  /\b(?:black|white|ground|szechuan|sichuan|cracked|lemon) pepper\b|^pepper$|\bpepper flake/u;
const NOT_STRONG =
  /\b(?:baking potato|coconut milk|garlic bread|salt beef|curry leaf|nutritional yeast|yeast (?:extract|flake)|tapioca pearl)\b/u;
const SAUCE_FLOUR = /\b(?:plain|wheat|white|all purpose|rice|gram|chickpea)? ?flour\b/u;

/**
 * Whether a line's food is a seasoning, a thickener or a leavening that makes up little of the recipe: what
 * the trade holds back in big batches; null for any other. `share` is its part of the recipe's mass; null
 * when it cannot be weighed (a pinch, a teaspoon). `inLiquid`: flour thickens only what is wet.
 */
export function strongKind(
  foodText: string,
  share: number | null,
  inLiquid: boolean,
): StrongKind | null {
  const name = foldWords(foodText).split(" ").map(singular).join(" ");
  const some = name.split(" ");
  if (NOT_STRONG.test(name)) return null;
  const isFlour = inLiquid && SAUCE_FLOUR.test(name) && (share ?? 0) <= FLOUR_SHARE_MAX;
  if (isFlour && !name.includes("tortilla")) return "thickener";
  if (share !== null && share > SHARE_MAX) return null;
  if (LEAVENING.test(name)) return "leavening";
  if (some.some((word) => THICKENER.has(word))) return "thickener";
  return PEPPER.test(name) || some.some((word) => SEASONING.has(word)) ? "seasoning" : null;
}
