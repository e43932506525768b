import { atWallClock, dateIn, type Instant, isBefore } from "../time.ts";
import type { MealRule, MealSlot } from "./types.ts";

/** How far ahead meals are laid out, days. Four weeks cover what a home freezer feeds. */
export const MEAL_HORIZON_DAYS = 28;

/** The meals from `now` on, by time, for `days` calendar days in the member's zone. */
export function mealSlots(
  rules: readonly MealRule[],
  now: Instant,
  zone: string,
  days: number = MEAL_HORIZON_DAYS,
): readonly MealSlot[] {
  const today = dateIn(now, zone);
  const slots: MealSlot[] = [];
  for (let offset = 0; offset <= days; offset += 1) {
    const date = today.add({ days: offset });
    for (const rule of rules) {
      if (!rule.weekdays.includes(date.dayOfWeek)) continue;
      const at = atWallClock(date, rule.time, zone);
      if (isBefore(at, now)) continue;
      slots.push({
        key: `${rule.id}/${date.toString()}`,
        name: rule.name,
        date,
        at,
        portions: rule.portions,
      });
    }
  }
  return slots.sort(
    (a, b) => a.at.epochMilliseconds - b.at.epochMilliseconds || (a.key < b.key ? -1 : 1),
  );
}
