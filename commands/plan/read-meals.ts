import type { MealRule } from "../../shared/allocation/types.ts";
import { daysBetween, isDateBefore, type PlainDate } from "../../shared/time.ts";
import { fold } from "../../shared/words/fold.ts";
import { count } from "../../shared/words/plural.ts";
import { excerpt } from "../../shared/words/problems.ts";
import { readDayAhead } from "../../shared/words/read-day-ahead.ts";
import { writeDate } from "../../shared/words/write-when.ts";
import { Refusal } from "../kit/command.ts";
import { type Meal, mealsAhead, type Sight } from "./look.ts";

/** The longest span of days that is left out at once. */
const MOST_DAYS = 62;

export interface Span {
  readonly from: PlainDate;
  readonly until: PlainDate;
}

/** The meals that a member names by a day, or a span of days, and the name of a meal; at least one. */
export function readMeals(
  sight: Sight,
  typed: {
    readonly day: string;
    readonly until?: string | undefined;
    readonly meal?: string | undefined;
  },
): readonly Meal[] {
  if (sight.wishes.rules.length === 0) {
    throw new Refusal(
      "No meals are set yet. Type /meals days:Mon-Fri time:12:30 name:lunch first.",
    );
  }
  const rule = typed.meal === undefined ? null : ruleNamed(sight.wishes.rules, typed.meal);
  const days = readDay(typed.day, sight.today);
  for (const from of days) {
    const until = typed.until === undefined ? from : lastDay(typed.until, from);
    const meals = mealsIn(sight, { from, until }).filter(
      ({ mealId }) => rule === null || mealId === rule.id,
    );
    if (meals.length > 0) return meals;
  }
  const [first = sight.today] = days;
  const what = rule === null ? "meal from stock" : rule.name;
  throw new Refusal(
    `There is no ${what} to come on ${writeDate(first)}. Type /meals to see which days have one.`,
  );
}

export function mealsIn(sight: Sight, { from, until }: Span): readonly Meal[] {
  return mealsAhead(sight, daysBetween(sight.today, until)).filter(
    ({ slot }) => !isDateBefore(slot.date, from),
  );
}

function readDay(typed: string, today: PlainDate): readonly PlainDate[] {
  const read = readDayAhead(typed, today);
  if (read.ok) return read.value;
  throw new Refusal(
    read.problem.code === "not in the future"
      ? `“${excerpt(typed)}” is over. Type a day to come, such as Thu or 15 Oct.`
      : `“${excerpt(typed)}” is not a day to come that I understand: type such as Thu, tomorrow or 15 Oct.`,
  );
}

function lastDay(typed: string, from: PlainDate): PlainDate {
  const dates = readDay(typed, from);
  const [until = from] = dates;
  if (daysBetween(from, until) >= MOST_DAYS) {
    throw new Refusal(
      `From ${writeDate(from)} to ${writeDate(until)} is more than ${count(MOST_DAYS, "day")}. Take a shorter span.`,
    );
  }
  return until;
}

function ruleNamed(rules: readonly MealRule[], typed: string): MealRule {
  const wanted = fold(typed);
  const same = rules.find(({ name }) => fold(name) === wanted);
  const alike = rules.filter(({ name }) => fold(name).startsWith(wanted));
  const [only] = alike;
  if (same !== undefined) return same;
  if (only !== undefined && alike.length === 1) return only;
  throw new Refusal(
    `There is no meal called “${excerpt(typed)}”. Yours are: ${rules.map(({ name }) => name).join(", ")}.`,
  );
}
