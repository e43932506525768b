import { dryFoodOf } from "../cooking/dry-foods.ts";
import { isWater, waterShare } from "../cooking/liquids.ts";
import type { FoodBook } from "../food/book.ts";
import { type CoreCheck, coreChecks } from "./core-check.ts";
import type { ScaledLine } from "./scale.ts";
import { type StrongKind, strongKind } from "./seasoning.ts";
import { OVEN_TRAY, ovenKind, type Tray, type TrayLoad, trayLoad } from "./tray.ts";
import type { Recipe } from "./types.ts";

/** What a cook should know about a scaled recipe; wording in `commands/kit`. */
export type ScaleCaution =
  /** Of the seasonings start at three quarters of what is written, then taste; of the others a little less. */
  | {
      readonly code: "hold back";
      readonly seasonings: readonly string[];
      readonly thickeners: readonly string[];
      readonly leavenings: readonly string[];
    }
  /** A bigger pot loses less water a litre. */
  | { readonly code: "less boils away"; readonly liquids: readonly string[] }
  /** In one layer it takes so many trays; crowded food steams. */
  | { readonly code: "oven loads"; readonly load: TrayLoad }
  /** What is baked in a dish takes as long only at the same depth: area grows with the factor. */
  | { readonly code: "same depth"; readonly factor: number }
  /** Oven and resting times stay as written; what is checked instead. */
  | { readonly code: "times do not scale"; readonly checks: readonly CoreCheck[] };

/** Beyond four times the recipe. Common practice, no published source: USDA and Army recipes scale salt linearly. */
const HOLD_BACK_BEYOND = 4;
/** A pot twice as big in the same shape shows a quarter less surface a litre. Common practice, no published source. */
const BIG_POT_BEYOND = 2;
/** What simmers for less loses little anyway. Our own bound. */
const SIMMER_MINUTES = 10;

interface Shown {
  readonly recipe: Recipe;
  readonly lines: readonly ScaledLine[];
  readonly foods: FoodBook;
  readonly factor: number;
  /** The member's own tray; null for an oven's. */
  readonly tray: Tray | null;
}

/** The cautions of a scaled recipe, only where they apply, what to do first in front. */
export function scaleCautions(shown: Shown): readonly ScaleCaution[] {
  const { recipe, lines, foods, factor } = shown;
  const isTimed = recipe.steps.some(({ minutes }) => minutes.length > 0);
  return [
    ...(factor > HOLD_BACK_BEYOND ? holdBack(lines) : []),
    ...(factor > BIG_POT_BEYOND ? lessBoilsAway(lines, foods) : []),
    ...inTheOven(shown),
    ...(factor !== 1 && isTimed
      ? [{ code: "times do not scale", checks: coreChecks(lines, foods) } as const]
      : []),
  ];
}

function holdBack(lines: readonly ScaledLine[]): readonly ScaleCaution[] {
  const totalG = lines.reduce((sum, { grams }) => sum + (grams ?? 0), 0);
  const found: Record<StrongKind, Set<string>> = {
    seasoning: new Set(),
    thickener: new Set(),
    leavening: new Set(),
  };
  for (const { choice, cooking, grams } of lines) {
    // To taste is to taste at every size.
    if (choice.amount === null) continue;
    const share = grams === null || totalG === 0 ? null : grams / totalG;
    const kind = strongKind(choice.foodText, share, cooking.wet);
    if (kind !== null) found[kind].add(choice.foodText);
  }
  const [seasonings, thickeners, leavenings] = [
    [...found.seasoning],
    [...found.thickener],
    [...found.leavening],
  ];
  return seasonings.length + thickeners.length + leavenings.length === 0
    ? []
    : [{ code: "hold back", seasonings, thickeners, leavenings }];
}

/** Thin liquids that simmer in sight; not where dry foods take them up. */
function lessBoilsAway(lines: readonly ScaledLine[], foods: FoodBook): readonly ScaleCaution[] {
  const byKey = new Map(lines.map((line) => [line.key, line]));
  const foodOf = ({ choice }: ScaledLine) =>
    choice.foodId === null ? null : foods.byId(choice.foodId);
  const isTakenUp = ({ cooking }: ScaledLine) =>
    [...cooking.pot].some((key) => {
      const other = byKey.get(key);
      const food = other === undefined ? null : foodOf(other);
      return food !== null && dryFoodOf(food) !== null;
    });
  const liquids = lines.filter((line) => {
    const food = foodOf(line);
    const { method, drained, untilAbsorbed, minutes } = line.cooking;
    const simmers = (method === "braise" || method === "boil") && minutes >= SIMMER_MINUTES;
    if (food === null || !simmers || drained || untilAbsorbed) return false;
    const isThin = isWater(food) || (waterShare(food) > 0.85 && !/tomato|cream/iu.test(food.name));
    return isThin && !isTakenUp(line);
  });
  const names = [...new Set(liquids.map(({ choice }) => choice.foodText))];
  return names.length === 0 ? [] : [{ code: "less boils away", liquids: names }];
}

function inTheOven({ recipe, lines, foods, factor, tray }: Shown): readonly ScaleCaution[] {
  const load = trayLoad(lines, foods, tray ?? OVEN_TRAY);
  const kind = load === null ? null : ovenKind(recipe);
  if (load === null || kind === null) return [];
  if (kind === "dish") return factor === 1 ? [] : [{ code: "same depth", factor }];
  // As written the coach's own trays did; more of it, or another tray, is another matter.
  const isMore = factor > 1 && load.trays > 1;
  return isMore || tray !== null ? [{ code: "oven loads", load }] : [];
}
