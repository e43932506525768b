import type { Allergen } from "../food/types.ts";

/** One entry of a law's list: its own name, and which of our words it covers. */
export interface LawAllergen {
  readonly name: string;
  readonly covers: readonly Allergen[];
}

/**
 * United States: the nine major food allergens (Food Allergen Labeling and Consumer Protection Act of
 * 2004; sesame by the FASTER Act of 2021, in force since 1 January 2023).
 */
export const US_NINE: readonly LawAllergen[] = [
  { name: "milk", covers: ["milk"] },
  { name: "eggs", covers: ["egg"] },
  { name: "fish", covers: ["fish"] },
  { name: "crustacean shellfish", covers: ["crustaceans"] },
  { name: "tree nuts", covers: ["tree nuts"] },
  { name: "peanuts", covers: ["peanut"] },
  { name: "wheat", covers: ["wheat"] },
  { name: "soybeans", covers: ["soy"] },
  { name: "sesame", covers: ["sesame"] },
];

/** European Union: the fourteen of Regulation (EU) 1169/2011, Annex II, in its order. */
export const EU_FOURTEEN: readonly LawAllergen[] = [
  { name: "cereals containing gluten", covers: ["wheat", "gluten"] },
  { name: "crustaceans", covers: ["crustaceans"] },
  { name: "eggs", covers: ["egg"] },
  { name: "fish", covers: ["fish"] },
  { name: "peanuts", covers: ["peanut"] },
  { name: "soybeans", covers: ["soy"] },
  { name: "milk", covers: ["milk"] },
  { name: "nuts", covers: ["tree nuts"] },
  { name: "celery", covers: ["celery"] },
  { name: "mustard", covers: ["mustard"] },
  { name: "sesame", covers: ["sesame"] },
  { name: "sulphur dioxide and sulphites", covers: ["sulphites"] },
  { name: "lupin", covers: ["lupin"] },
  { name: "molluscs", covers: ["molluscs"] },
];
