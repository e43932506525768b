import type { MemberId } from "../ids.ts";
import type { ReminderRow } from "./types.ts";

/** Rows that go out as one message under one nonce: what still helps, and what has come too late. */
export interface Delivery {
  readonly memberId: MemberId;
  /** At most 25 characters; the same rows have the same nonce, so a repeat is not a second message. */
  readonly nonce: string;
  readonly rows: readonly ReminderRow[];
}

/**
 * Sorts claimed rows into messages, by their nonces. What was claimed together stays together: the
 * message may have arrived, and nothing that it does not tell may be settled with it.
 */
export function messagesOf(rows: readonly ReminderRow[]): readonly Delivery[] {
  const groups = new Map<string, ReminderRow[]>();
  for (const row of rows) {
    if (row.nonce === null) continue;
    const group = groups.get(row.nonce);
    if (group === undefined) groups.set(row.nonce, [row]);
    else group.push(row);
  }
  return [...groups].flatMap(([nonce, group]) => {
    const sorted = group.toSorted(byDue);
    const [first] = sorted;
    return first === undefined ? [] : [{ memberId: first.memberId, nonce, rows: sorted }];
  });
}

function byDue(a: ReminderRow, b: ReminderRow): number {
  return a.dueAt.epochMilliseconds - b.dueAt.epochMilliseconds || (a.id < b.id ? -1 : 1);
}
