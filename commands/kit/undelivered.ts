import type { GroupId, MemberId, ReminderId } from "../../shared/ids.ts";
import type { ReminderKind, ReminderRow } from "../../shared/reminder/types.ts";
import type { Instant } from "../../shared/time.ts";

/** A reminder that reached nobody, as a coach may see it: nothing of the food. */
export interface UndeliveredReminder {
  readonly memberId: MemberId;
  readonly memberName: string;
  /** Null when the record of it cannot be read. */
  readonly kind: ReminderKind | null;
  readonly dueAt: Instant;
  /** As the delivery noted it; codes, not words for people. */
  readonly reason: string;
  /** The member has been told of it at a command since. */
  readonly isToldSince: boolean;
}

/** Reminders that failed for good. */
export interface Undelivered {
  /** Of a group's members, due since then: how many, and the newest, at most `limit`. */
  ofGroup(
    groupId: GroupId,
    since: Instant,
    limit: number,
  ): Promise<{ readonly total: number; readonly newest: readonly UndeliveredReminder[] }>;
  /** A member's own, due since then, of which they have not been told; the oldest first. */
  untold(memberId: MemberId, since: Instant, limit: number): Promise<readonly ReminderRow[]>;
  markTold(ids: readonly ReminderId[]): Promise<void>;
}
