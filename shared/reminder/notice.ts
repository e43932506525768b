import type { Instant } from "../time.ts";
import { outsideQuiet } from "./quiet.ts";
import type { DerivedReminder, ReminderChoice, ReminderKind } from "./types.ts";

const NOTICES: ReadonlySet<ReminderKind> = new Set(["recipe changed", "recipe withdrawn"]);

/** After so long nobody is told of a recipe's change any more: its card says it. */
const HELPS_DAYS = 30;

/** Whether it is told because of a recipe: such a reminder does not follow from the stock, and does not come again. */
export function isNotice({ kind }: { readonly kind: string }): boolean {
  return [...NOTICES].some((notice) => notice === kind);
}

/** When a notice goes out, and until when: at once, but not in the quiet hours. Being away is seen to when it is sent. */
export function noticeTimes(
  choice: ReminderChoice,
  now: Instant,
): Pick<DerivedReminder, "dueAt" | "helpsUntil"> {
  const dueAt = outsideQuiet(now, choice, "later");
  return { dueAt, helpsUntil: now.add({ hours: HELPS_DAYS * 24 }) };
}
