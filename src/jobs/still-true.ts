import type { Member } from "../../commands/kit/ports.ts";
import { isAgain } from "../../shared/reminder/again.ts";
import { isOnTime, isOutlasted } from "../../shared/reminder/hold.ts";
import { isNotice } from "../../shared/reminder/notice.ts";
import type { CurrentReminder, ReminderKind, ReminderRow } from "../../shared/reminder/types.ts";
import { type Instant, isBefore } from "../../shared/time.ts";
import type { Deliveries } from "./ports.ts";
import type { Taken } from "./take.ts";

/** The rows of one message, sorted by whether they still help. */
export interface Held {
  readonly rows: readonly ReminderRow[];
  readonly late: readonly ReminderRow[];
}

/** Which of a member's reminders are still true, as they are now (`commands/reminders/current.ts`). */
export type AskCurrent = (
  member: Member,
  rows: readonly ReminderRow[],
  now: Instant,
) => Promise<readonly CurrentReminder[]>;

const GONE = "no longer true; nobody was told";
const GONE_SINCE = "no longer true; an earlier try may have told it";

/** Sorts rows by whether they still help at `now`. */
export function sorted(rows: readonly ReminderRow[], now: Instant): Held {
  const helps = (row: ReminderRow): boolean => isBefore(now, row.helpsUntil);
  return { rows: rows.filter(helps), late: rows.filter((row) => !helps(row)) };
}

/** Follow from the meals as well, and so from how late it is: a meal counts for two hours after it. */
const OF_MEALS: ReadonlySet<ReminderKind> = new Set(["thaw tonight", "freeze the surplus"]);
const MEAL_COUNTS_FOR = { hours: 2 };
/** While reminders are being derived anew, that stands as due a little later, lest it is done twice. */
const DERIVED_WITHIN = { minutes: 3 };

/**
 * Whether rows are certain to be true as they stand, so that the stock need not be looked at again: on
 * time, at the first try, and neither did the stock, meals or times change since they were claimed
 * (every change rewrites what is not due yet, and has the rest derived anew), nor is that to be by now.
 * Not what was put off, nor news of recipes, which no rewrite touches; nor for a member who may be away.
 */
export function isAsDerived({ rows, recipient, planVersion }: Taken, now: Instant): boolean {
  if (recipient === null || recipient === "unreadable") return false;
  if (planVersion === null || recipient.replanAt === null) return false;
  const { member, replanAt } = recipient;
  if (member.planVersion !== planVersion || member.choice.pausedUntil !== null) return false;
  return rows.every((row) => {
    const known = now.add(OF_MEALS.has(row.kind) ? MEAL_COUNTS_FOR : DERIVED_WITHIN);
    return (
      row.attempts === 1 &&
      !isAgain(row.key) &&
      !isNotice(row) &&
      isOnTime(row, now) &&
      isBefore(now, row.helpsUntil) &&
      isBefore(known, replanAt)
    );
  });
}

/**
 * Looks once more right before sending: a row may have waited for a retry, in quiet hours or since a
 * member put it off. Lets go of what is true no longer, and gives the rest as it is now.
 */
export async function stillTrue(
  parts: {
    readonly current: AskCurrent;
    readonly deliveries: Pick<Deliveries, "withdraw">;
    readonly worker: string;
  },
  member: Member,
  { nonce, rows }: { readonly nonce: string; readonly rows: readonly ReminderRow[] },
  now: Instant,
): Promise<readonly CurrentReminder[]> {
  const found = await parts.current(member, rows, now);
  const list = found.filter((one) => !isOutlasted(one, member.choice, now));
  const left = new Set(list.map(({ row }) => row.id));
  const gone = rows.filter(({ id }) => !left.has(id));
  if (gone.length > 0) {
    const { worker } = parts;
    const reason = gone.some(({ attempts }) => attempts > 1) ? GONE_SINCE : GONE;
    await parts.deliveries.withdraw({ rows: gone, nonce, worker, at: now, reason });
  }
  return list;
}
