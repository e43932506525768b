import type { NutrientKey } from "../../../shared/nutrition/types.ts";

/** A recipe of a public body with its published figures per serving, as facts in our own words. */
export interface WorkedRecipe {
  readonly name: string;
  /** Publisher, title, year. */
  readonly source: string;
  readonly text: string;
  readonly stated: Readonly<Partial<Record<NutrientKey, number>>>;
}

/** A figure outside its band, with the cause. Bands are not widened instead. */
export interface KnownMiss {
  readonly recipe: string;
  readonly key: NutrientKey;
  readonly cause: string;
}

const NHLBI = "National Heart, Lung, and Blood Institute (US)";
const TEAM_NUTRITION = "USDA Team Nutrition with the Institute of Child Nutrition";

export const WORKED_RECIPES: readonly WorkedRecipe[] = [
  {
    name: "cornbread",
    source:
      "US Department of Agriculture recipe; panel by University of Arkansas at Pine Bluff Extension, 2023",
    text: `Makes 12 portions
Ingredients
- 1 cup whole-grain cornmeal
- 1 cup all-purpose flour
- ½ cup sugar
- 2 tsp baking powder
- ½ tsp salt
- 1 cup low-fat buttermilk
- ½ cup unsweetened applesauce
- ½ cup egg whites
- 2 tbsp vegetable oil`,
    stated: {
      energyKcal: 145,
      fatG: 3,
      sodiumMg: 239,
      carbohydrateG: 27,
      fibreG: 1,
      sugarsG: 10,
      proteinG: 4,
    },
  },
  {
    name: "turkey meatloaf",
    source: `${NHLBI}, Your Heart, Your Life (NIH 08-3674), session 4`,
    text: `Makes 5 portions
Ingredients
- 1 lb lean ground turkey
- ½ cup rolled oats
- 1 large egg
- 1 tbsp dried onion flakes
- ¼ cup ketchup
- 2 celery stalks
- 2 garlic cloves
- ½ green pepper`,
    stated: {
      energyKcal: 197,
      fatG: 7,
      saturatedFatG: 2,
      sodiumMg: 218,
      fibreG: 2,
      proteinG: 23,
      carbohydrateG: 11,
    },
  },
  {
    name: "vegetable sauce for spaghetti, low-sodium paste",
    source: `${NHLBI}, Your Guide to Lowering Your Blood Pressure With DASH, 2006`,
    text: `Makes 6 portions
Ingredients
- 2 tbsp olive oil
- 2 small onions, chopped
- 3 garlic cloves
- 1 1/4 cups courgette, sliced
- 1 tbsp dried oregano
- 1 tbsp dried basil
- 8 oz canned tomato sauce
- 6 oz tomato paste, no salt added
- 2 medium tomatoes
- 1 cup water`,
    stated: {
      energyKcal: 105,
      fatG: 5,
      saturatedFatG: 1,
      proteinG: 3,
      carbohydrateG: 15,
      fibreG: 4,
      sodiumMg: 253,
    },
  },
  {
    name: "rice with vegetables and pecans",
    source: `${NHLBI}, heart-healthy home cooking leaflet`,
    text: `Makes 10 portions
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
- 1/4 tsp nutmeg`,
    stated: { energyKcal: 139, fatG: 5, sodiumMg: 86 },
  },
  {
    name: "red beans and rice, 25 servings by weight",
    source: `${TEAM_NUTRITION}, Red Beans and Rice for schools`,
    text: `Makes 25 portions
Ingredients
- 1/4 cup olive oil
- 1 lb 9 oz onion, diced
- 1 lb 9 oz green pepper, diced
- 6 garlic cloves
- 12.5 oz brown rice
- 2 tbsp 2 tsp ground cumin
- 2 tbsp 2 tsp dried oregano
- 2 tsp salt
- 2 tsp black pepper
- 64 fl oz low-sodium chicken broth
- 4 lb 6 oz canned kidney beans, rinsed`,
    stated: {
      energyKcal: 173,
      fatG: 3,
      sodiumMg: 313,
      carbohydrateG: 30,
      fibreG: 7,
      sugarsG: 2,
      proteinG: 7,
    },
  },
  {
    name: "steamed brown rice",
    source:
      "Mississippi Department of Education, Mississippi Recipes for Success, 2014, recipe 1341",
    text: `Makes 100 portions
Ingredients
- 6 lb brown rice
- 5 quarts water
- 4 tsp salt`,
    stated: {
      energyKcal: 99,
      carbohydrateG: 21.31,
      fibreG: 0.71,
      proteinG: 2.2,
      fatG: 0.55,
      sodiumMg: 98.47,
    },
  },
  {
    name: "oven-fried chicken",
    source: `${NHLBI}, Stay Young at Heart recipe`,
    text: `Makes 10 portions
Ingredients
- 4 chicken breasts, skinless
- 4 chicken drumsticks, skinless
- ½ cup skimmed milk
- 1 tsp poultry seasoning
- 1 cup cornflakes, crumbled
- 1 ½ tbsp onion powder
- 1 ½ tbsp garlic powder
- 2 tsp black pepper
- 2 tsp dried chilli flakes
- 1 tsp ground ginger
- 1 tsp vegetable oil`,
    stated: { energyKcal: 117, fatG: 3, sodiumMg: 67 },
  },
  {
    name: "chicken creole",
    source: "Oregon State University Extension Service, 20-minute chicken creole",
    text: `Makes 8 portions
Ingredients
- 1 tbsp vegetable oil
- 1 lb boneless skinless chicken breast
- 14.5 oz canned chopped tomatoes
- 1 cup chilli sauce
- 1 large green pepper
- 2 celery stalks
- 1 small onion
- 2 garlic cloves
- 1 tsp dried basil
- 1 tsp parsley
- ¼ tsp cayenne pepper
- ¼ tsp salt`,
    stated: { energyKcal: 140, fatG: 2.5, carbohydrateG: 15, fibreG: 1, proteinG: 15 },
  },
  {
    name: "brown rice for schools, rice alone",
    source: `${TEAM_NUTRITION}, Cooking Rice, USDA recipe for schools`,
    text: `Makes 25 portions
Ingredients
- 1 lb 13 oz brown rice`,
    stated: { energyKcal: 125, fatG: 1, carbohydrateG: 30, fibreG: 3, proteinG: 4 },
  },
  {
    name: "a quarter cup of dry brown rice",
    source: "USDA commodity fact sheet B545, 2007",
    text: `Makes 1 portion
Ingredients
- 46 g brown rice`,
    stated: {
      energyKcal: 171,
      proteinG: 3.67,
      carbohydrateG: 35.72,
      fibreG: 1.6,
      sugarsG: 0.39,
      fatG: 1.35,
    },
  },
];

const SIZES =
  "eight pieces without weights: today's published weight of a skinless breast, 272 g, is twice that of the recipe's time";
const BEANS =
  "low-sodium beans and broth are not in the table; its rinsed canned beans are salted, and richer in dry matter";

export const KNOWN_MISSES: readonly KnownMiss[] = [
  {
    recipe: "turkey meatloaf",
    key: "fatG",
    cause: "the panel is of a leaner turkey than the 7 % fat of the table's leanest row",
  },
  {
    recipe: "rice with vegetables and pecans",
    key: "sodiumMg",
    cause: "salt of the canned broth, which differs by brand (20.3 % over)",
  },
  { recipe: "red beans and rice, 25 servings by weight", key: "energyKcal", cause: BEANS },
  { recipe: "red beans and rice, 25 servings by weight", key: "proteinG", cause: BEANS },
  { recipe: "red beans and rice, 25 servings by weight", key: "sodiumMg", cause: BEANS },
  { recipe: "oven-fried chicken", key: "energyKcal", cause: SIZES },
  { recipe: "oven-fried chicken", key: "fatG", cause: SIZES },
  {
    recipe: "oven-fried chicken",
    key: "sodiumMg",
    cause: `${SIZES}; cornflakes are not in the table`,
  },
  {
    recipe: "chicken creole",
    key: "carbohydrateG",
    cause: "the table's chilli sauce is less sweet than the one used",
  },
  {
    recipe: "chicken creole",
    key: "fibreG",
    cause:
      "the panel leaves out the fibre of chilli sauce and vegetables (1 g from 1.6 kg of them)",
  },
  {
    recipe: "brown rice for schools, rice alone",
    key: "carbohydrateG",
    cause:
      "the panel contradicts itself: 4 g protein, 1 g fat and 30 g carbohydrate are 145 kcal, not 125",
  },
  {
    recipe: "brown rice for schools, rice alone",
    key: "fibreG",
    cause: "as its carbohydrate: the panel is of more rice than its energy",
  },
];
