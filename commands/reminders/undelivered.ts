import type { ReminderRow } from "../../shared/reminder/types.ts";
import { type Instant, isBefore } from "../../shared/time.ts";
import { writeWhen } from "../../shared/words/write-when.ts";
import type { Member } from "../kit/ports.ts";
import { sayRow } from "./message.ts";

/** What a member is told at their next command about reminders that could not reach them. */
export function sayUndelivered(
  list: readonly ReminderRow[],
  member: Member,
  now: Instant,
): readonly string[] {
  if (list.length === 0) return [];
  const { zone } = member.choice;
  return [
    ...list.map((row) => {
      const when = writeWhen(row.dueAt, zone);
      // It may have been dealt with since, so what it asked for is told as what it was about.
      const what = isBefore(now, row.helpsUntil)
        ? sayRow(row, { member, now })
        : `${row.kind}, ${row.about.title}.`;
      return `A reminder could not reach you on ${when}: ${what}`;
    }),
    "Look at /stock for what still holds.",
  ];
}
