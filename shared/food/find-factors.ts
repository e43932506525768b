import type { IndexedFood } from "./food-index.ts";
import type { NameWords } from "./name-words.ts";
import type { CookMethod, FoodState } from "./word-lists.ts";

/** What makes a match unsure, however well its words fit. */
export const NOT_THIS = 0.6;

/** How far a food in another state than the one named may stand in for it. */
export function stateFactor({ states: asked, methods }: NameWords, entry: IndexedFood): number {
  // Fresh is meant when nothing is said, if only just: thyme and tuna are bought preserved.
  const unasked = entry.preserved && !asked.has("dried") && !asked.has("canned");
  let factor = (unasked ? 0.97 : 1) * (asked.has("fresh") && isPreserved(entry) ? 0.5 : 1);
  for (const state of asked) {
    if (!entry.states.has(state)) factor *= standIn(state, methods, entry);
  }
  return factor;
}

function isPreserved({ states }: IndexedFood): boolean {
  return states.has("dried") || states.has("canned");
}

/** Below this share of water, per 100 g, a food is dry whether its name says so or not. */
const DRY_G = 15;

function standIn(state: FoodState, methods: ReadonlySet<CookMethod>, entry: IndexedFood): number {
  switch (state) {
    case "fresh":
      return 1;
    case "dried":
      return isDry(entry) ? 0.97 : 0.5;
    case "canned":
      if (entry.food.state === "ready") return 0.9;
      return entry.food.keepingClass === "cooked-pulses" ? 0.8 : NOT_THIS;
    case "cooked":
      // Roast beef in slices is sold so, and is no cooked form of another entry.
      if (isCookedSo(methods, entry)) return 1;
      // A nut loses little when it is roasted; anything with water in it becomes another food.
      return isDry(entry) && isNutOrSeed(entry) ? 0.95 : 0.5;
  }
}

function isDry({ food }: IndexedFood): boolean {
  return food.waterG !== null && food.waterG < DRY_G;
}

function isCookedSo(methods: ReadonlySet<CookMethod>, entry: IndexedFood): boolean {
  return [...methods].some((method) => entry.methods.has(method));
}

function isNutOrSeed({ food, nouns }: IndexedFood): boolean {
  const nuts = ["tree nuts", "peanut", "sesame"] as const;
  return (
    food.state === "ready" &&
    (nouns.has("seed") || nuts.some((nut) => food.allergens?.includes(nut)))
  );
}

/** Methods that leave different figures: what was fried is never what was boiled. */
export function methodFactor(asked: ReadonlySet<CookMethod>, entry: IndexedFood): number {
  if (asked.size === 0) return 1;
  if (isCookedSo(asked, entry)) return 1.02;
  const { food } = entry;
  if (food.state !== "cooked") return 1;
  const strict = asked.has("fried") || asked.has("scrambled");
  const other = entry.methods.has("fried") || entry.methods.has("scrambled");
  const meat = food.keepingClass === "cooked-meat-or-poultry";
  if ((strict && !meat) || other) return NOT_THIS;
  return entry.methods.size > 0 ? 0.95 : 1;
}

export function levelFactor(asked: NameWords, entry: IndexedFood): number {
  const { levels } = asked;
  const { waterG, per100g } = entry.food;
  const { fatG, sodiumMg } = per100g;
  const saltier = levels.lowSalt && !entry.levels.lowSalt && (sodiumMg ?? 0) > 200;
  const fatter =
    levels.fatPct === null &&
    levels.lowFat &&
    !entry.levels.lowFat &&
    fatG !== null &&
    fatG > 3 &&
    fatG < 90;
  const leaner = levels.fullFat && entry.levels.lowFat;
  const skin = differ(levels.skin, entry.levels.skin);
  const liquid = differ(levels.liquid, entry.levels.liquid);
  // Nothing with water in it can be ground: "ground ginger" is no fresh root.
  const ground = asked.words.some(({ word }) => word === "ground") && (waterG ?? 0) > 50;
  const other = saltier || fatter || leaner || skin || liquid || ground;
  return fatFactor(asked, entry) * (other ? NOT_THIS : 1);
}

function differ(asked: string | null, has: string | null): boolean {
  return asked !== null && has !== null && asked !== has;
}

const FAT_BY_PCT: ReadonlySet<string> = new Set([
  "milk",
  "soft-dairy",
  "hard-cheese",
  "raw-minced-meat",
]);

function fatFactor(asked: NameWords, entry: IndexedFood): number {
  const { fatPct, saysFat } = asked.levels;
  if (fatPct === null) return 1;
  const meansFat = saysFat || entry.levels.saysFat || FAT_BY_PCT.has(entry.food.keepingClass);
  const has = entry.levels.fatPct ?? entry.food.per100g.fatG;
  if (!meansFat || has === null) return 1;
  const none = fatPct === 0 && has > 1 ? NOT_THIS : 1;
  return none * Math.max(0, 1 - 0.04 * Math.abs(fatPct - has));
}

/** True when the per cent that was said is this food's own: "2% milk" names semi-skimmed milk. */
export function givesFatOf(asked: NameWords, entry: IndexedFood): boolean {
  const { fatPct } = asked.levels;
  return fatPct !== null && fatPct === entry.levels.fatPct;
}
