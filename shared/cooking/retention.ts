import type { Food } from "../food/types.ts";
import { dryFoodOf } from "./dry-foods.ts";
import { fleshKind } from "./meat-kind.ts";
import type { HowCooked } from "./types.ts";

/** Energy of alcohol, kcal per gram: the factor that USDA SR28 (2015) uses. */
export const ALCOHOL_KCAL_PER_G = 6.93;

/**
 * Per cent of the alcohol left when it is stirred in and baked or simmered for so many minutes: USDA Table
 * of Nutrient Retention Factors, Release 6 (2007), codes 5002 and 5004 to 5009. The last row (150 minutes) is
 * from memory; the others were read in the table.
 */
const ALCOHOL_KEPT: readonly (readonly [minutes: number, percent: number])[] = [
  [0, 85],
  [15, 40],
  [30, 35],
  [60, 25],
  [90, 20],
  [120, 10],
  [150, 5],
];

/**
 * Share of the alcohol that is left, 0 to 1. Between two published times the shorter one counts, so that
 * the energy is never put too low; what no step heats keeps all of it.
 */
export function alcoholKept(how: HowCooked): number {
  if (how.method === null) return 1;
  const rows = ALCOHOL_KEPT.filter(([minutes]) => minutes <= how.minutes);
  return (rows.at(-1)?.[1] ?? 85) / 100;
}

/** Per cent of sodium left after simmering, the liquid not eaten: codes 0855, 1851, 0653, 1055, 1353, 2551, 2761. */
const FLESH_SODIUM_KEPT = {
  chicken: 70,
  turkey: 70,
  beef: 55,
  lamb: 65,
  pork: 70,
  fish: 90,
  shellfish: 85,
} as const;

/** Boiled and drained: codes 0381, 0431, 0541. Grains other than rice and pasta have none. */
const DRY_SODIUM_KEPT = { pasta: 50, rice: 95, pulse: 90 } as const;

/** Greens, roots, potatoes and other vegetables, boiled and drained: codes 3005, 3455, 3308, 3775, all 95. */
const VEGETABLE_SODIUM_KEPT = 95;

/**
 * Share of a raw food's own sodium that is left when it is boiled and drained, 0 to 1: USDA Table of
 * Nutrient Retention Factors, Release 6 (2007). 1 where nothing is poured off or nothing is published: of the
 * nutrients we count only sodium and alcohol have factors.
 */
export function sodiumKept(food: Food, how: HowCooked): number {
  if (!how.drained || food.state !== "raw") return 1;
  const dry = dryFoodOf(food);
  if (dry !== null) return (percentOf(DRY_SODIUM_KEPT, dry.kind) ?? 100) / 100;
  if (food.keepingClass === "vegetable" || food.keepingClass === "salad-leaf")
    return VEGETABLE_SODIUM_KEPT / 100;
  const kind = fleshKind(food);
  return kind === null ? 1 : (percentOf(FLESH_SODIUM_KEPT, kind) ?? 100) / 100;
}

function percentOf(table: Readonly<Record<string, number>>, key: string): number | null {
  return Object.hasOwn(table, key) ? (table[key] ?? null) : null;
}
