export type EnergyUnit = "kcal" | "kJ";

/**
 * What looks like a slip of the fingers. "impossible" cannot stand on any pack; "doubtful" can, and
 * is kept when the coach says so.
 */
export type LabelFinding = { readonly severity: "impossible" | "doubtful" } & (
  | { readonly code: "energies swapped" }
  | { readonly code: "energies apart"; readonly kcal: number; readonly kj: number }
  | { readonly code: "energy above pure fat"; readonly kcalPer100g: number }
  /** The other unit would fit the macros. */
  | {
      readonly code: "energy in the other unit";
      readonly stated: number;
      readonly unit: EnergyUnit;
      readonly other: EnergyUnit;
    }
  | {
      readonly code: "energy off the macros";
      readonly stated: number;
      readonly from: number;
      readonly to: number;
      readonly unit: EnergyUnit;
      readonly side: "above" | "below";
    }
  | { readonly code: "more than the mass"; readonly sumG: number; readonly basisG: number }
  | { readonly code: "saturates above fat" }
  | { readonly code: "sugars above carbohydrate" }
  | { readonly code: "fibre above carbohydrate" }
  | { readonly code: "sugars and fibre above carbohydrate" }
  | {
      readonly code: "salt and sodium apart";
      readonly saltOfSodiumG: number;
      readonly saltG: number;
    }
  | { readonly code: "more sodium than salt has" }
  | { readonly code: "sodium below a milligram" }
  | {
      readonly code: "much saltier than its like";
      readonly saltPer100g: number;
      readonly likePer100g: number;
    }
);
