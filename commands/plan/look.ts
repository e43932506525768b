import { mealKey } from "../../shared/allocation/exceptions.ts";
import { mealSlots } from "../../shared/allocation/slots.ts";
import type {
  Allocation,
  MealException,
  MealSlot,
  MealWishes,
  Serving,
} from "../../shared/allocation/types.ts";
import type { SlotRuleId } from "../../shared/ids.ts";
import type { Stock } from "../../shared/stock/types.ts";
import { dateIn, type Instant, type PlainDate } from "../../shared/time.ts";
import type { Context } from "../kit/context.ts";
import { loadStock, planFor } from "../kit/plan.ts";
import { lotsByUrgency, type Shown } from "../kit/say-lot.ts";

/** A member's meals to come and what is given to each, as they are now. */
export interface Sight {
  readonly stock: Stock;
  readonly shown: readonly Shown[];
  readonly wishes: MealWishes;
  readonly allocation: Allocation;
  readonly now: Instant;
  readonly zone: string;
  readonly today: PlainDate;
}

export async function look({ stores, member, now }: Context): Promise<Sight> {
  const own = (await stores.members.find(member.id)) ?? member;
  const stock = await loadStock(stores, own);
  const wishes = await stores.meals.wishes(own.id);
  const { zone } = own.choice;
  const { allocation } = planFor(stock, wishes, own.choice, now);
  const today = dateIn(now, zone);
  return { stock, shown: lotsByUrgency(stock), wishes, allocation, now, zone, today };
}

/** A meal of one day, whether it is eaten from stock, skipped or eaten out. */
export interface Meal {
  readonly slot: MealSlot;
  readonly mealId: SlotRuleId;
  readonly exception: MealException | null;
  readonly servings: readonly Serving[];
}

/** Every meal from now on to so many days ahead, in order of time; those that are left out included. */
export function mealsAhead(
  { wishes, allocation, now, zone }: Sight,
  days: number,
): readonly Meal[] {
  const said = new Map(wishes.exceptions.map((one) => [mealKey(one), one]));
  const served = groupBy(allocation.servings, ({ slot }) => slot.key);
  return mealSlots(wishes.rules, now, zone, days).flatMap((slot): readonly Meal[] => {
    const rule = wishes.rules.find(({ id }) => slot.key.startsWith(`${id}/`));
    if (rule === undefined) return [];
    const exception = said.get(slot.key) ?? null;
    return [{ slot, mealId: rule.id, exception, servings: served.get(slot.key) ?? [] }];
  });
}

export function groupBy<Item>(
  list: readonly Item[],
  keyOf: (item: Item) => string,
): ReadonlyMap<string, readonly Item[]> {
  const groups = new Map<string, Item[]>();
  for (const item of list) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [item]);
    else group.push(item);
  }
  return groups;
}

/** The lot that a serving comes from, with its batch. */
export function shownOf({ shown }: Sight, serving: Serving): Shown | null {
  return shown.find(({ lot }) => lot.id === serving.lotId) ?? null;
}
