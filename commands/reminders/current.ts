import type { LotId } from "../../shared/ids.ts";
import { currentRow, type Sight } from "../../shared/reminder/current.ts";
import type { CurrentReminder, ReminderRow } from "../../shared/reminder/types.ts";
import { type Instant, isBefore } from "../../shared/time.ts";
import { loadStock, mealsAt, planFor } from "../kit/plan.ts";
import type { Member, Stores } from "../kit/ports.ts";

/**
 * Which of a member's reminders are still true, each as it is true now: asked right before one is sent,
 * put off or shown. One of a lot that nobody knows of is kept as it is: silence needs a reason.
 */
export async function currentReminders(
  stores: Pick<Stores, "stocks" | "meals">,
  member: Member,
  list: readonly ReminderRow[],
  now: Instant,
): Promise<readonly CurrentReminder[]> {
  if (list.length === 0) return [];
  const sight = await look(stores, member, list, now);
  const current: CurrentReminder[] = [];
  for (const row of list) {
    const { lotId } = row.about;
    const lot = sight.stock.lots.find(({ id }) => id === lotId);
    if (lot === undefined) {
      const isKept =
        lotId === null ? isStillNews(row, member, now) : await isUnknown(stores, lotId);
      if (isKept) current.push({ row, place: null });
      continue;
    }
    const asNow = currentRow(row, sight);
    if (asNow !== null) current.push({ row: asNow, place: lot.place });
  }
  return current;
}

/** News of a recipe are told for as long as its card does not say it better, and never to who does not want them. */
function isStillNews(row: ReminderRow, member: Member, now: Instant): boolean {
  return member.wantsRecipeNews && isBefore(now, row.helpsUntil);
}

async function isUnknown({ stocks }: Pick<Stores, "stocks">, id: LotId): Promise<boolean> {
  return (await stocks.findLot(id)) === null;
}

async function look(
  stores: Pick<Stores, "stocks" | "meals">,
  member: Member,
  list: readonly ReminderRow[],
  now: Instant,
): Promise<Sight> {
  const { choice } = member;
  const stock = await loadStock(stores, member);
  const asksMeals = list.some(
    ({ kind }) => kind === "thaw tonight" || kind === "freeze the surplus",
  );
  const wishes = asksMeals ? await stores.meals.wishes(member.id) : { rules: [], exceptions: [] };
  let known: ReturnType<Sight["meals"]> | null = null;
  const meals: Sight["meals"] = () => {
    known ??= {
      slots: mealsAt(wishes, choice, now),
      allocation: planFor(stock, wishes, choice, now).allocation,
    };
    return known;
  };
  return { stock, choice, now, meals };
}
