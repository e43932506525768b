import type { LotId, SlotRuleId } from "../ids.ts";
import type { Instant, PlainDate, PlainTime } from "../time.ts";

/** A weekly rule: on these weekdays (1 Monday … 7 Sunday) at this time so many portions are eaten from stock. */
export interface MealRule {
  readonly id: SlotRuleId;
  readonly name: string;
  readonly weekdays: readonly number[];
  readonly time: PlainTime;
  readonly portions: number;
}

/** One occurrence of a meal rule. */
export interface MealSlot {
  /** "<rule id>/<date>": stable, so that a reminder for it is made once. */
  readonly key: string;
  readonly name: string;
  readonly date: PlainDate;
  readonly at: Instant;
  readonly portions: number;
}

/** One portion given to one meal. */
export interface Serving {
  readonly slot: MealSlot;
  readonly lotId: LotId;
  /** "fridge" as it stands, "thawing" already on its way, "freezer" to be set to thaw at `thawAt`. */
  readonly from: "fridge" | "thawing" | "freezer";
  readonly thawAt: Instant | null;
  readonly why: ServingWhy;
}
export type ServingWhy = "freezes badly" | "first expired" | "oldest frozen";

/** Portions of a lot that no meal takes. */
export interface Surplus {
  readonly lotId: LotId;
  readonly portions: number;
  /** "freeze": freeze now. "spare": freezes badly, so eat, give or cook less. */
  readonly advice: "freeze" | "spare";
  readonly why: "no meal before its date" | "freezes badly and no meal before its date";
}

export interface Allocation {
  readonly servings: readonly Serving[];
  readonly surplus: readonly Surplus[];
}
