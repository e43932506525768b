import type { Temporal } from "temporal-polyfill";
import { messagesOf } from "../../../shared/reminder/group.ts";
import type { ReminderRow } from "../../../shared/reminder/types.ts";
import type { Store } from "../../../src/store/open.ts";
import { NOW, type World } from "./kit.ts";

interface Claiming {
  readonly worker?: string;
  /** What has fallen due by then is claimed. */
  readonly due?: Temporal.Instant;
  /** The lease runs for two minutes from then on; by default from the instant of what is due. */
  readonly at?: Temporal.Instant;
}

/** Claims everything of everybody that is scheduled and has fallen due by an instant, by default `NOW`. */
export async function claimDue(
  { deliveries }: Store,
  { worker = "w", due = NOW, at = due }: Claiming = {},
): Promise<readonly ReminderRow[]> {
  const lease = { worker, now: due, until: due, leaseUntil: at.add({ minutes: 2 }) };
  const held: ReminderRow[] = [];
  for (;;) {
    const { rows } = await deliveries.claimNext({ ...lease, limit: 100 });
    if (rows.length === 0) return held;
    held.push(...rows);
  }
}

/** What settling or claiming again needs to know of rows that make one message. */
export function messageOf(rows: readonly ReminderRow[]) {
  const [message, ...others] = messagesOf(rows);
  if (message === undefined || others.length > 0) throw new Error("they are not one message");
  const { memberId, nonce } = message;
  return { memberId, nonce, ids: message.rows.map(({ id }) => id) };
}

type Result = Parameters<Store["deliveries"]["settle"]>[0]["result"];

/** All that is scheduled and due by an instant is claimed at another and, unless null, ends so. */
export async function settleDue(
  { store }: World,
  due: Temporal.Instant,
  result: Result | null,
  at = NOW,
) {
  const rows = await claimDue(store, { due, at });
  for (const { nonce, rows: own } of messagesOf(rows)) {
    const ids = own.map(({ id }) => id);
    if (result !== null) {
      await store.deliveries.settle({ nonce, ids, worker: "w", at, result });
    }
  }
  return rows.map(({ id }) => id);
}
