import type { MealException, MealSlot, Pin } from "./types.ts";

/** The key of the meal that an exception is about, as `MealSlot.key`. */
export function mealKey({ mealId, date }: Pick<MealException, "mealId" | "date">): string {
  return `${mealId}/${date.toString()}`;
}

/** The meals without those that are skipped or eaten elsewhere. */
export function mealsKept(
  slots: readonly MealSlot[],
  exceptions: readonly MealException[],
): readonly MealSlot[] {
  const left = new Set(exceptions.filter(({ kind }) => kind !== "pin").map(mealKey));
  return slots.filter(({ key }) => !left.has(key));
}

/** What is kept for which meal. */
export function pinsOf(exceptions: readonly MealException[]): readonly Pin[] {
  return exceptions.flatMap((one) =>
    one.kind === "pin" ? [{ slotKey: mealKey(one), batchId: one.batchId }] : [],
  );
}
