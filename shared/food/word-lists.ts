/** Word lists for reading a food's name. Lower case, accents folded. */

/** A state that changes the figures of a food so much that one must not stand in for the other. */
export type FoodState = "cooked" | "dried" | "canned" | "fresh";

export const STATE_WORDS: ReadonlyMap<string, FoodState> = new Map([
  ["cooked", "cooked"],
  ["boiled", "cooked"],
  ["leftover", "cooked"],
  ["poached", "cooked"],
  ["scrambled", "cooked"],
  ["dry", "dried"],
  ["dried", "dried"],
  ["canned", "canned"],
  ["tinned", "canned"],
  ["tin", "canned"],
  ["can", "canned"],
  ["fresh", "fresh"],
]);

const list = (text: string): ReadonlySet<string> => new Set(text.trim().split(/\s+/u));

/**
 * Cut, size and handling. They help to choose between foods but never rule one out, unless they
 * stand in the head of an entry's name ("beef mince", "baked beans").
 */
export const MANNER_WORDS = list(`
  baby bag baked beaten big bite block boneless bought bulb bunch chilled chopped chunk chunky clean
  cleaned coarse coarsely cold cooking crosswise crumbled crushed cube cubed cut defrosted deseeded
  deveined diagonally dice diced divided drained extra fat fillet filleted fine finely firmly
  florets floret free freshly fried frozen good granulated grated grilled ground half halved handful head
  heaped heirloom husked italian joint juicy julienned knob large lean lengthwise level light lightly
  loose loosely low lukewarm mashed matchstick medium melted mild mince mixed natural optional organic pack
  packed packet peeled piece pitted plain plump pot pure quality quartered range raw ready reduced
  regular ribbon rinsed ring ripe roast roasted room rough roughly rounded salted sauteed scrubbed
  seeded seedless shelled shredded shucked skin skinless skinned slice sliced small softened spear
  split sprig squeezed stalk steak steamed stem stemmed stick stoned strip stripped table temperature
  tender thawed thick thickly thin thinly toasted tops torn trimmed uncooked undrained unpeeled unsalted
  unsweetened unwaxed very vine virgin warm washed wedge weight whole zested
`);

export const FILLER_WORDS = list(`
  a about additional an and any approx approximately around as at by each for from g garnish if in into
  kg lb ml more needed not of off on only or oz per plus pre serve serving some taste the to until use
  weighed with x you your
`);

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
]);
