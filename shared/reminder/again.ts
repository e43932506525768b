import { atWallClock, dateIn, type Instant, isBefore } from "../time.ts";
import { isNotice } from "./notice.ts";
import { outsideQuiet } from "./quiet.ts";
import type { ReminderChoice, ReminderRow } from "./types.ts";

/** Ways to put off a reminder that was told. */
export const LATER = ["hour", "tonight"] as const;
export type Later = (typeof LATER)[number];

const MARK = "again/";

/** The key under which a reminder comes again. A reminder that was told comes again once, however often it is put off. */
export function againKey({ id, key }: Pick<ReminderRow, "id" | "key">): string {
  return `${MARK}${id}/${factKey(key)}`;
}

/** Whether a key is of a reminder that was put off: it follows from a press, not from the stock alone. */
export function isAgain(key: string): boolean {
  return key.startsWith(MARK);
}

/** The fact a key stands for, put off or not. */
export function factKey(key: string): string {
  return isAgain(key) ? key.slice(key.indexOf("/", MARK.length) + 1) : key;
}

/** When the member said to come again, from `now` on; null when that hour of today is over. */
export function laterAt(later: Later, choice: ReminderChoice, now: Instant): Instant | null {
  if (later === "hour") return now.add({ hours: 1 });
  const evening = atWallClock(dateIn(now, choice.zone), choice.evening, choice.zone);
  const at = outsideQuiet(evening, choice, "earlier");
  return isBefore(now, at) ? at : null;
}

/**
 * Whether a reminder may come again at that instant: while it still helps, and a discard only on the
 * same day, for past its date food must not lie another night. News of a recipe are read once.
 */
export function helpsAt(
  row: Pick<ReminderRow, "kind" | "helpsUntil">,
  at: Instant,
  { zone }: Pick<ReminderChoice, "zone">,
  now: Instant,
): boolean {
  if (isNotice(row) || !isBefore(at, row.helpsUntil)) return false;
  return row.kind !== "discard today" || dateIn(at, zone).equals(dateIn(now, zone));
}
