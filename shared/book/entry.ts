import { allergensInRecipe } from "../allergen/find.ts";
import type { FoodBook } from "../food/book.ts";
import { resolveKeeping } from "../keeping/resolve.ts";
import { withEuEnergy } from "../label/eu.ts";
import { labelExtras } from "../label/extras.ts";
import { sumOfLine } from "../nutrition/line-sum.ts";
import { addSums, timesSums, UNMEASURED } from "../nutrition/sum.ts";
import { scaleRecipe } from "../recipe/scale.ts";
import type { Recipe } from "../recipe/types.ts";
import type { BookEntry, EntryFood, RecipeInBook } from "./types.ts";

/** Reads what a recipe is found by. Holds for the revision and these foods. */
export function bookEntry({ id, revisionId, recipe }: RecipeInBook, foods: FoodBook): BookEntry {
  const keeping = resolveKeeping(recipe, foods, []);
  return {
    id,
    revisionId,
    title: recipe.title,
    portions: recipe.portions,
    portionWord: recipe.portionWord,
    tags: recipe.tags,
    foods: foodsOf(recipe),
    ...figuresOf(recipe, foods),
    freezes: keeping.freezes,
    freezerMonths: keeping.freezerMonths,
    fridgeDays: keeping.fridgeDays,
    allergens: allergensInRecipe(recipe, foods),
  };
}

/** The card's figures per portion, without the rest of what a card works out. */
function figuresOf(recipe: Recipe, foods: FoodBook): Pick<BookEntry, "energyKcal" | "proteinG"> {
  const scaled = scaleRecipe(recipe, foods, { by: { kind: "as written" }, without: [], swaps: {} });
  if (!scaled.ok) {
    const { energyKcal, proteinG } = UNMEASURED;
    return { energyKcal: { us: energyKcal, eu: energyKcal }, proteinG };
  }
  const lines = scaled.value.components.flatMap((part) => part.lines);
  const whole = addSums(lines.map((line) => sumOfLine(line, foods)));
  const perPortion = timesSums(whole, 1 / scaled.value.portions);
  const extras = labelExtras(scaled.value, foods, { whole, per100g: whole }).perPortion;
  return {
    energyKcal: {
      us: perPortion.energyKcal,
      eu: withEuEnergy(perPortion, extras).energyKcal,
    },
    proteinG: perPortion.proteinG,
  };
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
        toTaste: amount === null,
        needed: !optional && !isSwap && amount !== null,
      };
    }),
  );
}
