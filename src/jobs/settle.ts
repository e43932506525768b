import type { ReminderId } from "../../shared/ids.ts";
import type { ReminderRow } from "../../shared/reminder/types.ts";
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
const TOO_LATE = "came too late to help; the member was told";

/** How a try has ended. A late message is given up after some tries; one that still helps is not. */
export function settlementKind(
  result: SendResult,
  attempt: number,
  stillHelps: boolean,
): "sent" | "retry" | "failed" {
  if (result.kind === "sent") return "sent";
  return result.kind === "unknown" && (stillHelps || attempt < LATE_ATTEMPTS_MAX)
    ? "retry"
    : "failed";
}

/** What is to be recorded of a try. */
export function settlementOf(
  clock: Clock,
  result: SendResult,
  {
    nonce,
    attempt,
    stillHelps,
  }: { readonly nonce: string; readonly attempt: number; readonly stillHelps: boolean },
): Settlement {
  if (result.kind === "sent") {
    return { state: "sent", messageId: result.messageId, where: result.where };
  }
  if (settlementKind(result, attempt, stillHelps) === "failed") {
    const tries = result.kind === "unknown" ? `, after ${attempt} tries` : "";
    return { state: "failed", reason: `${result.reason}${tries}` };
  }
  const asked = result.kind === "unknown" ? result.retryAfterMs : null;
  const waitMs = Math.ceil(asked ?? backoffMs(nonce, attempt));
  const retryAt = clock.now().add({ milliseconds: Math.max(waitMs, 0) });
  return { state: "retry", retryAt, reason: result.reason };
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
