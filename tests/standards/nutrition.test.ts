import { describe, expect, it } from "vitest";
import { type Nutrition, nutritionOf } from "../../shared/nutrition/portion.ts";
import { saltG } from "../../shared/nutrition/sum.ts";
import type { NutrientKey } from "../../shared/nutrition/types.ts";
import { readRecipe } from "../../shared/recipe/read.ts";
import { scaleRecipe } from "../../shared/recipe/scale.ts";
import { loadFoodBook } from "../../src/foods/load.ts";

const foods = loadFoodBook();

function worked(text: string): Nutrition {
  const read = readRecipe(text, foods);
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  const scaled = scaleRecipe(read.value.recipe, foods, {
    by: { kind: "as written" },
    without: [],
    swaps: {},
  });
  if (!scaled.ok) throw new Error(JSON.stringify(scaled.problem));
  const nutrition = nutritionOf(scaled.value, foods);
  expect(nutrition.unmeasured).toEqual([]);
  return nutrition;
}

/** How far a correct sum of ingredients may lie from a published panel (food rows and rounding differ). */
function expectNear(found: Nutrition, key: NutrientKey, stated: number, share: number, floor = 0) {
  const { amount, atLeast } = found.perPortion[key];
  expect(atLeast, key).toBe(false);
  expect(Math.abs(amount - stated), `${key} ${amount}`).toBeLessThanOrEqual(
    Math.max(share * stated, floor),
  );
}

describe("published recipes with their published figures", () => {
  // Mississippi Department of Education, Mississippi Recipes for Success (2014), recipe 1341: 100
  // servings, each 99 kcal, carbohydrate 21.31 g, fibre 0.71 g, protein 2.20 g, fat 0.55 g, sodium 98.47 mg.
  it("steamed brown rice, by weight", () => {
    const rice = worked(`Steamed brown rice
Makes 100 portions
Ingredients
- 6 lb brown rice
- 5 quarts water
- 4 tsp salt`);
    expectNear(rice, "energyKcal", 99, 0.03);
    expectNear(rice, "carbohydrateG", 21.31, 0.05);
    expectNear(rice, "proteinG", 2.2, 0.1);
    expectNear(rice, "fatG", 0.55, 0.2, 1.5);
    expectNear(rice, "fibreG", 0.71, 0, 1.5);
    expectNear(rice, "sodiumMg", 98.47, 0.1);
  });

  // US Department of Agriculture recipe, panel by University of Arkansas at Pine Bluff Extension (2023):
  // cornbread, 12 servings, each 145 kcal, fat 3 g, sodium 239 mg, carbohydrate 27 g, fibre 1 g, sugars
  // 10 g, protein 4 g.
  it("cornbread, by cups and spoons", () => {
    const bread = worked(`Cornbread
Makes 12 portions
Ingredients
- 1 cup whole-grain cornmeal
- 1 cup all-purpose flour
- ½ cup sugar
- 2 tsp baking powder
- ½ tsp salt
- 1 cup low-fat buttermilk
- ½ cup unsweetened applesauce
- ½ cup egg whites
- 2 tbsp vegetable oil`);
    expectNear(bread, "energyKcal", 145, 0.03);
    expectNear(bread, "fatG", 3, 0.2);
    expectNear(bread, "carbohydrateG", 27, 0.1);
    expectNear(bread, "proteinG", 4, 0.15);
    expectNear(bread, "fibreG", 1, 0, 1.5);
    expectNear(bread, "sugarsG", 10, 0.1);
    expectNear(bread, "sodiumMg", 239, 0.2);
  });

  // National Heart, Lung, and Blood Institute, Your Heart, Your Life (NIH 08-3674), session 4: turkey
  // meatloaf, 5 servings, each 197 kcal, protein 23 g, carbohydrate 11 g, fibre 2 g, sodium 218 mg. Its
  // fat (7 g) is of a leaner turkey than any in our table, so it is not compared.
  it("turkey meatloaf, by counts", () => {
    const loaf = worked(`Turkey meatloaf
Makes 5 portions
Ingredients
- 1 lb lean ground turkey
- ½ cup rolled oats
- 1 large egg
- 1 tbsp dried onion flakes
- ¼ cup ketchup
- 2 celery stalks
- 2 garlic cloves
- ½ green pepper`);
    expectNear(loaf, "energyKcal", 197, 0.1);
    expectNear(loaf, "proteinG", 23, 0.15);
    expectNear(loaf, "carbohydrateG", 11, 0.1);
    expectNear(loaf, "fibreG", 2, 0, 1.5);
    expectNear(loaf, "sodiumMg", 218, 0.2);
  });

  // National Heart, Lung, and Blood Institute: rice with vegetables and pecans, 10 servings, each 139
  // kcal, fat 5 g.
  it("rice with vegetables and pecans", () => {
    const rice = worked(`Rice with vegetables
Makes 10 portions
Ingredients
- 1 1/2 cups water
- 1 cup chicken broth
- 1 1/3 cups long-grain rice
- 2 tsp vegetable oil
- 2 tbsp onion, chopped
- 2 tbsp green pepper, chopped
- 1/2 cup pecans, chopped
- 1/4 tsp ground sage
- 1 cup celery, chopped
- 1/2 cup water chestnuts, sliced
- 1/4 tsp nutmeg`);
    expectNear(rice, "energyKcal", 139, 0.1);
    expectNear(rice, "fatG", 5, 0.2);
  });

  // US Department of Agriculture, commodity fact sheet B545 (2007): a quarter cup (46 g) of dry brown
  // rice, 171 kcal, protein 3.67 g, carbohydrate 35.72 g, fibre 1.6 g, sugars 0.39 g, fat 1.35 g.
  it("a quarter cup of dry brown rice", () => {
    const rice = worked("Brown rice\nMakes 1 portion\nIngredients\n- 46 g brown rice");
    expectNear(rice, "energyKcal", 171, 0.03);
    expectNear(rice, "proteinG", 3.67, 0.06);
    expectNear(rice, "carbohydrateG", 35.72, 0.03);
    expectNear(rice, "fibreG", 1.6, 0, 0.2);
    expectNear(rice, "fatG", 1.35, 0.2);
  });
});

describe("salt", () => {
  // Regulation (EU) No 1169/2011, Annex I, point 11: salt = sodium x 2.5. USDA SR28: a teaspoon of table
  // salt, 6 g, has 2,325 mg of sodium.
  it("is two and a half times the sodium", () => {
    expect(saltG({ amount: 2325, atLeast: false }).amount).toBeCloseTo(5.8125, 6);
  });
});
