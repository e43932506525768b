import type { Kitchen, KitchenLot, KitchenMeal } from "./small-kitchen.ts";

/**
 * What is allowed in a kitchen, written from the rules and not from the code: whole hours and days, no
 * calendar, no search order.
 */

/** Four pounds thaw in a day, and nothing thaws in less than a day (USDA FSIS, the slower end). */
export function leadHours(one: KitchenLot): number {
  return Math.max(24, (one.portionG / (4 * 0.45359237 * 1000)) * 24);
}

/** Calendar days in the fridge in all, the day of cooking counted; seven at most (Food Code 3-501.17). */
function daysInAll(one: KitchenLot): number {
  return Math.min(7, one.fridgeDays + 1);
}

const dayOfHour = (hour: number): number => Math.floor(hour / 24);
export const mealHour = (meal: KitchenMeal): number => meal.day * 24 + meal.hour;

function sinceHour(kitchen: Kitchen, one: KitchenLot): number {
  return kitchen.nowHour - one.hoursAgo;
}

/** The last day on which it is eaten from the fridge. */
export function lastDay(kitchen: Kitchen, one: KitchenLot): number {
  return dayOfHour(sinceHour(kitchen, one)) + daysInAll(one) - one.usedDays - 1;
}

export function isFresh(kitchen: Kitchen, one: KitchenLot): boolean {
  return one.place !== "freezer" && lastDay(kitchen, one) >= 0;
}

/** May be frozen with good conscience: neither thawed already nor of a kind that freezes badly. */
export function canBeFrozen(one: KitchenLot): boolean {
  return one.place === "fridge" && one.freezes === "well";
}

export function goodFresh(kitchen: Kitchen, one: KitchenLot, meal: KitchenMeal): boolean {
  const ready =
    one.place === "thawing"
      ? sinceHour(kitchen, one) + leadHours(one) / 2
      : sinceHour(kitchen, one);
  // A whole minute at most is lost to rounding the lead.
  return meal.day <= lastDay(kitchen, one) && mealHour(meal) >= ready;
}

/** Days left if it is thawed later, the day of thawing counted. */
function daysAfterThaw(kitchen: Kitchen, one: KitchenLot): number {
  const stayed = one.place === "freezer" ? 0 : 1 - dayOfHour(sinceHour(kitchen, one));
  return daysInAll(one) - one.usedDays - stayed;
}

/** Every hour at which it may be set to thaw for a meal: at the freezer, in time, and not too early. */
export function thawHoursFor(
  kitchen: Kitchen,
  one: KitchenLot,
  meal: KitchenMeal,
): { readonly evenings: number[]; readonly mornings: number[]; readonly missed: number[] } {
  const fits = (hour: number): boolean =>
    kitchen.nowHour + leadHours(one) <= mealHour(meal) &&
    hour + leadHours(one) <= mealHour(meal) &&
    meal.day - dayOfHour(hour) + 1 <= daysAfterThaw(kitchen, one);
  const days = Array.from({ length: meal.day + 9 }, (_, i) => i - 8);
  const evenings = days.map((day) => day * 24 + kitchen.eveningHour).filter(fits);
  return {
    evenings: evenings.filter((hour) => hour >= kitchen.nowHour),
    mornings: days
      .map((day) => day * 24 + kitchen.morningHour)
      .filter((hour) => hour >= kitchen.nowHour && fits(hour)),
    missed: evenings.filter((hour) => hour < kitchen.nowHour && hour >= kitchen.nowHour - 3),
  };
}

export function goodThawed(kitchen: Kitchen, one: KitchenLot, meal: KitchenMeal): boolean {
  const { evenings, mornings, missed } = thawHoursFor(kitchen, one, meal);
  return evenings.length + mornings.length + missed.length > 0;
}
