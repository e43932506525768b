import { allergensInRecipe } from "../allergen/find.ts";
import type { FoodBook } from "../food/book.ts";
import { resolveKeeping } from "../keeping/resolve.ts";
import { sumOfLine } from "../nutrition/line-sum.ts";
import { addSums, timesSums, UNMEASURED } from "../nutrition/sum.ts";
import type { NutrientSums } from "../nutrition/types.ts";
import { scaleRecipe } from "../recipe/scale.ts";
import type { Recipe } from "../recipe/types.ts";
import type { BookEntry, EntryFood, RecipeInBook } from "./types.ts";

/** Reads what a recipe is found by. Holds for the revision and these foods. */
export function bookEntry({ id, revisionId, recipe }: RecipeInBook, foods: FoodBook): BookEntry {
  const perPortion = figuresOf(recipe, foods);
  const keeping = resolveKeeping(recipe, foods, []);
  return {
    id,
    revisionId,
    title: recipe.title,
    portions: recipe.portions,
    portionWord: recipe.portionWord,
    tags: recipe.tags,
    foods: foodsOf(recipe),
    energyKcal: perPortion.energyKcal,
    proteinG: perPortion.proteinG,
    freezes: keeping.freezes,
    freezerMonths: keeping.freezerMonths,
    fridgeDays: keeping.fridgeDays,
    allergens: allergensInRecipe(recipe, foods),
  };
}

/** The card's figures per portion, without the rest of what a card works out. */
function figuresOf(recipe: Recipe, foods: FoodBook): NutrientSums {
  const scaled = scaleRecipe(recipe, foods, { by: { kind: "as written" }, without: [], swaps: {} });
  if (!scaled.ok) return UNMEASURED;
  const lines = scaled.value.components.flatMap((part) => part.lines);
  const whole = addSums(lines.map((line) => sumOfLine(line, foods)));
  return timesSums(whole, 1 / scaled.value.portions);
}

function foodsOf(recipe: Recipe): readonly EntryFood[] {
  const lines = recipe.components.flatMap((part) =>
    part.lines.map((line) => ({ ...line, optional: part.optional || line.optional })),
  );
  return lines.flatMap(({ main, swaps, optional }, line) =>
    [main, ...swaps].map(({ foodText, foodId, grams, amount }, choice): EntryFood => {
      const isSwap = choice > 0;
      return {
        name: foodText,
        foodId,
        grams,
        line,
        isSwap,
        needed: !optional && !isSwap && amount !== null,
      };
    }),
  );
}
