import type { MemberId } from "../ids.ts";
import type { ReminderRow } from "./types.ts";

/** Rows that go out as one message under one nonce: what still helps, and what has come too late. */
export interface Delivery {
  readonly memberId: MemberId;
  /** At most 25 characters; the same rows give the same nonce, so a repeat is not a second message. */
  readonly nonce: string;
  readonly rows: readonly ReminderRow[];
}

/**
 * Sorts due rows into messages. Rows that were claimed before stay by themselves under their nonce: the
 * message may have arrived, and nothing that it does not tell may be settled with it. All others of a
 * member become one message, with what has come too late: a missed discard date must not pass in silence.
 */
export function groupDue(rows: readonly ReminderRow[]): readonly Delivery[] {
  const groups = new Map<string, ReminderRow[]>();
  for (const row of rows) {
    const key = row.nonce === null ? `member ${row.memberId}` : `nonce ${row.nonce}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  return [...groups.values()].flatMap((group) => {
    const sorted = group.toSorted(byDue);
    const [first] = sorted;
    return first === undefined
      ? []
      : [{ memberId: first.memberId, nonce: first.nonce ?? nonceOf(first), rows: sorted }];
  });
}

/** Unique per message, since a row is the first of one message only. */
function nonceOf(first: ReminderRow): string {
  return `r${first.id}`.slice(0, 25);
}

function byDue(a: ReminderRow, b: ReminderRow): number {
  return a.dueAt.epochMilliseconds - b.dueAt.epochMilliseconds || (a.id < b.id ? -1 : 1);
}
