import { waterShare } from "../cooking/liquids.ts";
import type { FoodBook } from "../food/book.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import { excerpt } from "../words/problems.ts";
import { numberAtStart } from "../words/read-number.ts";
import type { ScaleProblem } from "./problems.ts";
import type { ScaledLine } from "./scale.ts";
import type { Recipe } from "./types.ts";

/** What food lies on in the oven, inside measures. */
export interface Tray {
  readonly widthCm: number;
  readonly depthCm: number;
}

/** An oven's own tray. Common practice, no published source: ovens of 60 cm hold about this much. */
export const OVEN_TRAY: Tray = { widthCm: 40, depthCm: 36 };

/**
 * Tray that a kilogram covers in one layer with air between the pieces. Common practice, no published source:
 * pieces of 2 to 3 cm with a third to a half of the tray left free.
 */
const AREA_CM2_PER_KG = { flesh: 1000, other: 1400 } as const;
/** Two trays brown at once in a fan oven, more steam each other. Common practice, no published source. */
export const TRAYS_AT_ONCE = 2;
const INCH_CM = 2.54;
const SIDE_CM = { min: 10, max: 100 } as const;

/** What roasts in one layer, and what that takes. */
export interface TrayLoad {
  readonly tray: Tray;
  readonly massG: number;
  readonly trays: number;
  /** How often the oven is filled. */
  readonly loads: number;
}

/** Reads "40x30 cm", "40 x 30", "18 × 13 in", "18x13 inches". Centimetres when no unit is said. */
export function readTray(text: string): Outcome<Tray, ScaleProblem> {
  const problem = fail({ code: "tray not understood" as const, text: excerpt(text) });
  const said = text.slice(0, 60).trim().toLowerCase().replace(/["″”]/gu, " in");
  const first = numberAtStart(said);
  const rest = first.ok ? first.value.rest.replace(/^ ?(?:cm|in|inch|inches)\b/u, "") : "";
  const by = /^ ?(?:x|×|\*|by) ?(?=\d)/u.exec(rest);
  if (!first.ok || by === null) return problem;
  const second = numberAtStart(rest.slice(by[0].length));
  const unit = second.ok ? /^ {0,2}(cm|in|inch|inches|mm)?$/u.exec(second.value.rest) : null;
  if (!second.ok || unit === null) return problem;
  const each =
    { cm: 1, mm: 0.1, in: INCH_CM, inch: INCH_CM, inches: INCH_CM }[unit[1] ?? "cm"] ?? 1;
  const [widthCm, depthCm] = [first.value.value * each, second.value.value * each];
  return isSide(widthCm) && isSide(depthCm) ? ok({ widthCm, depthCm }) : problem;
}

function isSide(cm: number): boolean {
  return cm >= SIDE_CM.min && cm <= SIDE_CM.max;
}

const OVEN_STEP = /\b(?:roast|bak(?:e|ing)|oven)/iu;
/** Food that stands deep in what it is baked in. */
const DEEP =
  /\b(?<!roasting )(?:dish|tin|pan|mould|mold|casserole|ramekin)s?\b|\b(?:loaf|pie|lasagn|gratin|cake|muffin|batter|cover)/iu;
const FLAT = /\b(?:trays?|sheets?|racks?|single layer|spread out|roast)\b|\broasting (?:tin|pan)/iu;

/** How a recipe goes into the oven: in one layer, standing in a dish, or not at all. */
export function ovenKind(recipe: Recipe): "one layer" | "dish" | null {
  const steps = recipe.steps.filter(({ text }) => OVEN_STEP.test(text)).map(({ text }) => text);
  if (steps.length === 0) return null;
  const said = steps.join(" ");
  return FLAT.test(said) && !DEEP.test(said) ? "one layer" : "dish";
}

/** Trays for what these lines roast, in one layer; null when nothing roasts. */
export function trayLoad(
  lines: readonly ScaledLine[],
  foods: FoodBook,
  tray: Tray,
): TrayLoad | null {
  let massG = 0;
  let areaCm2 = 0;
  for (const { choice, cooking, grams } of lines) {
    const food = choice.foodId === null ? null : foods.byId(choice.foodId);
    const isLiquid = food !== null && waterShare(food) > 0;
    if (cooking.method !== "roast" || grams === null || isLiquid) continue;
    const isFlesh = food !== null && /^raw-(?:poultry|meat|fish)$/u.test(food.keepingClass);
    massG += grams * choice.uptake;
    areaCm2 += (grams * choice.uptake * AREA_CM2_PER_KG[isFlesh ? "flesh" : "other"]) / 1000;
  }
  if (massG === 0) return null;
  // A hair over a whole tray is a whole tray.
  const trays = Math.max(1, Math.ceil(areaCm2 / (tray.widthCm * tray.depthCm) - 0.1));
  return { tray, massG, trays, loads: Math.ceil(trays / TRAYS_AT_ONCE) };
}
