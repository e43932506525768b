import type { Allergen } from "../food/types.ts";

/** People at a member's table for whom the published cautions are stricter (FDA and CDC consumer advice). */
export const VULNERABLE = ["pregnant", "under five", "over 65", "weak immune system"] as const;
export type Vulnerable = (typeof VULNERABLE)[number];

/** What a member has told about who eats, once, for every card and plan. Nothing of it is the coach's to see. */
export interface Profile {
  /** What somebody at the table must not eat. */
  readonly allergens: readonly Allergen[];
  readonly vulnerable: readonly Vulnerable[];
  /** The member lets the coach see and set their targets. */
  readonly coachMaySetTargets: boolean;
}
