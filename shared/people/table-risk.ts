import type { ReadableLine } from "../allergen/find.ts";
import type { FoodBook } from "../food/book.ts";
import type { Food } from "../food/types.ts";
import { isCooked, isHeated, RAW_DISH, RAW_EGG_DISH } from "../keeping/heated.ts";
import type { Recipe } from "../recipe/types.ts";
import { foldWords } from "../words/fold.ts";
import { VULNERABLE, type Vulnerable } from "./types.ts";

/** What a recipe may hold that some people must not eat. */
export const TABLE_RISKS = [
  "raw egg",
  "soft-cooked egg",
  "raw animal food",
  "undercooked",
  "sprouts",
  "unpasteurised",
  "soft cheese",
  "smoked fish",
  "ready-to-eat meat",
  "raw flour",
  "honey",
  "fish high in mercury",
] as const;
export type RiskKind = (typeof TABLE_RISKS)[number];

/** One risk, the foods that bring it, and whom at the member's table it concerns. */
export interface TableRisk {
  readonly kind: RiskKind;
  readonly foods: readonly string[];
  readonly who: readonly Vulnerable[];
}

interface Seen {
  readonly text: string;
  readonly food: Food | null;
  /** Name of the table and words of the coach, folded. */
  readonly words: string;
}

/** Everything one rule may look at. */
interface Shown {
  readonly recipe: Recipe;
  /** Titles of the recipe and its parts, folded. */
  readonly titles: string;
  readonly steps: string;
  readonly heated: boolean;
}

interface Rule {
  readonly kind: RiskKind;
  readonly who: readonly Vulnerable[];
  readonly applies: (seen: Seen, shown: Shown) => boolean;
}

const ANIMAL = /^raw-(?:poultry|meat|minced-meat|fish|shellfish)$/u;
const SOFT_EGG =
  /\b(?:soft (?:boil|cook|poach|set)|runny|jammy|sunny side|over easy|coddle|poached egg|poach the egg|off the heat)/u;
const UNDERDONE = /\b(?:medium rare|rare|still pink|pink in the middle)\b/u;
const SOFT_CHEESE =
  /\b(?:brie|camembert|feta|gorgonzola|roquefort|stilton|blue cheese|queso (?:fresco|blanco)|panela|(?:goat s?|goats) cheese,? soft|soft goat|soft cheese)\b/u;
const SMOKED_FISH = /\b(?:smoked|kipper|lox|gravlax)\b/u;
const READY_MEAT =
  /\b(?:deli|ham|salami|prosciutto|chorizo|pepperoni|pate|hot dogs?|frankfurters?|turkey breast slices)\b/u;
const HIGH_MERCURY =
  /\b(?:swordfish|shark|king mackerel|marlin|orange roughy|tilefish|big ?eye tuna)\b/u;

/**
 * FDA Food Code 3-801.11 (not to be served to the highly susceptible: raw or undercooked animal food,
 * soft-cooked egg, raw seed sprouts, unpasteurised milk and juice) and 3-302.13 (dishes of raw egg);
 * FDA and CDC consumer advice for pregnancy, under five, 65 and over and weak immunity (soft cheese,
 * smoked fish, ready-to-eat meat, raw flour, honey under 12 months) and FDA/EPA advice about eating
 * fish (mercury); the consumer advice from memory.
 */
const RULES: readonly Rule[] = [
  {
    kind: "raw egg",
    who: VULNERABLE,
    applies: (seen, { recipe, titles }) =>
      isRawEgg(seen) && (RAW_EGG_DISH.test(titles) || !isCooked(seen.text, recipe)),
  },
  {
    kind: "soft-cooked egg",
    who: VULNERABLE,
    applies: (seen, { steps }) => isRawEgg(seen) && SOFT_EGG.test(steps),
  },
  {
    kind: "raw animal food",
    who: VULNERABLE,
    applies: (seen, { recipe, titles }) =>
      isAnimal(seen) &&
      (RAW_DISH.test(titles) || RAW_DISH.test(seen.words) || !isCooked(seen.text, recipe)),
  },
  {
    kind: "undercooked",
    who: VULNERABLE,
    applies: (seen, { steps, titles }) =>
      isAnimal(seen) && (UNDERDONE.test(steps) || UNDERDONE.test(titles)),
  },
  {
    kind: "sprouts",
    who: VULNERABLE,
    applies: ({ words }) => /\bsprouts?\b/u.test(words) && !/\bbrussels?\b/u.test(words),
  },
  {
    kind: "unpasteurised",
    who: VULNERABLE,
    applies: ({ words }) => /\b(?:unpasteuri[sz]ed|raw milk)\b/u.test(words),
  },
  { kind: "soft cheese", who: VULNERABLE, applies: ({ words }) => SOFT_CHEESE.test(words) },
  {
    kind: "smoked fish",
    who: VULNERABLE,
    applies: ({ words, food }) =>
      SMOKED_FISH.test(words) &&
      (food === null ? /\b(?:fish|salmon|trout|mackerel|kipper|lox)\b/u.test(words) : isFish(food)),
  },
  {
    kind: "ready-to-eat meat",
    who: VULNERABLE,
    applies: ({ words, food }) =>
      READY_MEAT.test(words) && (food === null || food.keepingClass === "cooked-meat-or-poultry"),
  },
  {
    kind: "raw flour",
    who: VULNERABLE,
    applies: ({ words, food }, { heated }) =>
      !heated && /\bflour\b/u.test(words) && food?.state !== "cooked",
  },
  { kind: "honey", who: ["under five"], applies: ({ words }) => /\bhoney\b/u.test(words) },
  {
    kind: "fish high in mercury",
    who: ["pregnant", "under five"],
    applies: ({ words }) => HIGH_MERCURY.test(words),
  },
];

/**
 * What in these lines of the recipe is not for the vulnerable people at a member's table; empty when
 * there are none. Judged by foods, titles and steps alone: silence here is no promise.
 */
export function risksAtTable(
  atTable: readonly Vulnerable[],
  recipe: Recipe,
  lines: readonly ReadableLine[],
  foods: FoodBook,
): readonly TableRisk[] {
  if (atTable.length === 0) return [];
  const seen = lines.map(({ choice }) => seenFood(choice, foods));
  const shown: Shown = {
    recipe,
    titles: foldWords([recipe.title, ...recipe.components.map(({ name }) => name)].join(" ; ")),
    steps: foldWords(recipe.steps.map(({ text }) => text).join(" ; ")),
    heated: isHeated(recipe),
  };
  return RULES.flatMap(({ kind, who, applies }) => {
    const concerned = who.filter((one) => atTable.includes(one));
    const hit = concerned.length === 0 ? [] : seen.filter((one) => applies(one, shown));
    if (hit.length === 0) return [];
    return [{ kind, who: concerned, foods: [...new Set(hit.map(({ text }) => text))] }];
  });
}

function seenFood({ foodText, foodId }: ReadableLine["choice"], foods: FoodBook): Seen {
  const food = foodId === null ? null : foods.byId(foodId);
  return { text: foodText, food, words: foldWords(`${foodText} ; ${food?.name ?? ""}`) };
}

function isRawEgg({ food, words }: Seen): boolean {
  return food?.keepingClass === "egg-raw" && !/\bpasteuri[sz]ed\b/u.test(words);
}

function isAnimal({ food }: Seen): boolean {
  return food !== null && ANIMAL.test(food.keepingClass);
}

function isFish(food: Food): boolean {
  return food.allergens?.includes("fish") === true;
}
