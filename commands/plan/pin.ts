import { z } from "zod";
import { type Kitchen, kitchenOf } from "../../shared/allocation/kitchen.ts";
import type { MealException, Surplus } from "../../shared/allocation/types.ts";
import { mealsFor, whyNotPinned } from "../../shared/allocation/why-not-pinned.ts";
import type { Batch } from "../../shared/stock/types.ts";
import { isBefore } from "../../shared/time.ts";
import { fold } from "../../shared/words/fold.ts";
import { count } from "../../shared/words/plural.ts";
import { excerpt } from "../../shared/words/problems.ts";
import { command, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { requiredText } from "../kit/options.ts";
import { mealsAt, planFor, replanMember, wakingHours, wishesAfter } from "../kit/plan.ts";
import type { Reply } from "../kit/reply.ts";
import { look, type Meal, type Sight } from "./look.ts";
import { nameOf } from "./meal-words.ts";
import { dayOption, dayText, mealOption, spanInput } from "./options.ts";
import { readMeals } from "./read-meals.ts";
import { sayPinProblem } from "./say-pin-problem.ts";
import { clearButton, weekReply } from "./week-reply.ts";

export const planPin = command({
  path: ["plan", "pin"],
  description: "Keep a dish for a meal, such as the salmon for Thursday lunch",
  who: "everyone",
  options: [
    {
      name: "what",
      description: "A dish that you have in stock",
      required: true,
      kind: "text",
      complete: completeDish,
    },
    dayOption,
    { ...mealOption, description: "Which meal, such as lunch; needed where a day has several" },
  ],
  input: z.object({ what: requiredText("what", 100), day: dayText, meal: spanInput.meal }),
  handle: async (context, input) => {
    const sight = await look(context);
    const meals = readMeals(sight, input);
    const [meal] = meals;
    if (meal === undefined || meals.length > 1) {
      const names = meals.map(({ slot }) => slot.name).join(", ");
      throw new Refusal(`That day has several meals: add meal: with one of ${names}.`);
    }
    return pin(context, sight, meal, dishesNamed(sight, input.what));
  },
});

async function completeDish(context: Context, typed: string) {
  const { shown } = await look(context);
  const titles = new Set(shown.map(({ batch }) => batch.title));
  return [...titles]
    .filter((title) => fold(title).includes(fold(typed)))
    .slice(0, 25)
    .map((title) => ({ label: title.slice(0, 100), value: title.slice(0, 100) }));
}

/** The batches of a dish in stock, the one that must go first before the others. */
function dishesNamed({ shown }: Sight, typed: string): readonly Batch[] {
  const batches = [...new Set(shown.map(({ batch }) => batch))];
  const wanted = fold(typed);
  const same = batches.filter(({ title }) => fold(title) === wanted);
  const alike = batches.filter(({ title }) => fold(title).includes(wanted));
  const found = same.length > 0 ? same : alike;
  const titles = [...new Set(found.map(({ title }) => title))];
  if (titles.length === 1) return found;
  const [more, known] = [titles.slice(0, 5), [...new Set(batches.map(({ title }) => title))]];
  throw new Refusal(
    titles.length > 1
      ? `“${excerpt(typed)}” may be ${more.join(", or ")}. Type more of its name.`
      : `“${excerpt(typed)}” is not in your stock. ${known.length === 0 ? "Nothing is: log what you cook with /batch log." : `You have ${known.slice(0, 5).join(", ")}.`}`,
  );
}

/** Keeps one of these batches for a meal, the first that can be; else says why not, and what would do. */
export async function pin(
  context: Context,
  sight: Sight,
  meal: Meal,
  batches: readonly Batch[],
): Promise<Reply> {
  for (const batch of batches) {
    const said: MealException = {
      mealId: meal.mealId,
      date: meal.slot.date,
      kind: "pin",
      batchId: batch.id,
    };
    const exceptions = { set: [said], clear: [] };
    const after = planFor(
      sight.stock,
      wishesAfter(sight.wishes, { exceptions }),
      context.member.choice,
      sight.now,
    ).allocation;
    const own = after.servings.filter(
      (one) => one.slot.key === meal.slot.key && one.why === "pinned",
    );
    if (own.length === 0) continue;
    await replanMember(context.stores, context.member, context.now, { exceptions });
    const now = await look(context);
    return weekReply(now, `Pinned: ${batch.title}, ${nameOf(meal, sight.zone)}.`, {
      lines: costLines(sight.allocation.surplus, after.surplus),
      buttons: [clearButton(meal, "Undo the pin")],
    });
  }
  throw new Refusal(whyNot(context, sight, meal, batches));
}

/** What a pin costs: portions that had a meal before and have none now. */
function costLines(before: readonly Surplus[], after: readonly Surplus[]): readonly string[] {
  const spare = (list: readonly Surplus[]): number =>
    list.filter(({ advice }) => advice === "spare").reduce((sum, one) => sum + one.portions, 0);
  const more = spare(after) - spare(before);
  return more > 0
    ? [`The pin leaves ${count(more, "portion")} of something else without a meal:`]
    : [];
}

/** The kitchen with this meal in it, though it be skipped as yet. */
function kitchenWith({ member, now }: Context, sight: Sight, meal: Meal): Kitchen {
  const { slot, mealId } = meal;
  const exceptions = { set: [], clear: [{ mealId, date: slot.date }] };
  const slots = mealsAt(wishesAfter(sight.wishes, { exceptions }), member.choice, now);
  const ahead = slots.filter(({ at }) => !isBefore(at, now));
  return kitchenOf(sight.stock, ahead, now, wakingHours(member.choice));
}

/** The batches that can be eaten at a meal, first expired first. */
export function pinnableAt(context: Context, sight: Sight, meal: Meal): readonly string[] {
  const kitchen = kitchenWith(context, sight, meal);
  const at = kitchen.slots.findIndex(({ key }) => key === meal.slot.key);
  const batches = [...new Set(sight.shown.map(({ batch }) => batch.id))];
  return at < 0 ? [] : batches.filter((id) => mealsFor(kitchen, id).includes(at));
}

function whyNot(
  context: Context,
  sight: Sight,
  meal: Meal,
  batches: readonly Batch[],
): readonly string[] {
  const kitchen = kitchenWith(context, sight, meal);
  const [batch] = batches;
  const at = kitchen.slots.findIndex(({ key }) => key === meal.slot.key);
  const name = nameOf(meal, sight.zone);
  if (batch === undefined || at < 0) {
    return [`${name} is too far ahead to pin: I plan four weeks ahead.`];
  }
  const problem = whyNotPinned(kitchen, batch.id, at, sight.now);
  return [sayPinProblem(problem, batch.title, name), whatWouldDo(kitchen, batch, sight.zone)];
}

function whatWouldDo(kitchen: Kitchen, batch: Batch, zone: string): string {
  const names = mealsFor(kitchen, batch.id)
    .flatMap((index) => kitchen.slots[index] ?? [])
    .slice(0, 3)
    .map((slot) => nameOf({ slot }, zone));
  return names.length === 0
    ? "No meal to come can have it: type /stock to see until when it is good."
    : `It can be pinned to ${names.join("; or ")}.`;
}
