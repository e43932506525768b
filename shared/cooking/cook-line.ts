import type { Food } from "../food/types.ts";
import type { DryFood } from "./dry-foods.ts";
import { waterShare } from "./liquids.ts";
import { fleshKind } from "./meat-kind.ts";
import { isMoist, meatYield } from "./meat-yield.ts";
import type { CookedLine, HeatMethod, HowCooked } from "./types.ts";
import { vegetableBalance } from "./vegetable-balance.ts";

/** One weighed line of a scaled recipe before cooking. */
export interface RawLine {
  readonly key: string;
  readonly foodText: string;
  /** Food and preparation as written: whether a mince is made into patties stands there. */
  readonly lineText: string;
  readonly food: Food | null;
  /** How it takes up water, for a dry food; else null. */
  readonly dry: DryFood | null;
  /** Written cooked although the table has it dry. */
  readonly isCooked: boolean;
  /** Grams that are eaten. */
  readonly grams: number;
  readonly how: HowCooked;
}

/** What a line that takes up no water weighs cooked. */
export function cookLine(line: RawLine, all: readonly RawLine[]): CookedLine {
  const { food, foodText, grams } = line;
  const same = { food: foodText, rawG: grams, cookedG: grams };
  const method = methodOf(line);
  if (method === null) return { ...same, code: "not heated" };
  // What is cooked already is only warmed.
  if (line.isCooked || (method === "cook" && food !== null && food.state !== "raw")) {
    return { ...same, code: "unchanged" };
  }
  if (food === null) return { ...same, code: "no factor" };
  if (fleshKind(food) !== null) return cookFlesh(line, food, method, all);
  // Steam takes as little out of a vegetable as boiling does; air fryers bake.
  const basis = vegetableBalance(food, AS_PUBLISHED[method] ?? method);
  if (basis !== null) {
    return { ...same, cookedG: grams * basis.factor, code: "dry matter", basis };
  }
  return { ...same, code: hasNothingToLose(food) ? "unchanged" : "no factor" };
}

const AS_PUBLISHED: Readonly<Partial<Record<HeatMethod, HeatMethod>>> = {
  steam: "boil",
  "air-fry": "roast",
};

/** Meat in a recipe that heats things is cooked even when no step names it; nothing else is. */
function methodOf({ how, food }: RawLine): HeatMethod | null {
  // "Cook the broccoli, drain".
  if (how.method === "cook" && how.drained) return "boil";
  if (how.method !== null) return how.method;
  return food !== null && fleshKind(food) !== null ? how.otherwise : null;
}

function cookFlesh(
  line: RawLine,
  food: Food,
  method: HeatMethod,
  all: readonly RawLine[],
): CookedLine {
  const same = { food: line.foodText, rawG: line.grams, cookedG: line.grams };
  if (isMoist(method) && isInLiquid(line, all)) return { ...same, code: "juices stay" };
  const basis = meatYield(food, line.lineText, method);
  return basis === null
    ? { ...same, code: "no factor" }
    : { ...same, cookedG: line.grams * basis.factor, code: "yield", basis };
}

/** In a liquid of the recipe that is not poured off: the published yields are of the meat alone. */
function isInLiquid({ how }: RawLine, all: readonly RawLine[]): boolean {
  if (how.drained) return false;
  return all.some(({ key, food }) => how.pot.has(key) && food !== null && waterShare(food) > 0);
}

/** Oil, seasoning, herbs, sugar, flour. */
function hasNothingToLose(food: Food): boolean {
  return food.keepingClass === "shelf-stable" || food.keepingClass === "fresh-herb";
}
