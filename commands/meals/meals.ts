import { z } from "zod";
import type { MealRule } from "../../shared/allocation/types.ts";
import { slotRuleId } from "../../shared/ids.ts";
import { fold } from "../../shared/words/fold.ts";
import { count } from "../../shared/words/plural.ts";
import { writeTime, writeWeekday } from "../../shared/words/write-when.ts";
import { command, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { optionalText, portionsText, timeText, weekdaysText } from "../kit/options.ts";
import { replanMember } from "../kit/plan.ts";
import { writePress } from "../kit/press.ts";
import { type Reply, reply, rows, text } from "../kit/reply.ts";

const MOST_RULES = 12;
const MOST_PORTIONS = 20;

export const meals = command({
  path: ["meals"],
  description: "Which meals you eat from stock: I plan what to freeze and when to thaw by them",
  who: "everyone",
  options: [
    {
      name: "days",
      description: "Weekdays, such as Mon-Fri, or Sat Sun, or every day",
      required: false,
      kind: "text",
    },
    {
      name: "time",
      description: "Time of the meal, such as 12:30 or 7pm",
      required: false,
      kind: "text",
    },
    {
      name: "portions",
      description: "Portions eaten at it; 1 if you leave it out",
      required: false,
      kind: "text",
    },
    {
      name: "name",
      description: "What you call it, such as lunch; the same name again replaces it",
      required: false,
      kind: "text",
    },
    {
      name: "remove",
      description: "Name of a meal to take off the list",
      required: false,
      kind: "text",
      complete: completeMeal,
    },
  ],
  input: z.object({
    days: weekdaysText.optional(),
    time: timeText.optional(),
    portions: portionsText.optional(),
    name: optionalText(30),
    remove: optionalText(30),
  }),
  handle: async (context, input) => {
    const before = await context.stores.meals.list(context.member.id);
    if (input.remove !== undefined) return removed(context, before, input.remove);
    if (Object.values(input).every((value) => value === undefined)) return listed(before, null);
    return added(context, before, input);
  },
  actions: {
    remove: async (context, args) => {
      const before = await context.stores.meals.list(context.member.id);
      const rule = before.find((one) => one.id === args[0]);
      if (rule === undefined) return listed(before, "That meal is off the list already.");
      return removed(context, before, rule.name);
    },
  },
});

interface Wish {
  readonly days?: readonly number[] | undefined;
  readonly time?: MealRule["time"] | undefined;
  readonly portions?: number | undefined;
  readonly name?: string | undefined;
}

async function added(context: Context, before: readonly MealRule[], wish: Wish): Promise<Reply> {
  if (wish.days === undefined || wish.time === undefined) throw needsBoth();
  const name = wish.name ?? nameByHour(wish.time.hour);
  const was = before.find((one) => fold(one.name) === fold(name));
  const others = before.filter((rule) => fold(rule.name) !== fold(name));
  if ((wish.portions ?? 1) > MOST_PORTIONS) {
    throw new Refusal(`A meal takes at most ${MOST_PORTIONS} portions from stock.`);
  }
  if (others.length >= MOST_RULES) {
    throw new Refusal(
      `That is more than ${MOST_RULES} meals. Take one off first with /meals remove:name.`,
    );
  }
  const rule: MealRule = {
    // The id stays when a meal is replaced: what was told about it is not told again.
    id: was?.id ?? slotRuleId(context.newId()),
    name,
    weekdays: wish.days,
    time: wish.time,
    portions: wish.portions ?? 1,
  };
  const after = [...others, rule];
  await replanMember(context.stores, context.member, context.now, { meals: after });
  const lead =
    was === undefined
      ? "Noted"
      : `Changed (it was ${writeWeekdays(was.weekdays)} ${writeTime(was.time)})`;
  return listed(after, `${lead}: ${sayRule(rule)}.`);
}

function nameByHour(hour: number): string {
  if (hour < 10) return "breakfast";
  return hour < 16 ? "lunch" : "dinner";
}

function needsBoth(): Refusal {
  return new Refusal(
    "A meal needs its days and its time: type /meals days:Mon-Fri time:12:30 portions:1 name:lunch.",
  );
}

async function completeMeal(
  context: Context,
  typed: string,
): Promise<readonly { label: string; value: string }[]> {
  const list = await context.stores.meals.list(context.member.id);
  return list
    .filter((rule) => fold(rule.name).includes(fold(typed)))
    .map((rule) => ({ label: sayRule(rule), value: rule.name }));
}

async function removed(
  context: Context,
  before: readonly MealRule[],
  name: string,
): Promise<Reply> {
  const after = before.filter((rule) => fold(rule.name) !== fold(name));
  if (after.length === before.length) {
    throw new Refusal(`There is no meal called “${name}”. Type /meals to see the list.`);
  }
  await replanMember(context.stores, context.member, context.now, { meals: after });
  return listed(after, `Taken off: ${name}.`);
}

/** "Mon-Fri", "every day", "Mon, Wed, Sat": three or more in a row are a span. */
function writeWeekdays(weekdays: readonly number[]): string {
  const days = [...weekdays].sort((a, b) => a - b);
  const [first] = days;
  const last = days.at(-1);
  if (first === undefined || last === undefined) return "never";
  if (days.length === 7) return "every day";
  const inARow = last - first === days.length - 1;
  return inARow && days.length > 2
    ? `${writeWeekday(first)}-${writeWeekday(last)}`
    : days.map(writeWeekday).join(", ");
}

function sayRule(rule: MealRule): string {
  return `${rule.name}, ${writeWeekdays(rule.weekdays)} ${writeTime(rule.time)}, ${count(rule.portions, "portion")}`;
}

function listed(rules: readonly MealRule[], lead: string | null): Reply {
  if (rules.length === 0) {
    return reply(lead ?? "No meals are eaten from stock yet.", {
      parts: [
        text(
          "Type /meals days:Mon-Fri time:12:30 name:lunch, and I plan what to freeze and when to thaw.",
        ),
      ],
    });
  }
  const week = rules.reduce((sum, rule) => sum + rule.portions * rule.weekdays.length, 0);
  return reply(lead ?? `${count(week, "portion")} a week from stock.`, {
    parts: [
      rows(
        "Meals from stock",
        rules.map((rule) => ({
          label: rule.name,
          figure: `${writeWeekdays(rule.weekdays)} ${writeTime(rule.time)}`,
          note: count(rule.portions, "portion"),
        })),
      ),
    ],
    buttons: rules.slice(0, 9).map((rule) => ({
      id: writePress("meals", "remove", rule.id),
      label: `Remove ${rule.name}`.slice(0, 34),
      weight: "plain" as const,
    })),
  });
}
