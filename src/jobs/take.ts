import type { MemberId } from "../../shared/ids.ts";
import type { Delivery } from "../../shared/reminder/group.ts";
import type { ReminderRow } from "../../shared/reminder/types.ts";
import type { Clock } from "../clock.ts";
import type { Deliveries, Recipient } from "./ports.ts";

/** Messages that are claimed, and whose recipients are looked up, together. */
export interface TakeParts {
  readonly deliveries: Pick<Deliveries, "claim" | "claimNew" | "recipients">;
  readonly clock: Clock;
  /** Names this process in its claims; another process never settles them. */
  readonly worker: string;
}

/** A message that is ours to send. */
export interface Taken extends Delivery {
  /** Null when the member is gone. */
  readonly recipient: Recipient | null;
  /** The plan that its rows followed from when they were claimed; null when they waited since another try. */
  readonly planVersion: number | null;
}

const LEASE = { minutes: 2 };

/**
 * Claims messages: those that were never tried in one statement, those of an earlier try each by itself,
 * with all rows that were claimed for it. What another worker was faster to claim is not among them.
 */
export async function take(
  { deliveries, clock, worker }: TakeParts,
  due: readonly Delivery[],
): Promise<readonly Taken[]> {
  const now = clock.now();
  const lease = { worker, now, leaseUntil: now.add(LEASE) };
  const idsOf = (rows: readonly ReminderRow[]) => rows.map(({ id }) => id);
  const isNew = ({ rows }: Delivery): boolean => rows.every(({ nonce }) => nonce === null);
  const fresh = due.filter(isNew).map(({ nonce, rows }) => ({ nonce, ids: idsOf(rows) }));
  const claimed = fresh.length === 0 ? NOTHING : await deliveries.claimNew({ fresh, ...lease });
  const ours: Omit<Taken, "recipient">[] = [];
  for (const delivery of due) {
    const { nonce, memberId } = delivery;
    if (isNew(delivery)) {
      const rows = claimed.rows.filter((row) => row.nonce === nonce);
      ours.push({ ...delivery, rows, planVersion: claimed.planVersions.get(memberId) ?? null });
    } else {
      const rows = await deliveries.claim({ nonce, ids: idsOf(delivery.rows), ...lease });
      ours.push({ ...delivery, rows, planVersion: null });
    }
  }
  const held = ours.filter(({ rows }) => rows.length > 0);
  if (held.length === 0) return [];
  const recipients = await deliveries.recipients(held.map(({ memberId }) => memberId));
  return held.map((one) => ({ ...one, recipient: recipients.get(one.memberId) ?? null }));
}

const NOTHING: Awaited<ReturnType<Deliveries["claimNew"]>> = {
  rows: [],
  planVersions: new Map<MemberId, number>(),
};
