import type { ReminderId } from "../../shared/ids.ts";
import type { ReminderRow } from "../../shared/reminder/types.ts";
import { isBefore } from "../../shared/time.ts";
import type { Clock } from "../clock.ts";
import { backoffMs } from "./backoff.ts";
import { type Deliveries, type SendResult, UNTOLD } from "./ports.ts";
import type { Held } from "./still-true.ts";

/** What becomes of a message that was tried. */
type Settlement = Exclude<
  Parameters<Deliveries["settle"]>[0]["result"],
  { readonly state: "waits" }
>;

/** What only says that something came too late is not worth more tries than this. */
const LATE_ATTEMPTS_MAX = 8;
/**
 * Begins the reason of what is not sent again, although nobody knows whether its last try arrived: that is
 * looked for, lest the coach is shown as untold what was told.
 */
const LOOKS = "tried often enough, and looked for; ";
/** So long after the last of it helped it is looked for. */
const LOOK_FOR = { hours: 48 };
const TOO_LATE = "came too late to help; the member was told";

/** A try of one message, as far as what becomes of it depends on that. */
export interface Tried {
  readonly nonce: string;
  /** From 1. */
  readonly attempt: number;
  readonly held: Held;
  readonly onlyLooks: boolean;
}

/** Whether a message is only looked for: none of it helps any more, and it was given up before. */
export function onlyLooks({ rows, late }: Held): boolean {
  return rows.length === 0 && late.every(({ reason }) => reason?.startsWith(LOOKS) === true);
}

/**
 * What is to be recorded of a try. A late message is sent no more after some tries, and then looked for;
 * one that still helps is sent for as long as it does.
 */
export function settlementOf(
  clock: Clock,
  result: SendResult,
  { nonce, attempt, held, onlyLooks: isLook }: Tried,
): Exclude<Settlement, { readonly state: "expired" }> {
  if (result.kind === "sent") {
    return { state: "sent", messageId: result.messageId, where: result.where };
  }
  if (result.kind === "impossible") return { state: "failed", reason: result.reason };
  const now = clock.now();
  if (isLook && held.late.every((row) => !isBefore(now, row.helpsUntil.add(LOOK_FOR)))) {
    return { state: "failed", reason: `it may have arrived; ${result.reason}` };
  }
  const waitMs = Math.ceil(result.retryAfterMs ?? backoffMs(nonce, attempt));
  const retryAt = now.add({ milliseconds: Math.max(waitMs, 0) });
  const isEnough = isLook || (held.rows.length === 0 && attempt >= LATE_ATTEMPTS_MAX);
  return { state: "retry", retryAt, reason: isEnough ? `${LOOKS}${result.reason}` : result.reason };
}

interface SettleParts {
  readonly deliveries: Pick<Deliveries, "settle">;
  readonly worker: string;
  readonly clock: Clock;
}

/**
 * Records what became of the message: of what it told in time, and apart from that of what came too late.
 * Should the process die in between, what is left is found again by its nonce, and not told twice.
 */
export async function settle(
  { deliveries, worker, clock }: SettleParts,
  nonce: string,
  { rows, late }: Held,
  result: Settlement,
): Promise<boolean> {
  const lease = { nonce, worker, at: clock.now() };
  if (late.length === 0 || result.state === "retry") {
    return deliveries.settle({ ...lease, ids: idsOf([...rows, ...late]), result });
  }
  const areTold = await deliveries.settle({
    ...lease,
    ids: idsOf(late),
    result: lateSettlement(result),
  });
  if (rows.length === 0) return areTold;
  return (await deliveries.settle({ ...lease, ids: idsOf(rows), result })) && areTold;
}

export function idsOf(rows: readonly ReminderRow[]): readonly ReminderId[] {
  return rows.map(({ id }) => id);
}

function lateSettlement(result: Exclude<Settlement, { readonly state: "retry" }>): Settlement {
  const reason = result.state === "failed" ? `${UNTOLD}${result.reason}` : TOO_LATE;
  return { state: "expired", reason };
}
