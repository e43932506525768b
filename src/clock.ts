import { Temporal } from "temporal-polyfill";
import type { Instant } from "../shared/time.ts";

/** Where the running parts read the time. */
export interface Clock {
  now(): Instant;
}

/** A clock that can be moved on, never back. */
export interface MovableClock extends Clock {
  /** Throws when `instant` lies before `now()`: a caller that moves time back has a bug. */
  advanceTo(instant: Instant): void;
}

export const systemClock: Clock = { now: () => Temporal.Now.instant() };

/** Stands still until it is moved: the demo and the tests play a week on it. */
export function manualClock(start: Instant): MovableClock {
  return movableClock({ now: () => start });
}

/** Runs with `base`, ahead of it by whatever it was moved on. */
export function movableClock(base: Clock): MovableClock {
  let ahead = new Temporal.Duration();
  const now = (): Instant => base.now().add(ahead);
  return {
    now,
    advanceTo(instant) {
      const step = now().until(instant);
      if (step.sign < 0) throw new Error(`the clock cannot go back to ${instant.toString()}`);
      ahead = ahead.add(step);
    },
  };
}
