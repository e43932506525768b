import type { AllergensFound } from "../allergen/find.ts";
import type { Allergen } from "../food/types.ts";
import type { FoodId, RecipeId, RevisionId } from "../ids.ts";
import type { KeepingTime } from "../keeping/types.ts";
import type { LabelStyle } from "../label/types.ts";
import type { NutrientSum } from "../nutrition/types.ts";
import type { Recipe } from "../recipe/types.ts";

/** A recipe as it stands in a group's book: its newest revision. */
export interface RecipeInBook {
  readonly id: RecipeId;
  readonly revisionId: RevisionId;
  readonly recipe: Recipe;
}

/** One food of a recipe. */
export interface EntryFood {
  /** As the coach wrote it. */
  readonly name: string;
  readonly foodId: FoodId | null;
  /** Edible grams in the recipe as written; null when it cannot be weighed. */
  readonly grams: number | null;
  /** Which line of the recipe it stands in, counted through; the line's own food comes before its swaps. */
  readonly line: number;
  readonly isSwap: boolean;
  /** To taste: too little to use up what is in hand. */
  readonly toTaste: boolean;
  /** Neither optional, nor to taste, nor a swap. */
  readonly needed: boolean;
}

/**
 * What is kept of a recipe to find it by. Figures are per portion of the recipe as written, every
 * optional part in it, as on its card. The recipe itself is not kept.
 */
export interface BookEntry {
  readonly id: RecipeId;
  readonly revisionId: RevisionId;
  readonly title: string;
  readonly portions: number;
  readonly portionWord: string;
  readonly tags: readonly string[];
  readonly foods: readonly EntryFood[];
  /** Per portion, kcal, as each style of label counts it. */
  readonly energyKcal: Readonly<Record<LabelStyle, NutrientSum>>;
  /** Per portion, grams. */
  readonly proteinG: NutrientSum;
  readonly freezes: KeepingTime["freezes"];
  readonly freezerMonths: number | null;
  readonly fridgeDays: number;
  readonly allergens: AllergensFound;
}

/** From one figure to another, both included; null where there is no bound on that side. */
export interface FigureRange {
  readonly from: number | null;
  readonly to: number | null;
}

/** What is looked for. Everything that is given must hold. */
export interface BookQuery {
  /** By whose rules energy is counted. */
  readonly style: LabelStyle;
  /** Words of titles, tags and foods, in any order; "" for any recipe. */
  readonly words: string;
  /** Foods in hand; empty when that is not asked. A recipe must use one of them at least. */
  readonly uses: readonly string[];
  /** Per portion, kcal. */
  readonly energyKcal: FigureRange | null;
  /** Per portion, grams. */
  readonly proteinG: FigureRange | null;
  /** True for what freezes well; false for what freezes badly or not. */
  readonly freezes: boolean | null;
  readonly freeOf: readonly Allergen[];
}

/** Something asked that nobody can say of a recipe. */
export type NotKnown = "energy" | "protein" | "allergens";

export interface FoundRecipe {
  readonly entry: BookEntry;
  /** Tags that a word was found in, where the title has it not. */
  readonly tags: readonly string[];
  /** Foods, as the recipe writes them, that a word was found in, where neither title nor tags have it. */
  readonly foods: readonly string[];
  /** Foods in hand that it uses, as the recipe writes them. */
  readonly uses: readonly string[];
  /** Other foods that it cannot do without; null when no foods in hand were named. */
  readonly needs: number | null;
  /** Empty for a recipe that is known to fit. */
  readonly notKnown: readonly NotKnown[];
}

export interface BookResult {
  /** Recipes that fit, best first, at most as many as were asked for. */
  readonly found: readonly FoundRecipe[];
  readonly foundCount: number;
  /** Recipes that fit in all that is known, while of something asked nobody knows: never to be shown as fitting. */
  readonly notKnown: readonly FoundRecipe[];
  readonly notKnownCount: number;
  /** Words that no recipe has, and the nearest that some have instead. */
  readonly mended: readonly { readonly typed: string; readonly taken: string }[];
  /** Foods in hand that no recipe of the book uses. */
  readonly unused: readonly string[];
}
