import { type Delivery, messagesOf } from "../../shared/reminder/group.ts";
import { isBefore } from "../../shared/time.ts";
import type { Clock } from "../clock.ts";
import type { Deliveries, Recipient } from "./ports.ts";

/** Messages that are claimed, and whose recipients are looked up, together. */
export interface TakeParts {
  readonly deliveries: Pick<Deliveries, "claimNext" | "claimAgain" | "recipients">;
  readonly clock: Clock;
  /** Names this process in its claims; another process never settles them. */
  readonly worker: string;
}

/** A message that is ours to send. */
export interface Taken extends Delivery {
  /** Null when the member is gone. */
  readonly recipient: Recipient | "unreadable" | null;
  /** The plan that its rows followed from when they were claimed; null when they waited since another try. */
  readonly planVersion: number | null;
  /** Once it says no, no request for it is begun: another process may take it soon. */
  readonly isOurs: () => boolean;
}

const LEASE = { minutes: 2 };
/**
 * Before the lease is over, since a request that was begun may take 15 s (`src/discord/mailbox.ts`), and
 * the clocks of two machines may differ by half a minute.
 */
const SEND_WITHIN_MS = 75_000;
/** All that falls due for one member within the same half hour is one message. */
const MERGE_WINDOW = { minutes: 30 };

/** Claims messages that were never tried, as many as `limit` at once; none when nothing is due. */
export async function takeNext(parts: TakeParts, limit: number): Promise<readonly Taken[]> {
  const { deliveries, clock, worker } = parts;
  const now = clock.now();
  const { rows, planVersions } = await deliveries.claimNext({
    worker,
    now,
    until: now.add(MERGE_WINDOW),
    leaseUntil: now.add(LEASE),
    limit,
  });
  const ours = messagesOf(rows).map((message) => ({
    ...message,
    planVersion: planVersions.get(message.memberId) ?? null,
    isOurs: claimOf(clock),
  }));
  return withRecipients(parts, ours);
}

/**
 * Claims messages of an earlier try, each with all rows that were claimed for it. What another worker was
 * faster to claim is not among them.
 */
export async function takeAgain(
  parts: TakeParts,
  abandoned: readonly Delivery[],
): Promise<readonly Taken[]> {
  const { deliveries, clock, worker } = parts;
  const now = clock.now();
  const ours: Omit<Taken, "recipient">[] = [];
  for (const message of abandoned) {
    const { memberId, nonce } = message;
    const lease = { worker, now, leaseUntil: now.add(LEASE) };
    const rows = await deliveries.claimAgain({ memberId, nonce, ...lease });
    if (rows.length === 0) continue;
    ours.push({ ...message, rows, planVersion: null, isOurs: claimOf(clock) });
  }
  return withRecipients(parts, ours);
}

/** A claim made now. By both clocks: one may be set back, the other stops while the machine sleeps. */
function claimOf(clock: Clock): () => boolean {
  const sendBy = clock.now().add({ milliseconds: SEND_WITHIN_MS });
  const startMs = performance.now();
  return () => isBefore(clock.now(), sendBy) && performance.now() - startMs < SEND_WITHIN_MS;
}

async function withRecipients(
  { deliveries }: TakeParts,
  ours: readonly Omit<Taken, "recipient">[],
): Promise<readonly Taken[]> {
  if (ours.length === 0) return [];
  const recipients = await deliveries.recipients(ours.map(({ memberId }) => memberId));
  return ours.map((one) => ({ ...one, recipient: recipients.get(one.memberId) ?? null }));
}
