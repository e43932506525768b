import type { IndexedFood, IndexedName } from "./food-index.ts";
import type { NameWords } from "./name-words.ts";
import { type CookMethod, FAT_WORDS, type FoodState } from "./word-lists.ts";

/** Below this a match is a guess: better an unmeasured line than a wrong figure. */
export const SURE_ENOUGH = 0.67;
/** What makes a match unsure, however well its words fit. */
const NOT_THIS = 0.6;

/** How well the words that were asked for fit those of a food, by the word that the food has. */
export type Matched = ReadonlyMap<string, number>;

/**
 * How surely a food is meant, about 0 to 1: how well its best name fits, less what speaks against it.
 * `tells` is how much a word tells: rare words tell more. `own` is for foods that a group typed in.
 */
export function rate(
  asked: NameWords,
  entry: IndexedFood,
  matched: Matched,
  decisive: readonly Matched[],
  tells: (word: string) => number,
  own: boolean,
): number {
  const fits = { ...asked, gaveFat: givesFatOf(asked, entry) };
  const best = Math.max(
    ...entry.names.map(
      (name) => rateName(fits, name, matched, decisive, tells) * unsaidFactor(asked, entry, name),
    ),
  );
  return (
    Math.max(best, own ? ownFit(matched, decisive) : 0) *
    nounFactor(asked, entry, decisive) *
    stateFactor(asked, entry) *
    methodFactor(asked.methods, entry) *
    levelFactor(asked, entry) *
    (entry.words.has("frozen") && matched.has("frozen") ? 1.04 : 1)
  );
}

/** For a state that the name has and the cook did not say. Raw and fresh are meant when nothing is. */
function unsaidFactor({ states }: NameWords, entry: IndexedFood, name: IndexedName): number {
  const isSaid = [...name.states].every((state) => states.has(state));
  // A cooked food is at most an afterthought to its raw form, unless it has a name that says neither.
  if (entry.food.state === "cooked" && !states.has("cooked") && !isSaid) {
    return entry.hasRaw && !states.has("fresh") ? 0.9 : NOT_THIS;
  }
  // Pulses and grains are bought dry; "plums" are no prunes.
  const driedToEat = entry.food.state === "ready" && name.states.has("dried");
  return driedToEat && !states.has("dried") ? NOT_THIS : 1;
}

/** Enough to be found, too little to come before a food of the table that fits. */
const OWN_FIT = 0.8;

/**
 * A pack's long name is seldom said in full: two of its words, with nothing that is not its own, will
 * do where the table has nothing better.
 */
function ownFit(matched: Matched, decisive: readonly Matched[]): number {
  return decisive.length < 2 ? 0 : OWN_FIT * Math.min(1, ...matched.values());
}

/** Share of what the name's head tells that was said, then corrected by everything else that was. */
function rateName(
  asked: NameWords & { readonly gaveFat: boolean },
  name: IndexedName,
  matched: Matched,
  decisive: readonly Matched[],
  tells: (word: string) => number,
): number {
  let all = 0;
  let said = 0;
  for (const word of name.head) {
    all += tells(word);
    const quality = matched.get(word) ?? (asked.gaveFat && FAT_WORDS.has(word) ? 1 : 0);
    said += tells(word) * quality;
  }
  if (said === 0 || matched.size === 0) return 0;
  let tailSaid = 0;
  for (const word of name.tail) {
    const quality = matched.get(word);
    if (quality === undefined) continue;
    tailSaid += 1;
    all += tells(word);
    said += tells(word) * quality;
  }
  // Words that need not be said count for the food that has them: "beef mince" is more than "beef".
  const alsoSaid = asked.words.filter(({ word, manner }) => manner && name.head.has(word)).length;
  const told = 0.03 * Math.min(4, alsoSaid + tailSaid) - 0.005 * (name.tail.size - tailSaid);
  const elsewhere = decisive.filter(
    (near) => ![...near.keys()].some((word) => name.head.has(word) || name.tail.has(word)),
  ).length;
  return (said / all + told) * 0.96 ** elsewhere;
}

/** "Rice pudding" is no "pudding rice": what is named must be what the food is. */
function nounFactor(asked: NameWords, entry: IndexedFood, decisive: readonly Matched[]): number {
  if (asked.nouns.size === 0) return 1;
  const isNoun = (word: string) => entry.nouns.has(word);
  if ([...asked.nouns].some(isNoun)) return 1;
  // A noun with a slip is among the near words; a noun of cut or size need not be the food's.
  const slipped = asked.words.some(
    ({ word, manner }) => asked.nouns.has(word) && (manner || !entry.words.has(word)),
  );
  return slipped && decisive.some((near) => [...near.keys()].some(isNoun)) ? 1 : NOT_THIS;
}

/** How far a food in another state than the one named may stand in for it. */
function stateFactor({ states: asked, methods }: NameWords, entry: IndexedFood): number {
  const missing = [...asked].filter((state) => !entry.states.has(state));
  // Fresh is meant when nothing is said, if only just: thyme and tuna are bought preserved.
  const unasked = entry.preserved && !asked.has("dried") && !asked.has("canned");
  return missing.reduce(
    (product, state) => product * standIn(state, methods, entry),
    (unasked ? 0.97 : 1) * (asked.has("fresh") && isPreserved(entry) ? 0.5 : 1),
  );
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
function methodFactor(asked: ReadonlySet<CookMethod>, entry: IndexedFood): number {
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

function levelFactor(asked: NameWords, entry: IndexedFood): number {
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
function givesFatOf(asked: NameWords, entry: IndexedFood): boolean {
  const { fatPct } = asked.levels;
  return fatPct !== null && fatPct === entry.levels.fatPct;
}
