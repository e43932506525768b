import type { Member } from "../../commands/kit/ports.ts";
import { isOutlasted } from "../../shared/reminder/hold.ts";
import type { CurrentReminder, ReminderRow } from "../../shared/reminder/types.ts";
import { type Instant, isBefore } from "../../shared/time.ts";
import type { Deliveries } from "./ports.ts";

/** A holding that is ours, sorted by whether it still helps. */
export interface Held {
  readonly nonce: string;
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
export function sorted(nonce: string, rows: readonly ReminderRow[], now: Instant): Held {
  const helps = (row: ReminderRow): boolean => isBefore(now, row.helpsUntil);
  return { nonce, rows: rows.filter(helps), late: rows.filter((row) => !helps(row)) };
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
  held: readonly Held[],
  now: Instant,
): Promise<{ readonly held: readonly Held[]; readonly list: readonly CurrentReminder[] }> {
  const all = held.flatMap(({ rows, late }) => [...rows, ...late]);
  const found = await parts.current(member, all, now);
  const list = found.filter((one) => !isOutlasted(one, member.choice, now));
  const byId = new Map(list.map(({ row }) => [row.id, row]));
  const left: Held[] = [];
  for (const { nonce, rows, late } of held) {
    const own = [...rows, ...late];
    const gone = own.filter(({ id }) => !byId.has(id));
    if (gone.length > 0) {
      await parts.deliveries.withdraw({
        rows: gone,
        nonce,
        worker: parts.worker,
        at: now,
        reason: GONE,
      });
    }
    const kept = own.flatMap(({ id }) => byId.get(id) ?? []);
    if (kept.length > 0) left.push(sorted(nonce, kept, now));
  }
  return { held: left, list };
}
