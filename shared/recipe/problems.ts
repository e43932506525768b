import type { AmountProblem } from "../quantity/problems.ts";
import type { Unit } from "../quantity/types.ts";

/** Limits of a recipe's text: more is refused before any of it is read. */
export const RECIPE_LIMITS = {
  chars: 20_000,
  lines: 400,
  lineChars: 600,
  titleChars: 200,
  nameChars: 80,
  parts: 20,
  portions: 500,
  tags: 20,
} as const;

/** A fault in a recipe's text; `line` counts from 1. Wording in `commands/kit`. */
export type RecipeProblem =
  | { readonly code: "text empty" }
  | { readonly code: "text too long"; readonly chars: number; readonly max: number }
  | { readonly code: "too many lines"; readonly lines: number; readonly max: number }
  | { readonly code: "line too long"; readonly line: number; readonly max: number }
  | { readonly code: "title too long"; readonly line: number; readonly max: number }
  | { readonly code: "title missing"; readonly line: number; readonly text: string }
  | { readonly code: "yield missing" }
  | { readonly code: "yield not understood"; readonly line: number; readonly text: string }
  | { readonly code: "yield given twice"; readonly line: number }
  | { readonly code: "portions not whole"; readonly line: number; readonly asked: number }
  | {
      readonly code: "portions out of range";
      readonly line: number;
      readonly asked: number;
      readonly max: number;
    }
  | { readonly code: "no ingredients" }
  | { readonly code: "ingredient empty"; readonly line: number }
  | {
      readonly code: "amount wrong";
      readonly line: number;
      readonly text: string;
      readonly problem: AmountProblem;
    }
  | { readonly code: "swap without ingredient"; readonly line: number }
  | { readonly code: "part name too long"; readonly line: number; readonly max: number }
  | { readonly code: "part named twice"; readonly line: number; readonly name: string }
  | { readonly code: "part without ingredients"; readonly line: number; readonly name: string }
  | { readonly code: "too many parts"; readonly max: number }
  | { readonly code: "too many tags"; readonly line: number; readonly max: number }
  | {
      readonly code: "keeping of unknown part";
      readonly line: number;
      readonly name: string;
      readonly parts: readonly string[];
    }
  | { readonly code: "keeping out of range"; readonly line: number; readonly text: string };

/** Something a coach should look at, which does not stop the recipe. */
export type ReadRemark =
  | { readonly code: "food not found"; readonly line: number; readonly foodText: string }
  | {
      readonly code: "cannot be weighed";
      readonly line: number;
      readonly foodText: string;
      readonly unit: Unit;
    }
  | { readonly code: "no amount"; readonly line: number; readonly foodText: string }
  /** Written cooked and counted by the table's dry food with a published factor, or the other way round. */
  | {
      readonly code: "converted";
      readonly line: number;
      readonly foodText: string;
      readonly tableFood: string;
    }
  /** "100 g rice, cooked": weighed before it is cooked. */
  | { readonly code: "taken as dry"; readonly line: number; readonly foodText: string }
  | {
      readonly code: "oil uptake assumed";
      readonly line: number;
      readonly foodText: string;
      readonly percent: number;
    }
  /** Some of it is poured off, and nothing says how much is eaten. */
  | { readonly code: "counted in full"; readonly line: number; readonly foodText: string }
  /** Written as bought, and the table has no inedible share for it. */
  | { readonly code: "refuse not known"; readonly line: number; readonly foodText: string }
  /** A part makes more than is used, and nothing says how much is: all of it is counted. */
  | { readonly code: "used not clear"; readonly line: number; readonly name: string }
  | { readonly code: "taken as note"; readonly line: number; readonly text: string }
  | { readonly code: "keeping inside a step"; readonly line: number }
  /** "Serves 4-6": the lower is taken. */
  | {
      readonly code: "yield is a range";
      readonly line: number;
      readonly from: number;
      readonly to: number;
    }
  | { readonly code: "no steps" }
  | { readonly code: "no keeping stated" };

/** What can stand against scaling a recipe as asked. */
export type ScaleProblem =
  | { readonly code: "portions not whole"; readonly asked: number }
  | { readonly code: "portions out of range"; readonly asked: number; readonly max: number }
  | { readonly code: "no such part"; readonly text: string; readonly parts: readonly string[] }
  | {
      readonly code: "several parts match";
      readonly text: string;
      readonly parts: readonly string[];
    }
  | { readonly code: "nothing left" }
  | { readonly code: "no such swap"; readonly key: string; readonly choices: number }
  | { readonly code: "in hand not understood"; readonly text: string }
  | {
      readonly code: "food not in recipe";
      readonly text: string;
      readonly foods: readonly string[];
    }
  | {
      readonly code: "several foods match";
      readonly text: string;
      readonly foods: readonly string[];
    }
  | { readonly code: "food cannot be weighed"; readonly food: string }
  | {
      readonly code: "too little in hand";
      readonly grams: number;
      readonly onePortionG: number;
      readonly food: string;
    }
  | { readonly code: "too much in hand"; readonly portions: number; readonly max: number }
  | { readonly code: "too many in hand"; readonly max: number }
  | { readonly code: "boxes not understood"; readonly text: string }
  | {
      readonly code: "boxes out of range";
      readonly boxes: number;
      readonly boxG: number;
      readonly maxBoxes: number;
    }
  /** These lines have no weight, so nobody can tell what it all weighs. */
  | { readonly code: "whole cannot be weighed"; readonly foods: readonly string[] }
  | { readonly code: "too much to fill"; readonly portions: number; readonly max: number }
  | { readonly code: "tray not understood"; readonly text: string }
  | { readonly code: "no marinade" };
