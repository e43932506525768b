import type { MemberId, TargetId } from "../ids.ts";
import type { NutrientKey } from "../nutrition/types.ts";
import type { Instant, PlainDate } from "../time.ts";

export const TARGET_KEYS = [
  "energyKcal",
  "proteinG",
  "fatG",
  "carbohydrateG",
  "fibreG",
] as const satisfies readonly NutrientKey[];
export type TargetKey = (typeof TARGET_KEYS)[number];

/**
 * A day's figures: those a member has a target for. Carbohydrate is by difference and includes fibre, as
 * in the food table.
 */
export type TargetFigures = Readonly<Partial<Record<TargetKey, number>>>;

/**
 * One decision about targets. It holds for its weekdays from its date on, until a later decision for the
 * same weekday; without any figure it ends what held before. Decisions are never changed, only followed.
 */
export interface TargetRule {
  readonly id: TargetId;
  readonly memberId: MemberId;
  /** In the member's zone. */
  readonly from: PlainDate;
  /** 1 Monday to 7 Sunday, ascending; at least one. */
  readonly weekdays: readonly number[];
  readonly figures: TargetFigures;
  /** The member, or the coach with the member's consent; null when they have left since. */
  readonly setBy: MemberId | null;
  readonly setAt: Instant;
}
