import type { LotId, MemberId, RecipeId, ReminderId } from "../ids.ts";
import type { Place } from "../stock/types.ts";
import type { Instant, PlainTime } from "../time.ts";

export const REMINDER_KINDS = [
  "thaw tonight",
  "last good day",
  "discard today",
  "freeze the surplus",
  "into the fridge",
  "freezer quality",
  "recipe changed",
  "recipe withdrawn",
] as const;
export type ReminderKind = (typeof REMINDER_KINDS)[number];

/** What a member chose: when, where and how to be told. */
export interface ReminderChoice {
  readonly zone: string;
  readonly morning: PlainTime;
  readonly evening: PlainTime;
  readonly quietFrom: PlainTime;
  readonly quietUntil: PlainTime;
  /**
   * All but safety reminders are held until then; null when never paused. In the past once a pause has
   * ended: what it held fell due at its end.
   */
  readonly pausedUntil: Instant | null;
  /** While paused, safety reminders are held as well: the member said so. */
  readonly pausesSafety: boolean;
}

/** A reminder that follows from the stock: rewritten whenever the stock or the meals change. */
export interface DerivedReminder {
  readonly kind: ReminderKind;
  /** Unique per member: the same fact is reminded of once. */
  readonly key: string;
  readonly dueAt: Instant;
  /** After this it no longer helps: expired, not sent. */
  readonly helpsUntil: Instant;
  readonly about: ReminderAbout;
}

/** What it speaks of; enough to word it and to offer the right button. Kept as JSON, parsed with zod. */
export interface ReminderAbout {
  /** Null where it is about a recipe and not about portions. */
  readonly lotId: LotId | null;
  readonly title: string;
  readonly portions: number;
  /** ISO date it must be gone by, or is best before. */
  readonly date: string | null;
  /** The meal a thaw is for, and its ISO instant. */
  readonly meal: string | null;
  readonly mealAt: string | null;
  /** What is new of a recipe; null or not there where it is about portions. */
  readonly news?: RecipeNews | null | undefined;
}

/** A new revision of a recipe or its withdrawal, in words as of then. */
export interface RecipeNews {
  readonly recipeId: RecipeId;
  /** Number of the revision that is new, or that was the last. */
  readonly revision: number;
  /** What may hurt who goes by the revision before; said first. */
  readonly grave: readonly string[];
  /** What changed; empty for a withdrawal. */
  readonly changes: readonly string[];
}

export const REMINDER_STATES = ["scheduled", "claimed", "sent", "failed", "expired"] as const;
export type ReminderState = (typeof REMINDER_STATES)[number];

/** A reminder as it is kept. */
export interface ReminderRow extends DerivedReminder {
  readonly id: ReminderId;
  readonly memberId: MemberId;
  readonly state: ReminderState;
  readonly attempts: number;
  /** The delivery it was claimed for: one message, one nonce. Null until claimed. */
  readonly nonce: string | null;
  /** Why the last try came to nothing, or why it ended so; null where there is nothing to say. */
  readonly reason: string | null;
}

/** A reminder that is still true, as it is true now, and where its portions are; null when nobody knows. */
export interface CurrentReminder {
  readonly row: ReminderRow;
  readonly place: Place | null;
}
