import type { FoodBook } from "../food/book.ts";
import type { KeepingClass } from "../food/types.ts";
import type { ScaledLine } from "./scale.ts";
import type { LineChoice } from "./types.ts";

/** The temperature in the middle at which a food is safe to eat, and how it is told without one. */
export type CoreCheck =
  | {
      readonly by: "thermometer";
      readonly foods: readonly string[];
      readonly coreC: number;
      readonly restMinutes: number;
    }
  /** Flesh opaque; shells open. */
  | { readonly by: "look"; readonly foods: readonly string[] };

type Rule =
  | { readonly by: "thermometer"; readonly coreC: number; readonly restMinutes: number }
  | { readonly by: "look" };

/**
 * USDA FSIS / FoodSafety.gov, "Safe minimum internal temperatures" (as of 2019-04-12): poultry 165 °F, ground
 * meat 160 °F, steaks, chops and roasts 145 °F and 3 minutes of rest, fin fish 145 °F, egg dishes 160 °F;
 * shellfish by its look. Celsius as the same table prints it.
 */
const CORE: Readonly<Partial<Record<KeepingClass, Rule>>> = {
  "raw-poultry": { by: "thermometer", coreC: 74, restMinutes: 0 },
  "raw-minced-meat": { by: "thermometer", coreC: 71, restMinutes: 0 },
  "egg-raw": { by: "thermometer", coreC: 71, restMinutes: 0 },
  "raw-meat": { by: "thermometer", coreC: 63, restMinutes: 3 },
  "raw-fish": { by: "thermometer", coreC: 63, restMinutes: 0 },
  "raw-shellfish": { by: "look" },
};

/** "All poultry: whole, parts, ground" is one row of that table, whatever class the food table has for it. */
const POULTRY = /\b(?:chicken|turkey|duck|goose|poultry|quail|guinea fowl)\b/iu;
/** Foods that the table does not have are judged by their words: silence would read as "needs no check". */
const BY_WORDS: readonly (readonly [words: RegExp, as: KeepingClass])[] = [
  [/\b(?:stock|broth|bouillon|gravy|sauce|cooked|smoked|cured|tinned|canned)\b/iu, "shelf-stable"],
  [POULTRY, "raw-poultry"],
  [
    /\b(?:mince|minced meat|ground (?:beef|pork|lamb|veal)|burgers?|sausages?)\b/iu,
    "raw-minced-meat",
  ],
  [/\b(?:beef|steak|pork|lamb|mutton|veal|venison|goat|rabbit)\b/iu, "raw-meat"],
  [/\b(?:fish|salmon|cod|haddock|hake|trout|tuna|mackerel|pollock|sea bass)\b/iu, "raw-fish"],
  [/\b(?:prawns?|shrimps?|mussels?|clams?|scallops?|oysters?|lobster|crab)\b/iu, "raw-shellfish"],
];
/** Less egg than this binds or glazes, and is no egg dish. Our own bound, no published source. */
const EGG_DISH_SHARE = 0.2;

/** What must be checked in the middle instead of a time: each raw food of animals that is heated, hottest first. */
export function coreChecks(lines: readonly ScaledLine[], foods: FoodBook): readonly CoreCheck[] {
  const totalG = lines.reduce((sum, { grams }) => sum + (grams ?? 0), 0);
  const checks = new Map<string, { rule: Rule; foods: string[] }>();
  for (const line of lines) {
    const rule = ruleOf(line, foods, totalG);
    if (rule === null) continue;
    const key = rule.by === "look" ? rule.by : `${rule.coreC}+${rule.restMinutes}`;
    const check = checks.get(key) ?? { rule, foods: [] };
    if (!check.foods.includes(line.choice.foodText)) check.foods.push(line.choice.foodText);
    checks.set(key, check);
  }
  return [...checks.values()]
    .map((check): CoreCheck => ({ ...check.rule, foods: check.foods }))
    .sort((a, b) => heatOf(b) - heatOf(a));
}

function ruleOf(line: ScaledLine, foods: FoodBook, totalG: number): Rule | null {
  const { choice, cooking, grams } = line;
  if (cooking.method === null && cooking.otherwise === null) return null;
  // Written cooked, and only counted by the raw food of the table.
  if (choice.tableGPerG !== 1) return null;
  const kind = kindOf(choice, foods);
  const isBinder = kind === "egg-raw" && (grams ?? 0) < totalG * EGG_DISH_SHARE;
  return kind === null || isBinder ? null : (CORE[kind] ?? null);
}

function kindOf(choice: LineChoice, foods: FoodBook): KeepingClass | null {
  const food = choice.foodId === null ? null : foods.byId(choice.foodId);
  if (food === null) return kindByWords(choice.foodText);
  const kind = food.keepingClass;
  const isFlesh = kind === "raw-meat" || kind === "raw-minced-meat";
  return isFlesh && POULTRY.test(food.name) ? "raw-poultry" : kind;
}

function kindByWords(foodText: string): KeepingClass | null {
  return BY_WORDS.find(([words]) => words.test(foodText))?.[1] ?? null;
}

function heatOf(check: CoreCheck): number {
  return check.by === "look" ? 0 : check.coreC;
}
