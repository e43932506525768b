import { LEAST_DAYS_TO_THAW } from "../keeping/dates.ts";
import { type Instant, isBefore, isDateBefore, type PlainDate } from "../time.ts";
import type { Fresh } from "./fresh.ts";
import { type Frozen, frozenToday } from "./frozen.ts";
import type { Kitchen } from "./kitchen.ts";
import { waysTo } from "./pins.ts";
import type { ThawNeed } from "./thaw-time.ts";
import type { MealSlot } from "./types.ts";

/** Why a batch cannot be kept for a meal; wording in `commands/plan/say-pin-problem.ts`. */
export type PinProblem =
  | { readonly code: "nothing good left" }
  /** It could be, but other meals have all its portions. */
  | { readonly code: "kept for other meals" }
  | { readonly code: "still thawing then" }
  | {
      readonly code: "past its date by then";
      readonly until: PlainDate;
      /** Why it cannot be frozen until then. */
      readonly not: "freezes badly" | "thawed already" | "too late to freeze" | "too few days";
    }
  | { readonly code: "too soon to thaw"; readonly leadHours: number }
  | { readonly code: "too few days to thaw" };

/** What stands against eating a portion of a batch at a meal (by index), none of its ways being open. */
export function whyNotPinned(
  kitchen: Kitchen,
  batchId: string,
  meal: number,
  now: Instant,
): PinProblem {
  if (waysTo(kitchen, batchId, meal).length > 0) return { code: "kept for other meals" };
  const slot = kitchen.slots[meal];
  const fresh = kitchen.fresh.find(({ batch }) => batch.id === batchId);
  const frozen = kitchen.frozen.find(({ batch }) => batch.id === batchId);
  if (slot === undefined) return { code: "nothing good left" };
  if (frozen !== undefined) return thawProblem(frozen, slot, now);
  return fresh === undefined
    ? { code: "nothing good left" }
    : freshProblem(fresh, slot, now, kitchen);
}

function thawProblem({ need }: Pick<Frozen, "need">, slot: MealSlot, now: Instant): PinProblem {
  return isTooSoon(need, slot, now)
    ? { code: "too soon to thaw", leadHours: need.leadHours }
    : { code: "too few days to thaw" };
}

function isTooSoon({ leadHours, daysLeft }: ThawNeed, slot: MealSlot, now: Instant): boolean {
  const minutes = Math.ceil(leadHours * 60);
  return daysLeft >= LEAST_DAYS_TO_THAW && isBefore(slot.at.subtract({ minutes }), now);
}

function freshProblem(one: Fresh, slot: MealSlot, now: Instant, { today }: Kitchen): PinProblem {
  if (!isDateBefore(one.until, slot.date)) return { code: "still thawing then" };
  const { until, batch } = one;
  const past = { code: "past its date by then", until } as const;
  if (batch.keeping.freezes !== "well") return { ...past, not: "freezes badly" };
  const later = frozenToday(one, 1, today);
  if (later === null) return { ...past, not: "thawed already" };
  return { ...past, not: isTooSoon(later.need, slot, now) ? "too late to freeze" : "too few days" };
}

/** The meals (by index) that a batch can be eaten at. */
export function mealsFor(kitchen: Kitchen, batchId: string): readonly number[] {
  return [...kitchen.slots.keys()].filter((meal) => waysTo(kitchen, batchId, meal).length > 0);
}
