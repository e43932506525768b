/** A figure that the source gives, or `null` where the source has none. Missing is never zero. */
export type Nutrient = number | null;

export const NUTRIENT_KEYS = [
  "energyKcal",
  "proteinG",
  "fatG",
  "saturatedFatG",
  "carbohydrateG",
  "fibreG",
  "sugarsG",
  "sodiumMg",
] as const;
export type NutrientKey = (typeof NUTRIENT_KEYS)[number];

/** Figures per 100 g edible. Carbohydrate is by difference and includes fibre (US use). */
export type Nutrients = Readonly<Record<NutrientKey, Nutrient>>;

/** A sum over foods. `atLeast` when a part of it was missing or unmeasured: show it as "at least". */
export interface NutrientSum {
  readonly amount: number;
  readonly atLeast: boolean;
}
export type NutrientSums = Readonly<Record<NutrientKey, NutrientSum>>;
