import type { BatchId, CauseId, ChangeId, LotId, MemberId, RevisionId } from "../ids.ts";
import type { KeepingTime } from "../keeping/types.ts";
import type { NutrientSums } from "../nutrition/types.ts";
import type { Instant, PlainDate } from "../time.ts";

export type Place = "fridge" | "freezer" | "thawing";

/** One cooking of a revision by a member, with everything its dates and labels need as of that day. */
export interface Batch {
  readonly id: BatchId;
  readonly memberId: MemberId;
  readonly revisionId: RevisionId;
  readonly title: string;
  readonly portionWord: string;
  readonly portionsCooked: number;
  /** End of cooking. */
  readonly cookedAt: Instant;
  /** The member's calendar date at the end of cooking. */
  readonly cookedOn: PlainDate;
  /** Cooked weight of the whole from the member's scale, grams; null when not weighed. */
  readonly cookedWeightG: number | null;
  /** Best knowledge of one portion's mass, grams (weighed, stated or raw sum): decides the thaw lead. */
  readonly portionG: number;
  readonly keeping: KeepingTime;
  readonly perPortion: NutrientSums;
  /** What it was made with of the revision; not there for what was logged before this was kept. */
  readonly asMade?: AsMade | undefined;
}

/** Which way of a recipe was cooked. */
export interface AsMade {
  /** Components and foods left out, by name. */
  readonly without: readonly string[];
  /** Line key -> which of its choices was taken: 1 the first swap, and so on. */
  readonly swaps: Readonly<Record<string, number>>;
}

/** Portions of one batch that share a place and dates. */
export interface Lot {
  readonly id: LotId;
  readonly batchId: BatchId;
  readonly place: Place;
  /** A multiple of one half. */
  readonly portions: number;
  /** The member's calendar date on which these portions came to this place. */
  readonly since: PlainDate;
  readonly sinceAt: Instant;
  /** Calendar days of fridge life already used in earlier stays in the fridge. */
  readonly usedDays: number;
}

export const MOVEMENT_KINDS = [
  "cooked",
  "froze",
  "set to thaw",
  "ate",
  "gave",
  "threw away",
  "corrected",
  "undone",
] as const;
export type MovementKind = (typeof MOVEMENT_KINDS)[number];

/** Why portions were thrown away. */
export const WASTE_REASONS = ["spoiled", "past its date", "did not like", "too much"] as const;
export type WasteReason = (typeof WASTE_REASONS)[number];

/**
 * An entry of the stock ledger. `from` and `to` null mean outside the stock. A "corrected" movement
 * comes from outside where more was counted than the ledger knew, and goes there where less was.
 */
export interface Movement {
  readonly kind: MovementKind;
  readonly batchId: BatchId;
  /** Above 0, a multiple of one half. */
  readonly portions: number;
  readonly from: LotId | null;
  readonly to: LotId | null;
  /** When it happened. */
  readonly at: Instant;
  /** The member's calendar date when it happened. */
  readonly on: PlainDate;
  /** For "undone": the kind it takes back. Otherwise null. */
  readonly undoes: Exclude<MovementKind, "undone"> | null;
  /** Only of what was thrown away, and of its undoing, where it was said. */
  readonly reason: WasteReason | null;
}

/** One write to a member's stock: its movements, all or none, with what caused it. */
export interface StockChange {
  readonly id: ChangeId;
  readonly memberId: MemberId;
  /** The stock's version after this change: 1, 2, 3, … without a gap. */
  readonly version: number;
  readonly causeId: CauseId;
  readonly recordedAt: Instant;
  readonly movements: readonly Movement[];
  /** For an undo: the change it takes back. */
  readonly undoes: ChangeId | null;
}

/** What is in a member's fridge and freezer now. */
export interface Stock {
  readonly memberId: MemberId;
  readonly version: number;
  readonly batches: readonly Batch[];
  /** Lots that are not empty. */
  readonly lots: readonly Lot[];
}
