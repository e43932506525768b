import type { ReminderRow } from "../../../../shared/reminder/types.ts";
import type { Deliveries } from "../../../../src/jobs/ports.ts";
import { later, NOW } from "../kit.ts";

/** What a worker holds after one claim. */
export interface Held {
  readonly worker: string;
  readonly nonce: string;
  readonly ids: readonly string[];
}

const PAGE = 200;
export const LEASE_UNTIL = later(2);

/** The due rows, together as one message would carry them: by member. */
function byMember(rows: readonly ReminderRow[]): readonly (readonly ReminderRow[])[] {
  const groups = new Map<string, ReminderRow[]>();
  for (const row of rows) {
    const group = groups.get(row.memberId) ?? [];
    group.push(row);
    groups.set(row.memberId, group);
  }
  return [...groups.values()];
}

async function claim(
  deliveries: Deliveries,
  worker: string,
  rows: readonly ReminderRow[],
): Promise<Held> {
  const ids = rows.map(({ id }) => id);
  // The same for every worker that sees these rows, like the nonce of a real message.
  const nonce = [...ids].sort().join(" ").slice(0, 25);
  const held = await deliveries.claim({ ids, nonce, worker, now: NOW, leaseUntil: LEASE_UNTIL });
  return { worker, nonce, ids: held.map(({ id }) => id) };
}

/** Claims member by member, page by page, until nothing is due, and tells of each claim that got rows before the next one. */
export async function claimAll(
  deliveries: Deliveries,
  worker: string,
  tell: (held: Held) => unknown,
): Promise<void> {
  for (;;) {
    const due = await deliveries.due(NOW, NOW, PAGE);
    if (due.length === 0) return;
    for (const rows of byMember(due)) {
      const held = await claim(deliveries, worker, rows);
      if (held.ids.length > 0) await tell(held);
    }
  }
}

/** Claims what is due of one member. */
export async function claimOnce(deliveries: Deliveries, worker: string): Promise<Held> {
  const [rows] = byMember(await deliveries.due(NOW, NOW, PAGE));
  return claim(deliveries, worker, rows ?? []);
}
