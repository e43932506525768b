import type { BatchId, LotId, SlotRuleId } from "../ids.ts";
import type { Instant, PlainDate, PlainTime } from "../time.ts";

/** A weekly rule: on these weekdays (1 Monday … 7 Sunday) at this time so many portions are eaten from stock. */
export interface MealRule {
  readonly id: SlotRuleId;
  readonly name: string;
  readonly weekdays: readonly number[];
  readonly time: PlainTime;
  readonly portions: number;
}

/** What a member said of one meal of one day: it is left out, eaten elsewhere, or kept for a batch. */
export type MealException = {
  readonly mealId: SlotRuleId;
  readonly date: PlainDate;
} & (
  | { readonly kind: "skip" | "out" }
  /** Names the batch and not the lot: the portions may move meanwhile. */
  | { readonly kind: "pin"; readonly batchId: BatchId }
);

/** A member's meals: the weekly rules, and what they said of single ones. */
export interface MealWishes {
  readonly rules: readonly MealRule[];
  readonly exceptions: readonly MealException[];
}

/** One occurrence of a meal rule. */
export interface MealSlot {
  /** "<rule id>/<date>": stable, so that a reminder for it is made once. */
  readonly key: string;
  readonly name: string;
  readonly date: PlainDate;
  readonly at: Instant;
  /** Whole portions. */
  readonly portions: number;
}

/** A batch that a member keeps for a meal. */
export interface Pin {
  readonly slotKey: string;
  readonly batchId: BatchId;
}

/** One portion of a lot given to one meal, or half of one that another half of its batch makes whole. */
export interface Serving {
  readonly slot: MealSlot;
  readonly lotId: LotId;
  readonly portions: 1 | 0.5;
  /** "fridge" as it stands, "thawing" already on its way, "freezer" to be set to thaw at `thawAt`. */
  readonly from: "fridge" | "thawing" | "freezer";
  readonly thawAt: Instant | null;
  readonly why: ServingWhy;
}
export type ServingWhy = "freezes badly" | "first expired" | "oldest frozen" | "pinned";

/** Portions of a lot that are not eaten from the fridge as they stand. */
export interface Surplus {
  readonly lotId: LotId;
  readonly portions: number;
  /** "freeze": freeze now. "spare": freezes badly or is too little for a meal, so eat, give or cook less. */
  readonly advice: "freeze" | "spare";
  readonly why: SurplusWhy;
}
export type SurplusWhy =
  | "no meal before its date"
  | "freezes badly and no meal before its date"
  | "kept for a later meal"
  | "half a portion";

export interface Allocation {
  readonly servings: readonly Serving[];
  readonly surplus: readonly Surplus[];
}
