import { Temporal } from "temporal-polyfill";
import type { Group, Member } from "../../commands/kit/ports.ts";
import type { Reply } from "../../commands/kit/reply.ts";
import { waitUntil } from "../../shared/reminder/hold.ts";
import type { ReminderRow } from "../../shared/reminder/types.ts";
import type { Instant } from "../../shared/time.ts";
import type { Clock } from "../clock.ts";
import type { Log } from "../log.ts";
import { measure } from "./measure.ts";
import type { Deliveries, JobMeter, Messenger, Recipient, SendResult } from "./ports.ts";
import { idsOf, onlyLooks, settle, settlementOf, type Tried } from "./settle.ts";
import { type AskCurrent, isAsDerived, sorted, stillTrue } from "./still-true.ts";
import type { Taken } from "./take.ts";

/** Words a reminder message (`commands/reminders/message.ts`). */
export type RenderReminder = (input: {
  readonly member: Member;
  readonly group: Group;
  readonly rows: readonly ReminderRow[];
  readonly late: readonly ReminderRow[];
  readonly now: Instant;
  readonly nonce: string;
}) => Reply;

export interface DeliverParts {
  readonly deliveries: Deliveries;
  readonly messenger: Messenger;
  readonly render: RenderReminder;
  readonly current: AskCurrent;
  readonly clock: Clock;
  readonly log: Log;
  /** Names this process in its claims; another process never settles them. */
  readonly worker: string;
  readonly meter?: JobMeter;
}

/**
 * What became of one message. "lost": the stock changed and it is moot. "waits":
 * the member is away, or asleep.
 */
export type Fate =
  | { readonly kind: "sent" | "retry" | "failed"; readonly late: number }
  | { readonly kind: "lost" }
  | { readonly kind: "waits" };

/**
 * Words, sends and records one message that was claimed, in this order. A process that dies between any
 * two of these leaves a claim whose lease runs out; the next try goes out under the same nonce.
 */
export async function deliver(parts: DeliverParts, taken: Taken): Promise<Fate> {
  const { nonce, recipient } = taken;
  const now = parts.clock.now();
  if (recipient === null || recipient === "unreadable") return sendAndSettle(parts, taken);
  if (isAsDerived(taken, now)) return sendAndSettle(parts, taken);
  const { member } = recipient;
  const list = await stillTrue({ ...parts, current: orAsDerived(parts) }, member, taken, now);
  if (list.length === 0) return { kind: "lost" };
  const until = waitUntil(list, member.choice, now);
  if (until === null) {
    return sendAndSettle(parts, { ...taken, rows: list.map(({ row }) => row) });
  }
  // They stay claimed: deriving anew drops what no longer helps, and that has to be told when they wake.
  const result = { state: "waits", until } as const;
  const ids = idsOf(taken.rows);
  await parts.deliveries.settle({ nonce, ids, worker: parts.worker, at: now, result });
  return { kind: "waits" };
}

/** Where it cannot be found out what is still true, all is told as it was derived: silence needs a reason. */
function orAsDerived({ current, log }: Pick<DeliverParts, "current" | "log">): AskCurrent {
  return async (member, rows, now) => {
    try {
      return await current(member, rows, now);
    } catch (error) {
      log.error({ err: error }, "nobody knows whether a reminder is still true; it is sent");
      return rows.map((row) => ({ row, place: null }));
    }
  };
}

async function sendAndSettle(
  parts: DeliverParts,
  { nonce, rows, recipient, isOurs }: Taken,
): Promise<Fate> {
  // Whole seconds, which a message can bear: whoever finds it later knows what it told in time.
  const wordedAt = parts.clock.now().round({ smallestUnit: "second", roundingMode: "floor" });
  const held = sorted(rows, wordedAt);
  const attempt = Math.max(...rows.map((row) => row.attempts), 1);
  const trying = { held, nonce, attempt, wordedAt, isOurs, onlyLooks: onlyLooks(held) };
  const result = await send(parts, recipient, trying);
  const settlement = settlementOf(parts.clock, result, trying);
  // What an earlier try told in time was told in time, however late that is found out.
  const told =
    result.kind === "sent" && result.wordedAt !== undefined ? sorted(rows, result.wordedAt) : held;
  const settled = await settle(parts, nonce, told, settlement);
  if (!settled) parts.log.warn({ nonce, result: result.kind }, "the lease ran out while sending");
  const kind = settlement.state;
  if (settled && parts.meter !== undefined) measure(parts.meter, told, kind, parts.clock.now());
  return { kind, late: kind === "sent" ? told.late.length : 0 };
}

interface Try extends Tried {
  readonly wordedAt: Instant;
  readonly isOurs: () => boolean;
}

async function send(
  parts: DeliverParts,
  recipient: Recipient | "unreadable" | null,
  trying: Try,
): Promise<SendResult> {
  if (recipient === null) {
    return { kind: "impossible", reason: "the member is gone", directClosed: false };
  }
  if (recipient === "unreadable") {
    parts.log.error({ nonce: trying.nonce }, "the row of a reminder's member cannot be read");
    return { kind: "unknown", reason: "the member's row cannot be read", retryAfterMs: null };
  }
  const { member, group } = recipient;
  const result = await wordAndSend(parts, { member, group, ...trying });
  // Before the delivery is settled, so that a crash in between notes it at the next try.
  await noteDirect(parts, member, result);
  return result;
}

async function wordAndSend(
  { render, messenger, clock, log }: DeliverParts,
  {
    held,
    nonce,
    attempt,
    wordedAt,
    isOurs,
    onlyLooks: isLook,
    ...who
  }: Try & { readonly member: Member; readonly group: Group },
): Promise<SendResult> {
  try {
    const reply = render({ ...who, ...held, now: clock.now(), nonce });
    const since = earliestTry([...held.rows, ...held.late], clock.now());
    return await messenger.send({
      to: who.member,
      group: who.group,
      nonce,
      attempt,
      since,
      wordedAt,
      isOurs,
      onlyLooks: isLook,
      reply,
    });
  } catch (error) {
    // An error while sending does not mean that nothing was sent.
    log.error({ err: error, nonce, attempt }, "a reminder could not be worded or sent");
    return { kind: "unknown", reason: "an error while sending", retryAfterMs: null };
  }
}

/**
 * Each row may have gone along with an earlier message of its half hour, so it may have been tried that
 * long before it was due; and the platform's clock may differ from ours.
 */
function earliestTry(rows: readonly ReminderRow[], now: Instant): Instant {
  const dueMs = Math.max(...rows.map(({ dueAt }) => dueAt.epochMilliseconds));
  const due = Temporal.Instant.fromEpochMilliseconds(Math.min(dueMs, now.epochMilliseconds));
  return due.subtract({ minutes: 40 });
}

async function noteDirect(parts: DeliverParts, member: Member, result: SendResult): Promise<void> {
  if (result.kind === "unknown") return;
  const wasClosed = member.directClosedAt !== null;
  if (result.directClosed && !wasClosed) {
    await parts.deliveries.setDirectClosed(member.id, parts.clock.now());
  } else if (wasClosed && result.kind === "sent" && wentDirect(result)) {
    await parts.deliveries.setDirectClosed(member.id, null);
  }
}

function wentDirect(result: SendResult & { readonly kind: "sent" }): boolean {
  return result.where === "direct message" && !result.directClosed;
}
