import { isAgain } from "../../shared/reminder/again.ts";
import { isNotice } from "../../shared/reminder/notice.ts";
import type { DerivedReminder } from "../../shared/reminder/types.ts";
import { type Instant, isBefore } from "../../shared/time.ts";
import { aboutDocument } from "./about-document.ts";
import { toColumn, toText } from "./documents.ts";

/** As much of a kept reminder as the comparison needs. */
export interface KnownReminder extends ReminderColumns {
  readonly id: string;
  readonly key: string;
  readonly state: string;
}

export interface ReminderDiff {
  readonly insert: readonly DerivedReminder[];
  readonly update: readonly { readonly id: string; readonly columns: ReminderColumns }[];
  /** Ids of rows that no longer follow from the stock. */
  readonly remove: readonly string[];
  /** Whether rows were left as they are because they are due. */
  readonly leavesDue: boolean;
}

/** Everything of a reminder that a rewrite may change, as its columns hold it. */
export interface ReminderColumns {
  readonly kind: string;
  readonly dueAt: Date;
  readonly helpsUntil: Date;
  readonly about: string;
}

export function columnsOf(reminder: DerivedReminder): ReminderColumns {
  return {
    kind: reminder.kind,
    dueAt: toColumn(reminder.dueAt),
    helpsUntil: toColumn(reminder.helpsUntil),
    about: toText(aboutDocument, reminder.about),
  };
}

function same(a: ReminderColumns, b: ReminderColumns): boolean {
  return (
    a.kind === b.kind &&
    a.dueAt.getTime() === b.dueAt.getTime() &&
    a.helpsUntil.getTime() === b.helpsUntil.getTime() &&
    a.about === b.about
  );
}

/** One reminder a key; of two with the same key the earlier. */
function byKey(desired: readonly DerivedReminder[]): ReadonlyMap<string, DerivedReminder> {
  const map = new Map<string, DerivedReminder>();
  for (const reminder of desired) {
    const other = map.get(reminder.key);
    if (other === undefined || isBefore(reminder.dueAt, other.dueAt)) {
      map.set(reminder.key, reminder);
    }
  }
  return map;
}

/** Reminders as they are kept, and as they were derived for a moment. */
export interface Rewrite {
  readonly known: readonly KnownReminder[];
  readonly reminders: readonly DerivedReminder[];
  readonly now: Instant;
}

/**
 * What must be written so that the scheduled rows become the derived set. Rows that are on their way or
 * done (claimed, sent, failed, expired) stay as they are, and their key is not scheduled again: nobody
 * is told the same thing twice. So does what a member put off, and what is told of a recipe: neither
 * follows from the stock, and both are looked at when they are sent. And so does what is due, be it by
 * days after an outage: it is the sweep's to look at and to tell, as too late if need be. Derived anew
 * it would be put off, or vanish untold.
 */
export function diffReminders({ known, reminders, now }: Rewrite): ReminderDiff {
  const wanted = byKey(reminders);
  const knownKeys = new Set(known.map((row) => row.key));
  const derived = known.filter(
    (row) => row.state === "scheduled" && !isAgain(row.key) && !isNotice(row),
  );
  // A column that holds no time at all is not due: it is written anew.
  const isDue = (row: KnownReminder): boolean => row.dueAt.getTime() <= now.epochMilliseconds;
  const scheduled = derived.filter((row) => !isDue(row));
  return {
    insert: [...wanted.values()].filter((reminder) => !knownKeys.has(reminder.key)),
    update: scheduled.flatMap((row) => {
      const reminder = wanted.get(row.key);
      if (reminder === undefined) return [];
      const columns = columnsOf(reminder);
      return same(row, columns) ? [] : [{ id: row.id, columns }];
    }),
    remove: scheduled.filter((row) => !wanted.has(row.key)).map((row) => row.id),
    leavesDue: derived.some(isDue),
  };
}
