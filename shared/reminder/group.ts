import type { MemberId } from "../ids.ts";
import { type Instant, isBefore } from "../time.ts";
import type { ReminderRow } from "./types.ts";

/** Rows that go out as one message under one nonce. */
export interface Delivery {
  readonly memberId: MemberId;
  /** At most 25 characters; the same rows give the same nonce, so a repeat is not a second message. */
  readonly nonce: string;
  readonly rows: readonly ReminderRow[];
}

/**
 * Sorts due rows into messages: rows that were claimed before stay together under their nonce, all
 * others of a member become one. Rows that no longer help are set apart.
 */
export function groupDue(
  rows: readonly ReminderRow[],
  now: Instant,
): { readonly deliveries: readonly Delivery[]; readonly tooLate: readonly ReminderRow[] } {
  const groups = new Map<string, ReminderRow[]>();
  const tooLate: ReminderRow[] = [];
  for (const row of rows) {
    if (!isBefore(now, row.helpsUntil)) {
      tooLate.push(row);
      continue;
    }
    const key = row.nonce === null ? `member ${row.memberId}` : `nonce ${row.nonce}`;
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  const deliveries = [...groups.values()].flatMap((group) => {
    const sorted = [...group].sort(byDue);
    const [first] = sorted;
    return first === undefined
      ? []
      : [{ memberId: first.memberId, nonce: first.nonce ?? nonceOf(first), rows: sorted }];
  });
  return { deliveries, tooLate };
}

/** Unique per message, since a row is the first of one message only. */
function nonceOf(first: ReminderRow): string {
  return `r${first.id}`.slice(0, 25);
}

function byDue(a: ReminderRow, b: ReminderRow): number {
  return a.dueAt.epochMilliseconds - b.dueAt.epochMilliseconds || (a.id < b.id ? -1 : 1);
}
