import type { TargetKey } from "./types.ts";

/** What can be wrong with one figure as typed. */
export type FigureProblem =
  | { readonly code: "figure not understood"; readonly key: TargetKey; readonly text: string }
  | { readonly code: "figure is a range"; readonly key: TargetKey; readonly text: string }
  | {
      readonly code: "figure out of range";
      readonly key: TargetKey;
      readonly value: number;
      readonly min: number;
      readonly max: number;
    };

/** What can be wrong with the date a target is to hold from. */
export type FromProblem =
  | { readonly code: "date not understood"; readonly text: string }
  | { readonly code: "date has passed"; readonly date: string }
  | { readonly code: "date too far ahead"; readonly maxDays: number };

/** Where a day's energy comes from: its own figure, or protein, fat and carbohydrate together. */
export type EnergyOf = "energy" | "macronutrients";

/** What can be wrong with the figures of a day, those kept from before counted in. */
export type DayProblem =
  | { readonly code: "below every floor"; readonly energyKcal: number; readonly of: EnergyOf }
  | { readonly code: "below the floor of men"; readonly energyKcal: number; readonly of: EnergyOf }
  | { readonly code: "energy too high"; readonly energyKcal: number; readonly maxKcal: number }
  | {
      readonly code: "macronutrients above energy" | "macronutrients below energy";
      readonly macroKcal: number;
      readonly energyKcal: number;
    }
  | {
      readonly code: "fibre above carbohydrate";
      readonly fibreG: number;
      readonly carbohydrateG: number;
    };

/** A fault of a day with the weekdays that have it: 1 Monday to 7 Sunday, ascending. */
export type TargetProblem = DayProblem & { readonly weekdays: readonly number[] };
