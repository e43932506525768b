import type { Allocation, MealSlot } from "../allocation/types.ts";
import type { Lot, Stock } from "../stock/types.ts";
import { type Instant, isBefore } from "../time.ts";
import { factKey } from "./again.ts";
import { lotFacts, surplusFacts, thawFact, thawKey } from "./derive.ts";
import type { DerivedReminder, ReminderChoice, ReminderRow } from "./types.ts";

/** What a reminder is held against. */
export interface Sight {
  readonly stock: Stock;
  readonly choice: ReminderChoice;
  readonly now: Instant;
  /** The meals to come, and what is given to them. */
  readonly meals: () => { readonly slots: readonly MealSlot[]; readonly allocation: Allocation };
}

/**
 * A reminder as it is true now: of so many portions as there are, for the meal as it is planned. Null
 * when it is true no longer: the portions are gone or elsewhere, the date is another, the meal is off
 * the list or served by something else. What came too late to help is true while its portions are
 * still where it spoke of them, since only that it was missed is left to tell.
 */
export function currentRow(row: ReminderRow, sight: Sight): ReminderRow | null {
  const lot = sight.stock.lots.find((one) => one.id === row.about.lotId);
  if (lot === undefined) return null;
  const fact = factOf(row, lot, sight);
  // By what it says now: a meal may have been moved, or the member may have gone where it is earlier.
  if (!isBefore(sight.now, fact?.helpsUntil ?? row.helpsUntil)) return missedRow(row, lot);
  return fact === null ? null : { ...row, about: fact.about, helpsUntil: fact.helpsUntil };
}

function missedRow(row: ReminderRow, lot: Lot): ReminderRow | null {
  const isOfFreezer = row.kind === "thaw tonight" || row.kind === "freezer quality";
  return isOfFreezer === (lot.place === "freezer") ? row : null;
}

type Fact = Pick<DerivedReminder, "about" | "helpsUntil">;

function factOf(row: ReminderRow, lot: Lot, sight: Sight): Fact | null {
  const { stock, choice, now } = sight;
  if (row.kind === "thaw tonight") return thawNow(row, lot, sight);
  const facts =
    row.kind === "freeze the surplus"
      ? surplusFacts(stock, sight.meals().allocation, choice, now)
      : lotFacts(stock, lot, choice);
  return facts.find(({ key }) => key === factKey(row.key)) ?? null;
}

/**
 * Asked of the meal and not of the allocation alone: that no longer plans a thaw whose planned moment
 * has passed, though it may still help.
 */
function thawNow(row: ReminderRow, lot: Lot, { stock, meals }: Sight): Fact | null {
  if (lot.place !== "freezer") return null;
  const { slots, allocation } = meals();
  const slot = slots.find((one) => thawKey(one, lot) === factKey(row.key));
  if (slot === undefined) return null;
  const byOthers = allocation.servings
    .filter((one) => one.slot.key === slot.key && one.lotId !== lot.id)
    .reduce((sum, one) => sum + one.portions, 0);
  const portions = Math.min(slot.portions - byOthers, row.about.portions, lot.portions);
  return portions < 0.5 ? null : thawFact(stock, lot, slot, portions);
}
