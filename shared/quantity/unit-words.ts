import type { Unit } from "./types.ts";

const SYNONYMS: Readonly<Record<Unit, readonly string[]>> = {
  g: ["g", "gr", "gm", "gms", "gram", "grams", "gramme", "grammes"],
  kg: ["kg", "kgs", "kilo", "kilos", "kilogram", "kilograms"],
  mg: ["mg", "milligram", "milligrams"],
  oz: ["oz", "ounce", "ounces"],
  lb: ["lb", "lbs", "pound", "pounds"],
  ml: ["ml", "mls", "millilitre", "millilitres", "milliliter", "milliliters"],
  cl: ["cl", "centilitre", "centilitres", "centiliter", "centiliters"],
  dl: ["dl", "decilitre", "decilitres", "deciliter", "deciliters"],
  l: ["l", "litre", "litres", "liter", "liters"],
  tsp: ["tsp", "tsps", "teaspoon", "teaspoons", "teaspoonful", "teaspoonfuls"],
  tbsp: ["tbsp", "tbsps", "tbs", "tbl", "tablespoon", "tablespoons", "tablespoonful"],
  "fl oz": ["fl oz", "floz", "fluid ounce", "fluid ounces"],
  cup: ["cup", "cups"],
  pint: ["pint", "pints", "pt", "pts"],
  quart: ["quart", "quarts", "qt", "qts"],
  gallon: ["gallon", "gallons", "gal", "gals"],
  piece: [],
  pinch: ["pinch", "pinches"],
};

const UNIT_BY_WORD: ReadonlyMap<string, Unit> = new Map(
  Object.entries(SYNONYMS).flatMap(([unit, words]) =>
    words.map((word): [string, Unit] => [word, unit as Unit]),
  ),
);

const UNIT_AT_START = /^ {0,3}(fl\.? ?oz|fluid ounces?|\p{L}{1,14})\.?(?![\p{L}\d'’-])/iu;

/** The unit a text starts with, under any of its names, and what follows it; null for none. */
export function unitAtStart(text: string): { readonly unit: Unit; readonly rest: string } | null {
  const match = UNIT_AT_START.exec(text);
  if (match === null) return null;
  const said = (match[1] ?? "").toLowerCase().replaceAll(".", "");
  // "T" for tablespoon and "t" for teaspoon differ only by case: too easily mistaken, so neither.
  const unit = UNIT_BY_WORD.get(said.startsWith("fl") ? said.replace(/ ?oz$/u, " oz") : said);
  return unit === undefined ? null : { unit, rest: text.slice(match[0].length) };
}

/** Words that count something which is less, or more, than one of the food. */
const COUNTED = new Set(
  `clove slice stick stalk rib head bunch sprig leaf handful fillet rasher sheet ball wedge cube scoop
  strip knob thumb bulb ear floret spear segment half quarter sachet square drop dash splash drizzle nest`
    .split(/\s+/u)
    .filter((word) => word !== ""),
);

/** Of these a weight in brackets tells more than their number: a head, a stick, a scoop. */
const BUNDLES = new Set(
  "head stick bunch handful scoop knob sachet ball drizzle splash".split(" "),
);

/** Words for what a food is sold in. */
const CONTAINERS = new Set(
  "can tin jar pack packet package bag tub bottle carton box pouch pot block container punnet tray".split(
    " ",
  ),
);

/** Whether a word (singular) counts a part or a bundle of a food: a clove, a slice, a bunch. */
export function isCounted(word: string): boolean {
  return COUNTED.has(word);
}

/** Whether a word (singular) counts something of no certain size, so that its weight is the amount. */
export function isBundle(word: string): boolean {
  return BUNDLES.has(word);
}

/** Whether a word (singular) is what a food is sold in: a can, a jar. */
export function isContainer(word: string): boolean {
  return CONTAINERS.has(word);
}
