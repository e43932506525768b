import type { Group, Member } from "../../commands/kit/ports.ts";
import type { Reply } from "../../commands/kit/reply.ts";
import type { MemberId, ReminderId } from "../../shared/ids.ts";
import type { ReminderRow } from "../../shared/reminder/types.ts";
import type { Instant, PlainDate } from "../../shared/time.ts";

/** The reminder rows as the job sees them. Implemented in `src/store/`. */
export interface Deliveries {
  /**
   * Claims messages that were never tried, of members who have something scheduled and due at `now`: for
   * each, all their scheduled rows due by `until`, under one nonce that follows from those rows. At most
   * `limit` members, earliest first, none that another worker is at. Counts the attempt. Nothing is left
   * for this worker when it gives no rows.
   */
  claimNext(input: {
    readonly worker: string;
    readonly now: Instant;
    readonly until: Instant;
    readonly leaseUntil: Instant;
    readonly limit: number;
  }): Promise<NextClaim>;
  /** Claimed rows whose lease has run out: their try failed, or whoever held them died. Earliest first. */
  abandoned(now: Instant, limit: number): Promise<readonly ReminderRow[]>;
  /**
   * Claims an abandoned message once more, with all its rows, in one conditional statement. Counts the
   * attempt. Returns the rows now held: none when another worker was faster, or when something of the
   * member is being changed at this moment.
   */
  claimAgain(input: {
    readonly memberId: MemberId;
    readonly nonce: string;
    readonly worker: string;
    readonly now: Instant;
    readonly leaseUntil: Instant;
  }): Promise<readonly ReminderRow[]>;
  /** How many other workers hold something at `now`: they send at the same time. */
  others(worker: string, now: Instant): Promise<number>;
  /** Those of the members that there are, with what a message to them needs. */
  recipients(ids: readonly MemberId[]): Promise<ReadonlyMap<MemberId, Recipient | "unreadable">>;
  /** Finishes those rows of a delivery that `worker` still holds; false when it holds none of them. */
  settle(input: {
    readonly nonce: string;
    readonly ids: readonly ReminderId[];
    readonly worker: string;
    readonly at: Instant;
    readonly result:
      | {
          readonly state: "sent";
          readonly messageId: string;
          readonly where: "direct message" | "channel";
        }
      | { readonly state: "failed"; readonly reason: string }
      /** They came too late to help, and the member has been told so in one line. */
      | { readonly state: "expired"; readonly reason: string }
      /** Stays claimed under its nonce; the next attempt may start at `retryAt`. */
      | { readonly state: "retry"; readonly retryAt: Instant; readonly reason: string }
      /** The same, but nothing was tried: the member is away, or asleep. Takes the attempt back. */
      | { readonly state: "waits"; readonly until: Instant };
  }): Promise<boolean>;
  /**
   * Lets go of rows that `worker` holds under that nonce and that are true no longer: they end as expired,
   * with the reason, and their key is free again, should the same become true once more.
   */
  withdraw(input: {
    readonly rows: readonly Pick<ReminderRow, "id" | "key">[];
    readonly nonce: string;
    readonly worker: string;
    readonly at: Instant;
    readonly reason: string;
  }): Promise<number>;
  /** The earliest instant at which a reminder, a lease or a replan falls due; null when nothing is waiting. */
  nextDue(): Promise<Instant | null>;
  /** Members whose reminders must be derived again by `now`. */
  toReplan(now: Instant, limit: number): Promise<readonly MemberId[]>;
  /** Notes that direct messages to the member are closed (or open again: null). */
  setDirectClosed(memberId: MemberId, at: Instant | null): Promise<void>;
  group(memberId: MemberId): Promise<Group | null>;
}

/** New messages that a worker holds now. */
export interface NextClaim {
  /** Each under the nonce of its message; earliest first. */
  readonly rows: readonly ReminderRow[];
  /** Which plan each member's rows followed from. */
  readonly planVersions: ReadonlyMap<MemberId, number>;
}

/** Whom a message goes to. */
export interface Recipient {
  readonly member: Member;
  readonly group: Group;
  /** When their reminders are to be derived anew; null when nothing is in stock. */
  readonly replanAt: Instant | null;
}

/** Reminders as a whole: counted, let go and cleared away. Implemented in `src/store/`. */
export interface Upkeep {
  /**
   * What is due at `now` and nobody is sending, what waits for its next try included but not what waits
   * for its member: how many rows, and since when the oldest waits.
   */
  backlog(now: Instant): Promise<Backlog>;
  /**
   * Lets go of all that `worker` holds, for another to take at once. Each row keeps its nonce, since it
   * may have been sent. Returns how many.
   */
  giveBack(worker: string, now: Instant): Promise<number>;
  /**
   * Deletes reminders that were sent, failed or expired before then and no longer help, piece by piece
   * while `goOn` says so, and returns how many. What waits or is being sent is never touched.
   */
  pruneReminders(before: Instant, goOn: () => Promise<boolean>): Promise<number>;
  /** The same for drafts of recipes last changed before then. */
  pruneDrafts(before: Instant, goOn: () => Promise<boolean>): Promise<number>;
  /** The same for what was said of single meals of days before that one. */
  pruneMealExceptions(before: PlainDate, goOn: () => Promise<boolean>): Promise<number>;
}

export interface Backlog {
  readonly due: number;
  /** Null when nothing is due. */
  readonly oldestDueAt: Instant | null;
}

/** Told what the sweep does, for figures; never whom it concerns. */
export interface JobMeter {
  /** So many reminders ended so, or are to be tried again. */
  reminders(became: "sent" | "failed" | "expired" | "retried", count: number): void;
  /** From the due time of one reminder to its sending, seconds; never below 0. */
  lag(seconds: number): void;
  /** A sweep has ended. */
  swept(seconds: number, errors: number): void;
}

/** Begins the reason of a reminder that came too late and of which nobody could be told. */
export const UNTOLD = "came too late; ";

/** One message that covers one or more reminder rows. */
export interface OutgoingMessage {
  readonly to: Member;
  readonly group: Group;
  /** At most 25 characters; the platform enforces it against doubles. */
  readonly nonce: string;
  /** 1 for the first try; later ones look whether an earlier try arrived after all. */
  readonly attempt: number;
  /** No try can have been made before this. */
  readonly since: Instant;
  /** What of it came too late goes by this; whole seconds. */
  readonly wordedAt: Instant;
  /** Asked right before each request: once it says no, another process may send the message. */
  readonly isOurs: () => boolean;
  /** Nothing is sent any more: whether an earlier try arrived is all that is asked. */
  readonly onlyLooks: boolean;
  readonly reply: Reply;
}

export type SendResult =
  | {
      readonly kind: "sent";
      readonly messageId: string;
      readonly where: "direct message" | "channel";
      readonly directClosed: boolean;
      /** When what arrived was worded, where that was an earlier try; absent when it was this one. */
      readonly wordedAt?: Instant;
    }
  /** Nobody knows whether it arrived, or the platform asks to wait: repeat the same nonce later. */
  | { readonly kind: "unknown"; readonly reason: string; readonly retryAfterMs: number | null }
  /** Cannot succeed until somebody acts. */
  | { readonly kind: "impossible"; readonly reason: string; readonly directClosed: boolean };

/** Carries a message to a member. Implemented by `src/discord/` and `src/terminal/`. */
export interface Messenger {
  send(message: OutgoingMessage): Promise<SendResult>;
  /** So many processes send at this time: each keeps to its part of what the platform allows a bot. */
  share?(processes: number): void;
}
