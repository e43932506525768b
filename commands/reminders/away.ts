import type { ReminderChoice } from "../../shared/reminder/types.ts";
import { type Instant, isBefore } from "../../shared/time.ts";
import { fold } from "../../shared/words/fold.ts";
import { excerpt } from "../../shared/words/problems.ts";
import { readUntil } from "../../shared/words/read-until.ts";
import { Refusal } from "../kit/command.ts";

type Away = Pick<ReminderChoice, "pausedUntil" | "pausesSafety">;

/**
 * Reads how long a member is away: "until Sun", "Fri 18:00", "3 days", "until 2 Nov all"; "off" for
 * being back. With "all", safety reminders are held as well.
 */
export function readAway(typed: string, now: Instant, choice: ReminderChoice): Away {
  const words = fold(typed)
    .split(/[\s,]+/u)
    .filter((word) => word !== "");
  const pausesSafety = words.includes("all");
  const rest = words
    .filter((word) => word !== "all")
    .join(" ")
    .replace(/^(?:until|till) /u, "");
  if (["off", "none", "no", "end", "back"].includes(rest)) return back(choice, now);
  const until = readUntil(rest, now, choice.zone);
  if (!until.ok) {
    throw new Refusal(
      `“${excerpt(typed)}” is not a time to come: type such as until Sun, 3 days, until 2 Nov, or off when you are back.`,
    );
  }
  return { pausedUntil: until.value, pausesSafety };
}

/** Ends a pause now, so that what it held falls due as at its end. */
function back({ pausedUntil }: ReminderChoice, now: Instant): Away {
  const isOn = pausedUntil !== null && isBefore(now, pausedUntil);
  return { pausedUntil: isOn ? now : pausedUntil, pausesSafety: false };
}

/** When the pause that is on ends; null when none is. */
export function awayUntil({ pausedUntil }: ReminderChoice, now: Instant): Instant | null {
  return pausedUntil !== null && isBefore(now, pausedUntil) ? pausedUntil : null;
}
