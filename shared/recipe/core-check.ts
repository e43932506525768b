import type { FoodBook } from "../food/book.ts";
import type { KeepingClass } from "../food/types.ts";
import type { ScaledLine } from "./scale.ts";

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
/** Less egg than this binds or glazes, and is no egg dish. Our own bound, no published source. */
const EGG_DISH_SHARE = 0.1;

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
  const food = choice.foodId === null ? null : foods.byId(choice.foodId);
  if (food === null || (cooking.method === null && cooking.otherwise === null)) return null;
  // Written cooked, and only counted by the raw food of the table.
  if (choice.tableGPerG !== 1) return null;
  const isFlesh = /^raw-(?:meat|minced-meat|poultry)$/u.test(food.keepingClass);
  if (isFlesh && POULTRY.test(food.name)) return CORE["raw-poultry"] ?? null;
  const isGlaze = food.keepingClass === "egg-raw" && (grams ?? 0) < totalG * EGG_DISH_SHARE;
  return isGlaze ? null : (CORE[food.keepingClass] ?? null);
}

function heatOf(check: CoreCheck): number {
  return check.by === "look" ? 0 : check.coreC;
}
