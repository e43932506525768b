import type { MealException, MealRule } from "../../shared/allocation/types.ts";
import type { MemberId, ReminderId } from "../../shared/ids.ts";
import type { Profile } from "../../shared/people/types.ts";
import type { DerivedReminder, ReminderChoice, ReminderRow } from "../../shared/reminder/types.ts";
import type { Instant } from "../../shared/time.ts";

/** The meal of one day that an exception is about. */
type MealOfDay = Pick<MealException, "mealId" | "date">;

/** What a member says of single meals, and of which they say nothing any more. */
export interface ExceptionChange {
  /** In place of what was said of the same meals. */
  readonly set: readonly MealException[];
  readonly clear: readonly MealOfDay[];
}

/** A rewrite of a member's reminders without a movement: new meals, new times, a new day. */
export interface Replan {
  readonly memberId: MemberId;
  /** The stock version the reminders were derived from. */
  readonly version: number;
  /**
   * `Member.planVersion` as it was before the times and meals were read that the reminders were derived
   * from. Left out only where they were derived from neither.
   */
  readonly planVersion?: number;
  /** The moment for which they were derived. */
  readonly now: Instant;
  readonly reminders: readonly DerivedReminder[];
  readonly replanAt: Instant | null;
  /** Written in the same transaction. */
  readonly choice?: Partial<ReminderChoice> & { readonly zoneIsOwn?: boolean };
  /** Who eats: it decides whose keeping times count, so it is written with the reminders that follow. */
  readonly profile?: Partial<Profile>;
  readonly deliverTo?: "direct message" | "channel";
  /** The member's whole new set of meal rules. */
  readonly meals?: readonly MealRule[];
  readonly exceptions?: ExceptionChange;
}

export interface Reminders {
  /** Scheduled and claimed reminders of a member, by due time, at most `limit`. */
  coming(memberId: MemberId, limit: number): Promise<readonly ReminderRow[]>;
  /**
   * Rewrites a member's scheduled reminders to the derived set, but for those that are due and so the
   * sweep's to tell, and applies the other changes with it.
   * "moved on" when the stock's version, or the plan's, is another by now: nothing written.
   */
  replan(plan: Replan): Promise<"recorded" | "moved on">;
  find(id: ReminderId): Promise<ReminderRow | null>;
  /** The reminders that were told in one message with this one, itself included; empty when none was. */
  together(id: ReminderId): Promise<readonly ReminderRow[]>;
  /**
   * Schedules reminders that were told to come again at that instant, under `againKey`: once each. One that
   * waits to come again already moves to the new instant; one that came again is left as it is. Returns
   * those that now wait for that instant.
   */
  again(rows: readonly ReminderRow[], at: Instant): Promise<readonly ReminderRow[]>;
}
