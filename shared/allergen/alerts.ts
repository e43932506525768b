import type { Allergen } from "../food/types.ts";
import type { AllergenIn, AllergensFound } from "./find.ts";

/** In a food taken; perhaps hidden in one; the same of swaps that were not taken. */
type Kind = "contains" | "may hide" | "in a swap" | "swap may hide";

/** Something that may hurt a member who avoids an allergen. Wordless: `commands/` says it. */
export type AllergyAlert =
  | {
      readonly kind: Kind;
      readonly allergens: readonly Allergen[];
      readonly foods: readonly string[];
    }
  /** Foods, or swaps not taken, of which nobody knows: they may hold anything that is avoided. */
  | { readonly kind: "not known" | "swap not known"; readonly foods: readonly string[] };

/**
 * What a member who avoids these must be told, the gravest first; empty for one who avoids nothing. Who
 * avoids gluten is told of wheat, because whatever contains wheat is found to contain gluten.
 */
export function alertsFor(
  avoided: readonly Allergen[],
  found: AllergensFound,
): readonly AllergyAlert[] {
  if (avoided.length === 0) return [];
  const bad = (list: readonly AllergenIn[]) =>
    list.filter(({ allergen }) => avoided.includes(allergen));
  const contains = bad(found.contains);
  const held = new Set(contains.map(({ allergen }) => allergen));
  const onlySwaps = (list: readonly AllergenIn[]) =>
    bad(list).filter(({ allergen }) => !held.has(allergen));
  return [
    ...grouped("contains", contains),
    ...grouped("may hide", bad(found.mayHide)),
    ...unknown("not known", found.unknown),
    ...grouped("in a swap", onlySwaps(found.inSwaps.contains)),
    ...grouped("swap may hide", onlySwaps(found.inSwaps.mayHide)),
    ...unknown(
      "swap not known",
      found.inSwaps.unknown.filter((food) => !found.unknown.includes(food)),
    ),
  ];
}

/** Allergens that the very same foods bring, together: wheat and gluten, mostly. */
export function groupByFoods(
  list: readonly AllergenIn[],
): readonly { readonly allergens: readonly Allergen[]; readonly foods: readonly string[] }[] {
  const groups = new Map<string, { allergens: Allergen[]; foods: readonly string[] }>();
  for (const { allergen, foods } of list) {
    const key = JSON.stringify(foods);
    const group = groups.get(key) ?? { allergens: [], foods };
    group.allergens.push(allergen);
    groups.set(key, group);
  }
  return [...groups.values()];
}

function grouped(kind: Kind, list: readonly AllergenIn[]): readonly AllergyAlert[] {
  return groupByFoods(list).map((group) => ({ kind, ...group }));
}

function unknown(
  kind: "not known" | "swap not known",
  foods: readonly string[],
): readonly AllergyAlert[] {
  return foods.length === 0 ? [] : [{ kind, foods }];
}
