import type { CauseId, GroupId, MemberId, RevisionId } from "../../shared/ids.ts";
import type { Instant } from "../../shared/time.ts";

/** A part of a recipe that keeps longer on the coach's word than the published chart says. */
export interface ConfirmedPart {
  readonly part: string;
  readonly coachDays: number;
  readonly chartDays: number;
  /** The chart's row and its source, as shown to the coach. */
  readonly source: string;
}

/** A coach's word for one revision: given, or taken back. Kept for ever as it was. */
export interface KeepingWord {
  readonly revisionId: RevisionId;
  /** 1, 2, 3, … of its revision; the last one stands. */
  readonly position: number;
  readonly kind: "given" | "taken back";
  readonly parts: readonly ConfirmedPart[];
  /** Null when they have left since. */
  readonly by: { readonly id: MemberId; readonly name: string } | null;
  readonly at: Instant;
}

/** The standing word on a revision: who took the responsibility, and when. */
export interface StandingWord {
  readonly by: string | null;
  readonly at: Instant;
}

export interface KeepingWords {
  /** Every word on a revision of this group, oldest first. */
  list(groupId: GroupId, revisionId: RevisionId): Promise<readonly KeepingWord[]>;
  /**
   * Adds a word after the last. "already" when this cause was written before; "moved on" when another
   * stands in its place by now, or the revision is not of this group: nothing written.
   */
  add(word: {
    readonly id: string;
    readonly groupId: GroupId;
    readonly revisionId: RevisionId;
    readonly position: number;
    readonly causeId: CauseId;
    readonly kind: KeepingWord["kind"];
    readonly parts: readonly ConfirmedPart[];
    readonly by: MemberId;
    readonly at: Instant;
  }): Promise<"recorded" | "already" | "moved on">;
}
