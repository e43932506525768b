import { z } from "zod";
import type { MealException } from "../../shared/allocation/types.ts";
import { count } from "../../shared/words/plural.ts";
import { writeDate } from "../../shared/words/write-when.ts";
import { command } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { replanMember } from "../kit/plan.ts";
import { writePress } from "../kit/press.ts";
import type { Button, Reply } from "../kit/reply.ts";
import { look, type Meal } from "./look.ts";
import { nameOf } from "./meal-words.ts";
import { spanInput, spanOptions } from "./options.ts";
import { readMeals } from "./read-meals.ts";
import { weekReply } from "./week-reply.ts";

/** Leaving a meal out because it is skipped or eaten elsewhere; the plan is the same, the words are not. */
export type LeftOut = "skip" | "out";

export const planSkip = command({
  path: ["plan", "skip"],
  description: "Leave out a meal, or all meals of some days: what was for it goes elsewhere",
  who: "everyone",
  options: spanOptions,
  input: z.object(spanInput),
  handle: async (context, input) =>
    leaveOut(context, readMeals(await look(context), input), "skip"),
});

export const planOut = command({
  path: ["plan", "out"],
  description: "Eat out at a meal, or on some days: what was for it goes elsewhere",
  who: "everyone",
  options: spanOptions,
  input: z.object(spanInput),
  handle: async (context, input) => leaveOut(context, readMeals(await look(context), input), "out"),
});

export const planClear = command({
  path: ["plan", "clear"],
  description: "Take back what you skipped, eat out or pinned on a day: it is planned again",
  who: "everyone",
  options: spanOptions,
  input: z.object(spanInput),
  handle: async (context, input) => clear(context, readMeals(await look(context), input)),
});

/** Leaves the meals out and shows the plan that follows. */
export async function leaveOut(
  context: Context,
  meals: readonly Meal[],
  kind: LeftOut,
): Promise<Reply> {
  const set = meals.map(({ mealId, slot }): MealException => ({ mealId, date: slot.date, kind }));
  await replanMember(context.stores, context.member, context.now, {
    exceptions: { set, clear: [] },
  });
  const what = nameAll(meals, context.member.choice.zone);
  const lead = kind === "skip" ? `Skipped: ${what}.` : `Eating out: ${what}.`;
  return weekReply(await look(context), lead, { buttons: againButton(meals) });
}

/** Takes back what was said of the meals and shows the plan that follows. */
export async function clear(context: Context, meals: readonly Meal[]): Promise<Reply> {
  const said = meals.filter(({ exception }) => exception !== null);
  const zone = context.member.choice.zone;
  if (said.length === 0) {
    return weekReply(await look(context), `Nothing was said of ${nameAll(meals, zone)}.`);
  }
  await replanMember(context.stores, context.member, context.now, {
    exceptions: { set: [], clear: said.map(({ mealId, slot }) => ({ mealId, date: slot.date })) },
  });
  return weekReply(await look(context), `Planned again: ${nameAll(said, zone)}.`);
}

/** "Mon 12 Oct, 12:30 lunch", "5 meals, Mon 12 Oct to Fri 16 Oct". */
function nameAll(meals: readonly Meal[], zone: string): string {
  const [first] = meals;
  const last = meals.at(-1);
  if (first === undefined || last === undefined) return "no meal";
  if (meals.length === 1) return nameOf(first, zone);
  const days = first.slot.date.equals(last.slot.date)
    ? writeDate(first.slot.date)
    : `${writeDate(first.slot.date)} to ${writeDate(last.slot.date)}`;
  return `${count(meals.length, "meal")}, ${days}`;
}

function againButton(meals: readonly Meal[]): readonly Button[] {
  const [first] = meals;
  const last = meals.at(-1);
  if (first === undefined || last === undefined) return [];
  const isOne = meals.every(({ mealId }) => mealId === first.mealId);
  const id = writePress(
    "plan show",
    "clear",
    isOne ? first.mealId : "all",
    first.slot.date.toString(),
    last.slot.date.toString(),
  );
  return [{ id, label: meals.length === 1 ? "Plan it again" : "Plan them again", weight: "plain" }];
}
