import { messagesOf } from "../../../../shared/reminder/group.ts";
import type { Deliveries } from "../../../../src/jobs/ports.ts";
import { later, NOW } from "../kit.ts";

/** What a worker holds after one claim: one message. */
export interface Held {
  readonly worker: string;
  readonly memberId: string;
  readonly nonce: string;
  readonly ids: readonly string[];
}

export const LEASE_UNTIL = later(2);

async function claim(
  deliveries: Deliveries,
  worker: string,
  limit: number,
): Promise<readonly Held[]> {
  const lease = { worker, now: NOW, until: NOW, leaseUntil: LEASE_UNTIL };
  const { rows } = await deliveries.claimNext({ ...lease, limit });
  return messagesOf(rows).map(({ memberId, nonce, rows: own }) => {
    return { worker, memberId, nonce, ids: own.map(({ id }) => id) };
  });
}

/** Claims some messages at a time until nothing is due, and tells of each before the next ones. */
export async function claimAll(
  deliveries: Deliveries,
  worker: string,
  tell: (held: Held) => unknown,
): Promise<void> {
  for (;;) {
    const messages = await claim(deliveries, worker, 4);
    if (messages.length === 0) return;
    for (const held of messages) await tell(held);
  }
}

/** Claims what is due of one member. */
export async function claimOnce(deliveries: Deliveries, worker: string): Promise<Held> {
  const [held] = await claim(deliveries, worker, 1);
  if (held === undefined) throw new Error("nothing is due");
  return held;
}
