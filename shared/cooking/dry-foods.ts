import { type Food, PACK_LABEL } from "../food/types.ts";
import { foldWords } from "../words/fold.ts";
import type { Basis } from "./types.ts";

/** What kind of dry food it is: it decides what becomes of the cooking water. */
export type DryKind = "rice" | "grain" | "oats" | "pasta" | "pulse";

/** A food sold dry that takes up water when it is cooked: grams cooked per gram dry. */
export interface DryFood {
  readonly kind: DryKind;
  /** NDB numbers of the dry and of the cooked food; null where the table of the source has no such row. */
  readonly dry: string;
  readonly cooked: string | null;
  readonly basis: Basis;
}

/**
 * Dry-matter balance of USDA SR28 (2015): (100 - water dry) / (100 - water cooked), no solids being poured
 * off (draining loses 1 to 3 %). Our own calculation; USDA school recipes agree for black beans (2.57) and
 * give less for baked brown rice (2.28).
 */
function row(kind: DryKind, dry: string, cooked: string, factor: number): DryFood {
  const source = `USDA SR28 (2015), dry matter of ${dry} and ${cooked}`;
  return { kind, dry, cooked, basis: { factor, source } };
}

const DRY_FOODS: readonly DryFood[] = [
  row("rice", "20044", "20045", 2.8),
  row("rice", "20444", "20445", 2.8),
  row("rice", "20046", "20047", 3.04),
  row("rice", "20048", "20049", 3.09),
  row("rice", "20050", "20051", 2.78),
  row("rice", "20052", "20053", 2.76),
  row("rice", "20036", "20037", 2.97),
  row("rice", "20040", "20041", 3.24),
  row("rice", "20088", "20089", 3.54),
  row("grain", "20035", "20137", 3.05),
  row("grain", "20012", "20013", 4.09),
  row("grain", "20028", "20029", 3.33),
  row("grain", "20005", "20006", 2.88),
  row("grain", "20031", "20032", 3.19),
  row("grain", "20140", "20141", 2.66),
  row("oats", "08120", "08121", 5.44),
  row("pasta", "20120", "20121", 2.38),
  row("pasta", "20124", "20125", 2.4),
  row("pasta", "20091", "20092", 2.84),
  row("pasta", "20093", "20094", 2.19),
  row("pasta", "20109", "20110", 2.82),
  row("pasta", "20114", "20115", 3.45),
  row("pasta", "20133", "20134", 3.36),
  row("pulse", "16014", "16015", 2.6),
  row("pulse", "16027", "16028", 2.67),
  row("pulse", "16032", "16033", 2.67),
  row("pulse", "16042", "16043", 2.39),
  row("pulse", "16056", "16057", 2.32),
  row("pulse", "16062", "16063", 2.94),
  row("pulse", "16069", "16070", 3.02),
  row("pulse", "16085", "16086", 3),
  // SR28 has no cooked red lentils: those of other lentils.
  {
    kind: "pulse",
    dry: "16144",
    cooked: null,
    basis: { factor: 3.02, source: "USDA SR28 (2015), dry matter of 16069 and 16070" },
  },
];

const BY_DRY = new Map(DRY_FOODS.map((food) => [food.dry, food]));
const BY_COOKED = new Map(
  DRY_FOODS.flatMap((food) => (food.cooked === null ? [] : [[food.cooked, food] as const])),
);

/** For a brand's dry food, by its name; the first that fits. */
const BY_NAME: readonly (readonly [pattern: RegExp, number: string])[] = [
  [/\b(?:flour|milk|vinegar|cake|cracker|paper|syrup|bran|crisp|puff|cereal|bar|sauce)s?\b/u, ""],
  [/\bbrown\b.*\brice\b|\brice\b.*\bbrown\b/u, "20036"],
  [/\brice noodles?\b/u, "20133"],
  [/\bwild rice\b/u, "20088"],
  [/\b(?:rice|basmati|jasmine)\b/u, "20044"],
  [/\bquinoa\b/u, "20035"],
  [/\bbul?gh?ur\b/u, "20012"],
  [/\bcouscous\b/u, "20028"],
  [/\bbarley\b/u, "20005"],
  [/\bmillet\b/u, "20031"],
  [/\bspelt\b/u, "20140"],
  [/\b(?:porridge|rolled) oats\b|^oats\b/u, "08120"],
  [/\bsoba\b/u, "20114"],
  [/\begg noodles?\b/u, "20109"],
  [/\bwhole\W?(?:wheat|meal|grain)\b.*\b(?:pasta|spaghetti|penne|fusilli)\b/u, "20124"],
  [/\b(?:pasta|spaghetti|penne|fusilli|macaroni|linguine|tagliatelle|orzo|lasagne)\b/u, "20120"],
  [/\blentils?\b/u, "16069"],
  [/\bchick ?peas?\b/u, "16056"],
  [/\bblack beans?\b/u, "16014"],
  [/\bkidney beans?\b/u, "16027"],
  [/\bpinto beans?\b/u, "16042"],
  [/\bsplit peas?\b/u, "16085"],
];
/** Dry grains and pulses have 55 g and more, cooked ones 31 g and less (USDA SR28). */
const DRY_CARBOHYDRATE_G = 45;

/** How a dry food of the table, or a brand's, takes up water; null for what is not sold dry. */
export function dryFoodOf(food: Food): DryFood | null {
  if (food.source.table !== PACK_LABEL) return BY_DRY.get(food.source.number) ?? null;
  if ((food.per100g.carbohydrateG ?? 0) < DRY_CARBOHYDRATE_G) return null;
  const name = foldWords(food.name);
  const number = BY_NAME.find(([pattern]) => pattern.test(name))?.[1] ?? "";
  return BY_DRY.get(number) ?? null;
}

/** For a food that the table has cooked: the dry food it is made of; null when it is none. */
export function cookedFromDry(food: Food): DryFood | null {
  return food.source.table === PACK_LABEL ? null : (BY_COOKED.get(food.source.number) ?? null);
}
