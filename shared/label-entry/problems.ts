import type { Allergen } from "../food/types.ts";

/** The boxes of a typed label, by the name of the option that they are typed into. */
export type LabelField =
  | "protein"
  | "fat"
  | "carbohydrate"
  | "saturates"
  | "fibre"
  | "sugars"
  | "salt"
  | "alcohol";

/** What of a typed label cannot be read. */
export type LabelProblem =
  | { readonly code: "per not understood"; readonly text: string }
  | { readonly code: "per without grams or millilitres"; readonly text: string }
  | { readonly code: "per out of range"; readonly least: number; readonly most: number }
  | { readonly code: "energy not understood"; readonly text: string }
  | { readonly code: "energy without unit"; readonly text: string }
  | { readonly code: "figure not understood"; readonly field: LabelField; readonly text: string }
  | { readonly code: "figure below zero"; readonly field: LabelField; readonly text: string }
  | { readonly code: "salt or sodium"; readonly text: string }
  | { readonly code: "alcohol needs density" }
  | { readonly code: "density not understood"; readonly text: string }
  | { readonly code: "density impossible"; readonly gPerMl: number; readonly most: number }
  | { readonly code: "density needed" }
  | { readonly code: "one not understood"; readonly text: string }
  | { readonly code: "allergen not known"; readonly text: string }
  | {
      readonly code: "allergen could be several";
      readonly text: string;
      readonly choices: readonly Allergen[];
    }
  | { readonly code: "none beside others" };
