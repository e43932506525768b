import type { Instant } from "../../shared/time.ts";
import type { JobMeter } from "./ports.ts";
import type { Held } from "./still-true.ts";

/** Tells the meter what became of one message's reminders. */
export function measure(
  meter: JobMeter,
  { rows, late }: Held,
  became: "sent" | "retry" | "failed",
  now: Instant,
): void {
  if (became === "retry") {
    meter.reminders("retried", rows.length + late.length);
    return;
  }
  meter.reminders(became, rows.length);
  meter.reminders("expired", late.length);
  if (became !== "sent") return;
  for (const { dueAt } of rows) {
    // Below zero for what went along with an earlier message of the same half hour.
    meter.lag(Math.max(0, (now.epochMilliseconds - dueAt.epochMilliseconds) / 1_000));
  }
}
