/** What a recipe's text should be read as; what is not named is not held. */
export interface TypedRecipe {
  readonly about: string;
  readonly text: string;
  readonly title: string;
  readonly portions: number;
  readonly portionWord?: string;
  readonly yieldG?: number;
  /** Parts in order: their name, and how many lines each has. */
  readonly parts: readonly (readonly [name: string, lines: number])[];
  readonly optional?: readonly string[];
  readonly steps: number;
  /** Minutes of each step that names a time. */
  readonly minutes?: readonly (readonly number[])[];
  readonly temperaturesC?: readonly number[];
  readonly keeping?: {
    readonly fridgeDays?: number | null;
    readonly freezerMonths?: number | null;
    readonly freezes?: "well" | "poorly" | "no" | null;
  };
  readonly reheating?: number;
  readonly notes?: number;
  readonly remarks?: readonly string[];
}

/** Recipes as coaches type them, invented; no two laid out alike. */
export const TYPED_RECIPES: readonly TypedRecipe[] = [
  {
    about: "headings with 'For the', bare lines, a range of portions, paragraphs as steps",
    text: `Peanut chicken noodles

Serves 4–6

For the noodles
400g dried egg noodles
600 g skinless chicken thighs, sliced
2 carrots, grated
1 tbsp rapeseed oil

For the sauce
120 g peanut butter
60 ml soy sauce
juice of 1 lime
1 tbsp honey or maple syrup

Method
Boil the noodles for 4 minutes and drain them.
Fry the chicken in the oil for 8-10 min until it reads 74°C.
Whisk the sauce and toss everything together.

Will keep for 3–4 days refrigerated.
Freezes for 3 months.`,
    title: "Peanut chicken noodles",
    portions: 4,
    parts: [
      ["Noodles", 4],
      ["Sauce", 4],
    ],
    steps: 3,
    minutes: [[4], [10], []],
    temperaturesC: [74],
    keeping: { fridgeDays: 3, freezerMonths: 3, freezes: "well" },
    remarks: ["yield is a range"],
  },
  {
    about: "capitals for headings, steps with 1), a yield of its own line under the title",
    text: `BEEF AND BEAN WRAPS
5 wraps

FILLING
500 g lean beef mince (5% fat)
1 tin (400 g) kidney beans, drained
1 onion, chopped
2 tsp ground cumin
salt & pepper to taste

TO SERVE
5 large flour tortillas
100 g cheddar, grated (optional)

INSTRUCTIONS
1) Brown the mince over a high heat for 5 mins.
2) Add the rest and simmer for 20 minutes.
3) Roll up.

Not suitable for freezing
Fridge: 3 days`,
    title: "BEEF AND BEAN WRAPS",
    portions: 5,
    portionWord: "wrap",
    parts: [
      ["Filling", 6],
      ["To serve", 2],
    ],
    steps: 3,
    minutes: [[5], [20], []],
    keeping: { fridgeDays: 3, freezes: "no" },
  },
  {
    about: "markdown headings, bold, a yield in the heading of the list",
    text: `# Lentil soup

A winter warmer that I cook most Sundays.

## Ingredients (serves 4)

- **200 g** red lentils, rinsed
- 1 l vegetable stock
- 2 carrots, diced
- 1 tsp each ground cumin and paprika

**Topping** (optional)

- 100 g plain yoghurt

## Directions

1. Simmer the lentils, carrots, stock and spices for 25 minutes.
2. Blend.

## Storage

Up to one week in the fridge.
Freeze for up to 2 months.

## Reheating

Warm through in a pan until piping hot.`,
    title: "Lentil soup",
    portions: 4,
    parts: [
      ["Base", 5],
      ["Topping", 1],
    ],
    optional: ["Topping"],
    steps: 2,
    minutes: [[25], []],
    keeping: { fridgeDays: 7, freezerMonths: 2, freezes: "well" },
    reheating: 1,
    notes: 1,
  },
  {
    about: "no heading of the list, the method or anything else",
    text: `Overnight oats
Makes 2

100 g rolled oats
250 ml semi-skimmed milk
30 g chia seeds
1 banana

Stir the oats, milk and seeds together. Chill overnight.

Slice the banana on top just before you eat it.

3 days chilled`,
    title: "Overnight oats",
    portions: 2,
    parts: [["Base", 4]],
    steps: 2,
    minutes: [[480], []],
    keeping: { fridgeDays: 3, freezes: null },
  },
  {
    about: "times and figures in the head, Step 1:, both scales, Yield:",
    text: `Baked cod parcels
Yield: 4 portions (about 320 g each)
Prep time: 15 min
Cook time: 25 min
Per portion: 310 kcal, 34 g protein

Ingredients:
4 cod fillets, about 140 g each
400 g new potatoes, halved
200 g green beans
20 g butter or 15 g olive oil
1 lemon

Method:
Step 1: Heat the oven to 200 °C / 400 °F.
Step 2: Boil the potatoes for 12 minutes.
Step 3: Wrap it all in paper and bake for 1 hr 20.

Eat within 2 days.`,
    title: "Baked cod parcels",
    portions: 4,
    yieldG: 1280,
    parts: [["Base", 5]],
    steps: 3,
    minutes: [[], [12], [80]],
    temperaturesC: [200],
    keeping: { fridgeDays: 2 },
    notes: 3,
  },
  {
    about: "headings of the steps, headings with a colon, a tip",
    text: `Turkey meatballs with tomato sauce
Serves 4 people

Meatballs:
500 g turkey mince (7% fat)
50 g breadcrumbs
1 egg

Sauce:
2 x 400 g tins chopped tomatoes
2 cloves garlic, crushed
1 tbsp olive oil

Directions:
For the meatballs:
Mix everything and roll 20 balls.
Bake at 200C for 18 minutes.
For the sauce:
Simmer the tomatoes, garlic and oil for half an hour.

Tip: Roll them small so that they cook through.
Keeps 3 days in the fridge, freezes 3 months`,
    title: "Turkey meatballs with tomato sauce",
    portions: 4,
    parts: [
      ["Meatballs", 3],
      ["Sauce", 3],
    ],
    steps: 3,
    minutes: [[], [18], [30]],
    temperaturesC: [200],
    keeping: { fridgeDays: 3, freezerMonths: 3 },
    notes: 1,
  },
  {
    about:
      "the yield in the title, check boxes, a loose heading, method as one numbered list without a heading",
    text: `Chickpea salad boxes (makes 4)

☐ 2 x 400 g cans chickpeas, drained
☐ 1 cucumber
☐ 12 cherry tomatoes, halved

Lemon dressing
3 tbsp olive oil
1 lemon, juiced
1 garlic clove

1. Chop the cucumber.
2. Whisk the dressing.
3. Layer it in boxes.

Store in the fridge for up to 4 days.
Does not freeze: the cucumber goes limp.`,
    title: "Chickpea salad boxes",
    portions: 4,
    parts: [
      ["Base", 3],
      ["Lemon dressing", 3],
    ],
    steps: 3,
    keeping: { fridgeDays: 4, freezes: "no" },
  },
  {
    about: "a sub-recipe below the steps, with a method of its own",
    text: `Falafel bowls
Serves four

What you need
400 g can chickpeas, drained
300 g cooked quinoa
1 red onion, sliced
a handful of parsley

What to do
1. Blend the chickpeas with the onion and parsley.
2. Shape and bake for 25-30 min at 190°C.

## Tahini sauce
60 g tahini
60 ml water
1 lemon, juiced

Method
3. Whisk until smooth.

Tahini sauce keeps 5 days
Falafel bowls keep 3 days in the fridge`,
    title: "Falafel bowls",
    portions: 4,
    parts: [
      ["Base", 4],
      ["Tahini sauce", 3],
    ],
    steps: 3,
    minutes: [[], [30], []],
    temperaturesC: [190],
    keeping: { fridgeDays: 3 },
  },
  {
    about: "US measures, amounts behind the food, notes at the end",
    text: `Turkey chili
Makes about 8 bowls

You will need
ground turkey, 2 lb
black beans, 1 (15 oz) can
1 (28 oz) can crushed tomatoes
1 1/2 cups (360 ml) chicken broth
2 tbsp. chili powder
1 green bell pepper, diced
Salt
cooking spray

Directions
Coat a pot with the spray and brown the turkey over medium-high heat, about 8 minutes.
Add everything else. Simmer, covered, for 1 hour and 15 minutes, until it reads 165 F.

Notes
Good over rice.
Can be frozen for up to 3 months.
Best eaten within 4 days.`,
    title: "Turkey chili",
    portions: 8,
    portionWord: "bowl",
    parts: [["Base", 8]],
    steps: 2,
    minutes: [[8], [75]],
    temperaturesC: [73.9],
    keeping: { fridgeDays: 4, freezerMonths: 3, freezes: "well" },
    notes: 1,
  },
  {
    about: "a paragraph that also says how long it keeps and how it is reheated",
    text: `Chicken and rice

Serves 3

Ingredients
240 g basmati rice
450 g chicken breast, diced
600 ml hot chicken stock
150 g frozen peas

Instructions

Brown the chicken, then add the rice and stock and cook, covered, for 15 minutes.

Stir in the peas and let it stand for a minute. Cool it fast. Keeps 1 day in the fridge.

To reheat, add a splash of water and microwave for 3 minutes until steaming.`,
    title: "Chicken and rice",
    portions: 3,
    parts: [["Base", 4]],
    steps: 2,
    minutes: [[15], [1]],
    keeping: { fridgeDays: 1 },
    reheating: 1,
  },
  {
    about: "a page's source",
    text: `<h1>Egg muffins</h1><p>Makes 12 muffins</p><h2>Ingredients</h2><ul><li><b>8</b> large eggs</li>
<li>100&nbsp;g spinach</li><li>&frac12; red pepper, diced</li></ul><h2>Method</h2><ol><li>Heat the oven to 180&deg;C.</li>
<li>Beat, pour and bake for 20 minutes.</li></ol><p>Keeps 3 days in the fridge</p>`,
    title: "Egg muffins",
    portions: 12,
    portionWord: "muffin",
    parts: [["Base", 3]],
    steps: 2,
    minutes: [[], [20]],
    temperaturesC: [180],
    keeping: { fridgeDays: 3 },
  },
  {
    about:
      "a marinade that is poured off, both a swap line and a word for it, fridge and freezer in one line",
    text: `Tandoori tofu
Feeds 2

Marinade, 30 % taken up:
150 g plain yoghurt
1 tbsp garam masala
2 tsp lemon juice

Tray:
400 g firm tofu
or 400 g chicken breast
1 small cauliflower (600 g), in florets
1 tbsp rapeseed or olive oil

How to make it
1 - Marinate the tofu for 2 hours or overnight.
2 - Roast at 220°C (fan 200°C) for 25 minutes.

Fridge 3 days / freezer 2 months`,
    title: "Tandoori tofu",
    portions: 2,
    parts: [
      ["Marinade, 30 % taken up", 3],
      ["Tray", 3],
    ],
    steps: 2,
    minutes: [[120, 480], [25]],
    temperaturesC: [220, 200],
    keeping: { fridgeDays: 3, freezerMonths: 2, freezes: "well" },
  },
  {
    about: "emoji for bullets, a heading only by its stars, decimals with a comma",
    text: `Shakshuka für zwei
Portions: 2
🍅 400 g tinned plum tomatoes
🥚 4 eggs
🧅 0,5 kg onions, sliced
🫒 1 EL olive oil

**Method**
✅ Soften the onions for twenty minutes.
✅ Add the tomatoes, then crack in the eggs and cook 6 min.

Eat on the same day.`,
    title: "Shakshuka für zwei",
    portions: 2,
    parts: [["Base", 4]],
    steps: 2,
    minutes: [[20], [6]],
    keeping: { fridgeDays: 0 },
  },
];
