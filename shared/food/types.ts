import type { FoodId } from "../ids.ts";
import type { Nutrients } from "../nutrition/types.ts";

/** The classes of food that the keeping chart (`shared/keeping/chart.ts`) has a row for. */
export const KEEPING_CLASSES = [
  "raw-poultry",
  "raw-meat",
  "raw-minced-meat",
  "raw-fish",
  "raw-shellfish",
  "cooked-meat-or-poultry",
  "cooked-fish",
  "cooked-grain",
  "cooked-pulses",
  "opened-can",
  "egg-raw",
  "egg-cooked",
  "milk",
  "soft-dairy",
  "hard-cheese",
  "mayonnaise",
  "vegetable",
  "salad-leaf",
  "fruit",
  "fresh-herb",
  "bread",
  "tofu",
  "shelf-stable",
] as const;
export type KeepingClass = (typeof KEEPING_CLASSES)[number];

/** US nine (FALCPA 2004, FASTER Act 2021) and EU fourteen (Regulation 1169/2011 Annex II) together. */
export const ALLERGENS = [
  "milk",
  "egg",
  "fish",
  "crustaceans",
  "molluscs",
  "tree nuts",
  "peanut",
  "wheat",
  "gluten",
  "soy",
  "sesame",
  "celery",
  "mustard",
  "sulphites",
  "lupin",
] as const;
export type Allergen = (typeof ALLERGENS)[number];

/** Where a food's figures come from: the published table, or a pack that the group's coach typed in. */
export const PACK_LABEL = "pack label";

/** One entry of the food table. Figures are for the edible part. */
export interface Food {
  readonly id: FoodId;
  /** Plain name as a cook says it, state last where it matters: "chicken thigh, skinless, raw". */
  readonly name: string;
  readonly otherNames: readonly string[];
  /** Where the figures come from: the table and its own number for the food. */
  readonly source: { readonly table: string; readonly number: string };
  readonly state: "raw" | "cooked" | "ready";
  readonly per100g: Nutrients;
  /** Water per 100 g, grams; null where the source has none (a pack label has not). */
  readonly waterG: number | null;
  /** Alcohol per 100 g, grams. It is in the energy (6.93 kcal/g) and in no other figure. */
  readonly alcoholG: number;
  /** Grams per millilitre, from the published spoon and cup weights; null where not known. */
  readonly densityGPerMl: number | null;
  /** The weight of one where the food comes whole ("egg", 50 g; "clove", 3 g); null where it does not. */
  readonly one: { readonly word: string; readonly grams: number } | null;
  /** Household measures as published ("cup, chopped", 160 g), edible grams of one of each. */
  readonly measures: readonly { readonly name: string; readonly grams: number }[];
  /** Inedible share of the food as bought, per cent. */
  readonly refusePct: number;
  /** What it is made of; null where nobody knows (a pack nobody has read): never taken for "free of". */
  readonly allergens: readonly Allergen[] | null;
  /** What foods of this kind may hide besides: the pack decides. */
  readonly mayHide: readonly Allergen[];
  readonly keepingClass: KeepingClass;
}
