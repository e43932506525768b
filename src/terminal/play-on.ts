import { Temporal } from "temporal-polyfill";
import type { Instant } from "../../shared/time.ts";
import type { MovableClock } from "../clock.ts";
import type { Deliveries } from "../jobs/ports.ts";
import type { Tick } from "../jobs/reminder-tick.ts";

/** Sweeps at one instant that leave something due, before something is taken to be wrong. */
const STUCK_AFTER = 3;

export interface PlayParts {
  readonly deliveries: Pick<Deliveries, "nextDue">;
  readonly tick: Tick;
  readonly clock: MovableClock;
}

/** Moves the clock on to `target`, sweeping at every instant on the way at which something falls due. */
export async function playOn(parts: PlayParts, target: Instant): Promise<void> {
  let sweepsHere = 0;
  for (
    let due = await nextBy(parts, target);
    due !== null && sweepsHere < STUCK_AFTER;
    due = await nextBy(parts, target)
  ) {
    sweepsHere = advance(parts.clock, due) ? 1 : sweepsHere + 1;
    await parts.tick();
  }
  advance(parts.clock, target);
  await parts.tick();
}

async function nextBy({ deliveries }: PlayParts, target: Instant): Promise<Instant | null> {
  const due = await deliveries.nextDue();
  return due === null || Temporal.Instant.compare(due, target) > 0 ? null : due;
}

function advance(clock: MovableClock, to: Instant): boolean {
  const isAhead = Temporal.Instant.compare(to, clock.now()) > 0;
  if (isAhead) clock.advanceTo(to);
  return isAhead;
}
