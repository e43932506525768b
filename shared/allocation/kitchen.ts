import type { Lot, Stock } from "../stock/types.ts";
import { dateIn, type Instant, type PlainDate } from "../time.ts";
import { type Fresh, freshLots } from "./fresh.ts";
import { type Frozen, frozenLots, frozenToday } from "./frozen.ts";
import { mealsBetween } from "./seat.ts";
import { type ThawHours, type ThawMoments, thawMoments } from "./thaw-time.ts";
import type { MealSlot } from "./types.ts";

/** What there is to be eaten, the meals to come in order of time, and what decides which goes with which. */
export interface Kitchen {
  readonly today: PlainDate;
  readonly slots: readonly MealSlot[];
  readonly fresh: readonly Fresh[];
  readonly frozen: readonly Frozen[];
  /** Lots in the fridge with a half that is nobody's meal. */
  readonly halves: readonly Lot[];
  readonly moments: ThawMoments;
}

export function kitchenOf(
  stock: Stock,
  slots: readonly MealSlot[],
  now: Instant,
  hours: ThawHours,
): Kitchen {
  const today = dateIn(now, hours.zone);
  const { fresh, alone } = freshLots(stock, today);
  return {
    today,
    slots,
    fresh,
    halves: alone,
    frozen: frozenLots(stock, today),
    moments: thawMoments(slots, now, hours),
  };
}

/** How a portion comes to a meal (by index), and from where; null when it cannot. */
export type Way =
  | { readonly kind: "as it stands"; readonly of: Fresh }
  | { readonly kind: "thaw"; readonly of: Frozen; readonly thawAt: Instant }
  /** Frozen now, so that it lasts, and thawed then. */
  | { readonly kind: "freeze and thaw"; readonly of: Fresh; readonly thawAt: Instant };

export function asItStands({ slots }: Kitchen, one: Fresh, meal: number): Way | null {
  const { first, last } = mealsBetween(slots, one.readyAt, one.until);
  return first <= meal && meal <= last ? { kind: "as it stands", of: one } : null;
}

export function thawed({ moments }: Kitchen, one: Frozen, meal: number): Way | null {
  const thawAt = moments(one.need)[meal] ?? null;
  return thawAt === null ? null : { kind: "thaw", of: one, thawAt };
}

export function frozenFirst({ moments, today }: Kitchen, one: Fresh, meal: number): Way | null {
  const later = frozenToday(one, 1, today);
  const thawAt = later === null ? null : (moments(later.need)[meal] ?? null);
  return thawAt === null ? null : { kind: "freeze and thaw", of: one, thawAt };
}
