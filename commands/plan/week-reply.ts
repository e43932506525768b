import { count } from "../../shared/words/plural.ts";
import { writePress } from "../kit/press.ts";
import {
  type Button,
  type Choice,
  type Part,
  type Reply,
  type Row,
  reply,
  rows,
  text,
} from "../kit/reply.ts";
import { surplusLines } from "../kit/say-surplus.ts";
import { type Meal, mealsAhead, type Sight } from "./look.ts";
import {
  brokenPin,
  isLeftOut,
  nameOf,
  openAt,
  sayMeal,
  shortNameOf,
  sources,
} from "./meal-words.ts";

/** How many days ahead the plan is shown. */
const SHOWN_DAYS = 7;
/** The most meals that are listed, and that a list to pick from holds. */
const SHOWN_MEALS = 25;

/** The coming week: each meal, what it takes from where, and why. `lead` is said first. */
export function weekReply(
  sight: Sight,
  lead: string | null = null,
  more: { readonly lines?: readonly string[]; readonly buttons?: readonly Button[] } = {},
): Reply {
  const { wishes, allocation, shown, today } = sight;
  if (wishes.rules.length === 0) {
    return reply("No meals are set, so there is nothing to plan.", {
      parts: [
        text(
          "Type /meals days:Mon-Fri time:12:30 name:lunch, and I plan what to eat, freeze and thaw.",
        ),
      ],
    });
  }
  const meals = mealsAhead(sight, SHOWN_DAYS).slice(0, SHOWN_MEALS);
  const answer = answerOf(sight, meals);
  const listed = withoutBareEnd(meals);
  const lines = [
    ...bareEndLines(sight, meals.slice(listed.length)),
    ...(more.lines ?? []),
    ...surplusLines(allocation, shown, today),
  ];
  return reply(lead ?? answer, {
    parts: [
      ...(lead === null ? [] : [text(answer)]),
      ...(meals.length === 0
        ? []
        : [
            rows(
              null,
              meals.flatMap((meal) => mealRows(sight, meal)),
            ),
          ]),
      ...linesPart(lines),
    ],
    buttons: more.buttons ?? [],
    choices: meals.length === 0 ? [] : [mealChoice(sight, meals)],
  });
}

/** The meals up to the last of which there is more to say than that nothing is there for it. */
function withoutBareEnd(meals: readonly Meal[]): readonly Meal[] {
  const last = meals.findLastIndex((meal) => meal.servings.length > 0 || meal.exception !== null);
  // One such meal is a row like any other.
  return meals.length - last <= 2 ? meals : meals.slice(0, last + 1);
}

function bareEndLines({ zone }: Sight, meals: readonly Meal[]): readonly string[] {
  const [first] = meals;
  return first === undefined
    ? []
    : [`Nothing in stock for ${count(meals.length, "meal")} from ${nameOf(first, zone)} on.`];
}

function answerOf(sight: Sight, meals: readonly Meal[]): string {
  const wanted = meals.filter((meal) => !isLeftOut(meal));
  if (wanted.length === 0) return "No meal from stock in the coming seven days.";
  const served = wanted.filter((meal) => openAt(meal) === 0).length;
  const next = wanted.find((meal) => meal.servings.length > 0);
  const all = `${served} of ${count(wanted.length, "meal")} in seven days ${wanted.length === 1 ? "is" : "are"} covered.`;
  return next === undefined
    ? `Nothing in stock for ${wanted.length === 1 ? "the meal" : "the meals"} of the coming seven days.`
    : `Next: ${sayMeal(sight, next)}, ${nameOf(next, sight.zone)}. ${all}`;
}

function mealRows(sight: Sight, meal: Meal): readonly Row[] {
  const label = nameOf(meal, sight.zone);
  const from = isLeftOut(meal) ? [] : sources(sight, meal);
  const open = openAt(meal);
  const pin = brokenPin(sight, meal);
  const list: Row[] = from.map(({ title, portions, note }, index) => ({
    label: index === 0 ? label : "and",
    figure: portions === 1 ? title : `${count(portions, "portion")} of ${title}`,
    note,
  }));
  if (list.length === 0) list.push({ label, figure: sayMeal(sight, meal) });
  else if (open > 0) list.push({ label: "and", figure: `${count(open, "portion")} not covered` });
  if (pin !== null)
    list.push({ label: "not held", figure: `your pin: ${pin}`, note: "type /plan pin to see why" });
  return list;
}

function linesPart(lines: readonly string[]): readonly Part[] {
  return lines.length === 0 ? [] : [text(...lines)];
}

function mealChoice(sight: Sight, meals: readonly Meal[]): Choice {
  return {
    id: writePress("plan show", "meal"),
    placeholder: "Skip, eat out or pin: pick a meal…",
    options: meals.map((meal) => ({
      value: meal.slot.key,
      label: nameOf(meal, sight.zone).slice(0, 100),
      hint: sayMeal(sight, meal).slice(0, 100),
    })),
  };
}

/** Takes back what was said of a meal. */
export function clearButton(meal: Meal, label = `Plan ${shortNameOf(meal)} again`): Button {
  const { slot, mealId } = meal;
  return {
    id: writePress("plan show", "clear", mealId, slot.date.toString(), slot.date.toString()),
    label: label.slice(0, 34),
    weight: "plain",
  };
}
