import type { NumberProblem } from "../words/problems.ts";

/** What can be wrong with an amount as typed. */
export type AmountProblem =
  | NumberProblem
  | { readonly code: "amount is zero" }
  | { readonly code: "amount too big"; readonly maxG: number };
