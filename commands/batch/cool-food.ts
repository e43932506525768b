import { findFood } from "../../shared/food/find.ts";
import type { Food } from "../../shared/food/types.ts";
import { COOKED_DISH, type Composition } from "../../shared/heat/properties.ts";
import { nutritionOf } from "../../shared/nutrition/portion.ts";
import type { NutrientSums } from "../../shared/nutrition/types.ts";
import { scaleRecipe } from "../../shared/recipe/scale.ts";
import type { Recipe } from "../../shared/recipe/types.ts";
import { excerpt } from "../../shared/words/problems.ts";
import { completeFood, foodsFor, isNameOf } from "../food/food-options.ts";
import { type Completer, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { completeRecipe } from "../kit/recipe-options.ts";

/** Minerals of a cooked dish, grams of 100: salt and ash. From memory; a gram more or less moves nothing. */
const ASH_G = 1.5;
const OFFERED = 25;

/** What is to cool, and what 100 g of it consist of. */
export interface CooledFood {
  /** "Barley pot"; empty where it was left out. */
  readonly name: string;
  readonly composition: Composition;
  /** Where its own composition is not known, and a usual dish stands for it. */
  readonly isUsual: boolean;
}

/** Offers the group's recipes, then foods. */
export const completeCooled: Completer = async (context, typed, others) => {
  const recipes = await completeRecipe(context, typed, others);
  const foods = await completeFood(context, typed, others);
  return [...recipes.slice(0, OFFERED - 10), ...foods].slice(0, OFFERED);
};

/** A recipe of the group by its title, else a food by its name; a usual cooked dish where nothing is typed. */
export async function cooledFood(
  { stores, group, foods }: Context,
  typed: string | undefined,
): Promise<CooledFood> {
  if (typed === undefined) return { name: "", composition: COOKED_DISH, isUsual: true };
  const published = await stores.recipes.find(group.id, typed);
  if (published !== null) {
    return named(published.recipe.title, ofRecipe(published.recipe, foods));
  }
  const found = findFood(foods, typed, 5).map(({ food }) => food);
  const [best] = found;
  if (best === undefined || (found.length > 1 && !isNameOf(best, typed))) {
    throw new Refusal(whichOne(typed, best === undefined ? foodsFor(foods, typed) : found));
  }
  return named(best.name, ofFood(best));
}

function whichOne(typed: string, like: readonly Food[]): string {
  const which = like.slice(0, 3).map(({ name }) => name);
  return which.length === 0
    ? `“${excerpt(typed)}” is no recipe of this group and no food I know: type a recipe's title, a plain name such as white rice, or leave food: out.`
    : `“${excerpt(typed)}” may be several foods: type one of ${which.join(" · ")}.`;
}

/** Null where one of its figures is missing. */
function ofFood({ per100g, waterG }: Food): Composition | null {
  const { proteinG, fatG, carbohydrateG, fibreG } = per100g;
  if (proteinG === null || fatG === null || carbohydrateG === null) return null;
  return composed({ proteinG, fatG, carbohydrateG, fibreG: fibreG ?? 0 }, waterG);
}

function named(name: string, composition: Composition | null): CooledFood {
  return { name, composition: composition ?? COOKED_DISH, isUsual: composition === null };
}

/** A cooked recipe by its figures per 100 g; null where something of it could not be counted. */
function ofRecipe(recipe: Recipe, foods: Context["foods"]): Composition | null {
  const scaled = scaleRecipe(recipe, foods, { by: { kind: "as written" }, without: [], swaps: {} });
  if (!scaled.ok) return null;
  const { per100g, unmeasured } = nutritionOf(scaled.value, foods);
  const { proteinG, fatG, carbohydrateG, fibreG } = per100g;
  if (unmeasured.length > 0 || isBound(per100g)) return null;
  return composed(
    {
      proteinG: proteinG.amount,
      fatG: fatG.amount,
      carbohydrateG: carbohydrateG.amount,
      fibreG: fibreG.amount,
    },
    null,
  );
}

function isBound({ proteinG, fatG, carbohydrateG }: NutrientSums): boolean {
  return proteinG.atLeast || fatG.atLeast || carbohydrateG.atLeast;
}

/** Carbohydrate of the tables counts fibre in. What is neither that nor ash is water, where it is not stated. */
function composed(
  parts: Omit<Composition, "waterG">,
  statedWaterG: number | null,
): Composition | null {
  const { proteinG, fatG, carbohydrateG, fibreG } = parts;
  const waterG = statedWaterG ?? 100 - proteinG - fatG - carbohydrateG - ASH_G;
  if (waterG < 0 || proteinG + fatG + carbohydrateG > 100) return null;
  return { waterG, proteinG, fatG, carbohydrateG: Math.max(0, carbohydrateG - fibreG), fibreG };
}
