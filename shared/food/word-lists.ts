/** Word lists for reading a food's name. Lower case, accents folded. What they hold is common usage. */

/** A state that changes the figures of a food so much that one must not stand in for the other. */
export type FoodState = "cooked" | "dried" | "canned" | "fresh";

export const STATE_WORDS: ReadonlyMap<string, FoodState> = new Map([
  ["cooked", "cooked"],
  ["precooked", "cooked"],
  ["leftover", "cooked"],
  ["dry", "dried"],
  ["dried", "dried"],
  ["canned", "canned"],
  ["tinned", "canned"],
  ["tin", "canned"],
  ["can", "canned"],
  ["jar", "canned"],
  ["jarred", "canned"],
  ["fresh", "fresh"],
]);

/** How a food was cooked, as far as it changes the figures: frying adds fat, scrambling milk. */
export type CookMethod = "moist" | "dry heat" | "fried" | "scrambled";

export const METHOD_WORDS: ReadonlyMap<string, CookMethod> = new Map([
  ...list("boiled simmered steamed poached stewed braised casseroled pulled wilted").map(
    (word) => [word, "moist"] as const,
  ),
  ...list(
    "roast roasted baked grilled broiled griddled barbecued chargrilled seared charred browned rotisserie microwaved",
  ).map((word) => [word, "dry heat"] as const),
  ...list("fried sauteed crispy").map((word) => [word, "fried"] as const),
  ["scrambled", "scrambled"],
]);

function list(text: string): readonly string[] {
  return text.trim().split(/\s+/u);
}

/**
 * Cut, size, handling and measure. They help to choose between foods but never rule one out, unless
 * they stand in the head of an entry's name ("beef mince", "baked beans").
 */
export const MANNER_WORDS: ReadonlySet<string> = new Set(
  list(`
  baby bag bagful batch baton best big bit bite block bone boneless bottle bought box bulb bunch
  carton casing centimetre cheap chilled  chunk chunky clean cm coarse coarsely cold color
  colour cooking cored couple crosswise creamy crunchy cube cup cut dash defrost deseeded diagonally dice dollop
  dozen drained drizzle evenly everyday extra fashioned fat fillet filleted fine finely finest
  firmly floret free freshly fridge frozen full generous gently glug good  granulated grate
  grated ground half handful head heaped heaping heirloom homemade inch inner italian  
  joint juiced juicy jumbo kilo knob large lean lengthwise less level light lightly lite liter
  litre little loosely long low lower lukewarm lump matchstick mature medium mild  mixed  mm
  mostly natural new nice no old optional optionally organic ounce outdoor outer oval overripe pack packet
  pair partly piece pinch pint pip plain plump portion pot pound preferably premium punnet pure
  quality quarter range rasher raw ready reared reduced regular ribbon ring ripe room rindless rough roughly
  sachet scant scoop scoopful seedless serving several sharp shaving sheet shop shredded sized skin skinless
  slice slow small smooth spear splash spoon spoonful spray sprig sprinkle sprinkling squeeze squeezed
  stalk steak stem  strip supermarket table tablespoon tbsp teaspoon temperature tender
  thawed thick thickly thin thinly third thumb thumbsized tightly tiny tip top torn trimming tsp tub
  uncooked undrained unpeeled unsalted unsweetened unwaxed value very vine vintage virgin warm wash wedge
  weight whole zested
`),
);

/**
 * A word that ends in -ed tells how a food was handled ("hulled", "torn and washed"), but for these:
 * they make another food of it, and must be the food's own.
 */
export const CHANGING_WORDS: ReadonlySet<string> = new Set(
  list(`
  battered based blended breaded buttered candied caramelised caramelized clotted coated concentrated condensed corned covered
  creamed crumbed crusted crystallised cultured cured curried defatted dehydrated desiccated devilled diluted dipped dressed
  dusted enriched evaporated fermented filled flavored flavoured floured fortified frosted glazed herbed honeyed
  iced infused jellied malted marinated oiled parboiled pearled peppered pickled popped potted powdered
  preserved processed puffed reconstituted refried salted seasoned self-raised skimmed smoked soured spiced sprouted
  stuffed sugared sweetened textured whipped
`),
);

export const FILLER_WORDS: ReadonlySet<string> = new Set(
  list(`
  one two three four five six seven eight nine ten eleven twelve
  a about additional an and any approx approximately around as at by each few for from g garnish got had have
  i if in into is kg lb left ml more my needed not of off on only or our oz per please plus pre s serve some taste thanks
  that the then this to type style until use weighed which with x you your
`),
);

/** Two words that name one food, which is not a form of either. Written as one. */
export const COMPOUNDS: readonly string[] = [
  "baby corn",
  "baby sweetcorn",
  "broth cube",
  "bouillon cube",
  "bread stick",
  "calamari ring",
  "crab stick",
  "fish finger",
  "fish stick",
  "frozen yoghurt",
  "frozen yogurt",
  "pepper steak",
  "onion ring",
  "rice paper",
  "roast potato",
  "roasted potato",
  "squid ring",
  "stock cube",
  "stock pot",
];

/** After "ground" or "minced" they are mince; spices and garlic are not. */
export const MINCED_MEATS = "beef|pork|turkey|chicken|lamb|veal|meat|chuck|venison|bison";

/** Cuts of an animal: "thigh meat" is thigh. */
export const CUTS = "breast|brisket|drumstick|loin|neck|rump|shin|shoulder|thigh|wing";

/** Words that tell a food in the head of a name, and only its state after a comma: "butter, soft". */
export const TAIL_MANNER: ReadonlySet<string> = new Set(list("firm hot soft"));

/** Names of several words that other kitchens call otherwise. */
export const PHRASES: readonly (readonly [RegExp, string])[] = [
  [/\bgarbanzo beans?\b/gu, "chickpeas"],
  [/\b(red|green|yellow|orange) capsicum(?=s?\b)/gu, "$1 pepper"],
  [
    /\bin (?:(?:extra|light|virgin|pure) )*(?:olive|sunflower|vegetable|rapeseed|canola|soya|soybean) oil\b/gu,
    "in oil",
  ],
  // What a can is filled up with comes after what is in it.
  [
    /(?<=[a-z]) in (?=(?:(?:spring|salted|unsalted|lightly|their|its|own|natural|fruit) )*(?:water|brine|juice)\b)/gu,
    " canned, in ",
  ],
  [/\b(?:hot|cold)[ -](?=smoked\b)/gu, ""],
  [/\b(?:cold|warm)[ -]water (?=(?:prawn|shrimp)s?\b)/gu, ""],
  // The zest weighs next to nothing.
  [/\b(?:(?:zest|rind|peel) and juice|juice and (?:zest|rind|peel)) of\b/gu, "juice of"],
];

/** One spelling for words that differ by country or habit; applied to the singular. */
export const SPELLINGS: ReadonlyMap<string, string> = new Map([
  ["yoghurt", "yogurt"],
  ["yoghourt", "yogurt"],
  ["chilli", "chili"],
  ["chile", "chili"],
  ["chilly", "chili"],
  ["minced", "mince"],
  ["catsup", "ketchup"],
  ["cacao", "cocoa"],
  ["houmous", "hummus"],
  ["hommus", "hummus"],
  ["humous", "hummus"],
  ["garbanzo", "chickpea"],
  ["beancurd", "tofu"],
  ["filet", "fillet"],
  ["shrimp", "prawn"],
  ["eggplant", "aubergine"],
  ["zucchini", "courgette"],
  ["cilantro", "coriander"],
  ["arugula", "rocket"],
  ["barbeque", "barbecue"],
  ["bbq", "barbecue"],
  ["mayo", "mayonnaise"],
  ["parmigiano", "parmesan"],
  ["halve", "half"],
  ["leave", "leaf"],
  ["loave", "loaf"],
  ["wholegrain", "wholemeal"],
  ["wholewheat", "wholemeal"],
  ["soy", "soya"],
  ["bulghur", "bulgur"],
  ["burghul", "bulgur"],
  ["pitta", "pita"],
  ["lasagna", "lasagne"],
  ["gelatin", "gelatine"],
  ["phyllo", "filo"],
  ["linseed", "flaxseed"],
  ["veg", "vegetable"],
  ["veggie", "vegetable"],
  ["spud", "potato"],
  ["bok", "pak"],
  ["choy", "choi"],
  ["broth", "stock"],
  ["bouillon", "stock"],
  ["babysweetcorn", "babycorn"],
  ["bouilloncube", "stockcube"],
  ["brothcube", "stockcube"],
  ["dessicated", "desiccated"],
]);

/** Words that say how fat a food is: said as well by whoever gives its per cent of fat. */
export const FAT_WORDS: ReadonlySet<string> = new Set(
  list("extra fat free full half lean light low nonfat reduced semi skim skimmed whole"),
);
