import type { Member } from "../../commands/kit/ports.ts";
import { isOutlasted } from "../../shared/reminder/hold.ts";
import type { CurrentReminder, ReminderRow } from "../../shared/reminder/types.ts";
import { type Instant, isBefore } from "../../shared/time.ts";
import type { Deliveries } from "./ports.ts";

/** The rows of one message, sorted by whether they still help. */
export interface Held {
  readonly rows: readonly ReminderRow[];
  readonly late: readonly ReminderRow[];
}

/** Which of a member's reminders are still true, as they are now (`commands/reminders/current.ts`). */
export type AskCurrent = (
  member: Member,
  rows: readonly ReminderRow[],
  now: Instant,
) => Promise<readonly CurrentReminder[]>;

const GONE = "no longer true; nobody was told";

/** Sorts rows by whether they still help at `now`. */
export function sorted(rows: readonly ReminderRow[], now: Instant): Held {
  const helps = (row: ReminderRow): boolean => isBefore(now, row.helpsUntil);
  return { rows: rows.filter(helps), late: rows.filter((row) => !helps(row)) };
}

/**
 * Looks once more right before sending: a row may have waited for a retry, in quiet hours or since a
 * member put it off. Lets go of what is true no longer, and gives the rest as it is now.
 */
export async function stillTrue(
  parts: {
    readonly current: AskCurrent;
    readonly deliveries: Pick<Deliveries, "withdraw">;
    readonly worker: string;
  },
  member: Member,
  { nonce, rows }: { readonly nonce: string; readonly rows: readonly ReminderRow[] },
  now: Instant,
): Promise<readonly CurrentReminder[]> {
  const found = await parts.current(member, rows, now);
  const list = found.filter((one) => !isOutlasted(one, member.choice, now));
  const left = new Set(list.map(({ row }) => row.id));
  const gone = rows.filter(({ id }) => !left.has(id));
  if (gone.length > 0) {
    const { worker } = parts;
    await parts.deliveries.withdraw({ rows: gone, nonce, worker, at: now, reason: GONE });
  }
  return list;
}
