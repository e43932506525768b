import type { Place } from "../stock/types.ts";
import { atWallClock, dateIn, type Instant, isBefore } from "../time.ts";
import { isQuiet, outsideQuiet } from "./quiet.ts";
import type { CurrentReminder, ReminderChoice, ReminderKind, ReminderRow } from "./types.ts";

/** Must not come late: planned before quiet hours rather than after them. */
export const PROMPT: ReadonlySet<ReminderKind> = new Set([
  "last good day",
  "discard today",
  "into the fridge",
]);

/** What somebody could be made ill by not being told: comes while they are away, and at night if need be. */
const SAFETY: ReadonlySet<ReminderKind> = new Set([
  "discard today",
  "into the fridge",
  "freeze the surplus",
]);

/** A message this late is not what was planned for this hour: it heeds the quiet hours. */
const ON_TIME_MINUTES = 10;
/** What waits is looked at again at least so often: the member may have come back or changed the hours. */
const LOOK_AGAIN_MINUTES = 60;

/**
 * Whether a reminder is held while the member is away. Not the last day of thawed food, which cannot be
 * frozen away any more; nor, where nobody knows where the lot is, any last day.
 */
export function isHeldWhileAway(
  kind: ReminderKind,
  place: Place | null,
  choice: Pick<ReminderChoice, "pausesSafety">,
): boolean {
  if (choice.pausesSafety) return true;
  const isLastOfThawed = kind === "last good day" && place !== "fridge";
  return !SAFETY.has(kind) && !isLastOfThawed;
}

/** Held by a pause that ends after it has ceased to help: there will be nothing to say. */
export function isOutlasted(
  { row, place }: CurrentReminder,
  choice: ReminderChoice,
  now: Instant,
): boolean {
  const end = awayUntil(choice, now);
  return (
    end !== null &&
    isHeldWhileAway(row.kind, place, choice) &&
    isBefore(now, row.helpsUntil) &&
    !isBefore(end, row.helpsUntil)
  );
}

/**
 * Until when a message of these reminders must wait, though they are due: while the member is away, or
 * in their quiet hours when it is late (after an outage). Null when it goes at once: one of them may
 * not wait, and then all go with it. Never longer than an hour; then it is asked again.
 */
export function waitUntil(
  list: readonly CurrentReminder[],
  choice: ReminderChoice,
  now: Instant,
): Instant | null {
  let first = now.add({ minutes: LOOK_AGAIN_MINUTES });
  for (const one of list) {
    const until = waitOf(one, choice, now);
    if (until === null) return null;
    if (isBefore(until, first)) first = until;
  }
  return list.length === 0 ? null : first;
}

function waitOf(
  { row, place }: CurrentReminder,
  choice: ReminderChoice,
  now: Instant,
): Instant | null {
  const away = awayUntil(choice, now);
  if (away !== null && isHeldWhileAway(row.kind, place, choice)) return away;
  if (isOnTime(row, now) || !isQuiet(now, choice)) return null;
  const end = outsideQuiet(now, choice, "later");
  const helps = isBefore(now, row.helpsUntil);
  const isLastChance = helps && !isBefore(end, row.helpsUntil);
  return isLastChance && isUrgent(row.kind) ? null : end;
}

/** Whether a message at this time is what was planned for it. */
export function isOnTime({ dueAt }: Pick<ReminderRow, "dueAt">, now: Instant): boolean {
  return isBefore(now, dueAt.add({ minutes: ON_TIME_MINUTES }));
}

function isUrgent(kind: ReminderKind): boolean {
  return PROMPT.has(kind) || SAFETY.has(kind);
}

/** When a pause that is on is over and the member is told; null when none is on. */
function awayUntil(choice: ReminderChoice, now: Instant): Instant | null {
  const { pausedUntil } = choice;
  if (pausedUntil === null) return null;
  const end = tellAfterPause(pausedUntil, choice);
  return isBefore(now, end) ? end : null;
}

/**
 * When a member is told what a pause held: at its end, but in the night or before their morning hour at
 * that hour, together with what is planned for it.
 */
export function tellAfterPause(pausedUntil: Instant, choice: ReminderChoice): Instant {
  const { morning, zone } = choice;
  const end = outsideQuiet(pausedUntil, choice, "later");
  const atMorning = atWallClock(dateIn(end, zone), morning, zone);
  return isBefore(end, atMorning) ? outsideQuiet(atMorning, choice, "later") : end;
}

/** Whether a reminder is one of those that a member is told when they are back. */
export function isWelcome(dueAt: Instant, choice: ReminderChoice): boolean {
  const { pausedUntil } = choice;
  return pausedUntil !== null && tellAfterPause(pausedUntil, choice).equals(dueAt);
}
