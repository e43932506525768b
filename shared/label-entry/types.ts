import type { Allergen } from "../food/types.ts";
import type { LabelStyle } from "../label/types.ts";

/**
 * A figure of a label for the amount that the label is for. A pack rounds, so the true figure lies
 * between `low` and `high`; "<0.5 g" lies between 0 and 0.5 and counts as half of it.
 */
export interface PackFigure {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** What the figures are for: so many grams or millilitres. */
export interface LabelBasis {
  readonly amount: number;
  readonly unit: "g" | "ml";
  readonly isServing: boolean;
  /** Half of the last step that a pack states its serving to; 0 for "per 100 g". */
  readonly halfStep: number;
  /** Where the serving is given by volume and by weight ("2 tbsp (32 g)"), grams per millilitre. */
  readonly densityGPerMl: number | null;
}

/** A label as read from what was typed, before anything is checked against anything. */
export interface Label {
  readonly style: LabelStyle;
  readonly basis: LabelBasis;
  /** Grams of the basis. */
  readonly basisG: number;
  readonly densityGPerMl: number | null;
  readonly energyKcal: PackFigure | null;
  readonly energyKj: PackFigure | null;
  readonly proteinG: PackFigure;
  readonly fatG: PackFigure;
  /** As the style has it: without fibre (EU) or with it (US). */
  readonly carbohydrateG: PackFigure;
  readonly saturatesG: PackFigure | null;
  readonly fibreG: PackFigure | null;
  readonly sugarsG: PackFigure | null;
  /** Salt where the pack states salt, sodium where it states sodium; both where both are typed. */
  readonly saltG: PackFigure | null;
  readonly sodiumMg: PackFigure | null;
  readonly alcoholG: number;
  readonly one: { readonly word: string; readonly grams: number } | null;
  /** Null where nobody has read them off the pack. */
  readonly allergens: readonly Allergen[] | null;
  /** Null where left out. */
  readonly mayHide: readonly Allergen[] | null;
}
