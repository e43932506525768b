import { batchOf } from "../../shared/stock/lot.ts";
import { count } from "../../shared/words/plural.ts";
import { writeDate, writeWhen } from "../../shared/words/write-when.ts";
import { sayFrom, sayWhy } from "../kit/say-serving.ts";
import { groupBy, type Meal, type Sight, shownOf } from "./look.ts";

/** "Mon 12 Oct, 12:30 lunch". */
export function nameOf({ slot }: Pick<Meal, "slot">, zone: string): string {
  return `${writeWhen(slot.at, zone)} ${slot.name}`;
}

/** "Mon 12 Oct lunch". */
export function shortNameOf({ slot }: Pick<Meal, "slot">): string {
  return `${writeDate(slot.date)} ${slot.name}`;
}

/** What a meal is served from, each lot once, with where from and why in a few words. */
export function sources(
  sight: Sight,
  meal: Meal,
): readonly { readonly title: string; readonly portions: number; readonly note: string }[] {
  const byLot = [...groupBy(meal.servings, ({ lotId }) => lotId).values()];
  return byLot.flatMap((servings) => {
    const [first] = servings;
    const one = first === undefined ? null : shownOf(sight, first);
    if (first === undefined || one === null) return [];
    const portions = servings.reduce((sum, each) => sum + each.portions, 0);
    const note = `${sayFrom(first, one.lot, sight.now, sight.zone)}; ${sayWhy(first, one.lot)}`;
    return [{ title: one.batch.title, portions, note }];
  });
}

/** What is eaten at a meal, in one line: "Barley pot", "2 portions of Barley pot", "skipped by you". */
export function sayMeal(sight: Sight, meal: Meal): string {
  const left = sayLeftOut(meal);
  if (left !== null) return left;
  const from = sources(sight, meal);
  if (from.length === 0) return "nothing from stock";
  return from
    .map(({ title, portions }) =>
      portions === 1 ? title : `${count(portions, "portion")} of ${title}`,
    )
    .join(", ");
}

function sayLeftOut({ exception }: Meal): string | null {
  if (exception?.kind === "skip") return "skipped by you";
  return exception?.kind === "out" ? "eating out" : null;
}

export function isLeftOut(meal: Meal): boolean {
  return sayLeftOut(meal) !== null;
}

/** Portions that a meal takes and nothing is there for. */
export function openAt(meal: Meal): number {
  if (isLeftOut(meal)) return 0;
  return meal.slot.portions - meal.servings.reduce((sum, one) => sum + one.portions, 0);
}

/** The title of what is pinned to a meal that is not served with it; null when all is well. */
export function brokenPin({ stock }: Sight, { exception, servings }: Meal): string | null {
  if (exception?.kind !== "pin" || servings.some(({ why }) => why === "pinned")) return null;
  const batch = stock.batches.find(({ id }) => id === exception.batchId);
  const isLeft = stock.lots.some(({ batchId }) => batchId === exception.batchId);
  return batch === undefined || !isLeft ? null : batchOf(stock.batches, batch.id).title;
}
