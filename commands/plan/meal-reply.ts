import { writePress } from "../kit/press.ts";
import { type Button, type Choice, type Reply, reply, rows } from "../kit/reply.ts";
import { portionsOf, untilOf } from "../kit/say-lot.ts";
import type { Meal, Sight } from "./look.ts";
import { isLeftOut, nameOf, sayMeal, sources } from "./meal-words.ts";
import { clearButton } from "./week-reply.ts";

/** One meal with all that can be said of it. `pinnable` are the batches that it can be kept for. */
export function mealReply(sight: Sight, meal: Meal, pinnable: readonly string[]): Reply {
  const from = isLeftOut(meal) ? [] : sources(sight, meal);
  return reply(`${nameOf(meal, sight.zone)}: ${sayMeal(sight, meal)}.`, {
    parts:
      from.length === 0
        ? []
        : [
            rows(
              null,
              from.map(({ title, note }) => ({ label: title, figure: note })),
            ),
          ],
    buttons: [
      ...(meal.exception === null ? [] : [clearButton(meal, "Plan it again")]),
      ...(meal.exception?.kind === "skip" ? [] : [button("skip", "Skip it", meal)]),
      ...(meal.exception?.kind === "out" ? [] : [button("out", "Eating out", meal)]),
      { id: writePress("plan show", "week"), label: "Back", weight: "plain" },
    ],
    choices: pinChoice(sight, meal, pinnable),
  });
}

function button(action: string, label: string, { slot }: Meal): Button {
  return { id: writePress("plan show", action, slot.key), label, weight: "plain" };
}

function pinChoice(sight: Sight, { slot }: Meal, pinnable: readonly string[]): readonly Choice[] {
  const options = pinnable.slice(0, 25).flatMap((batchId) => {
    const own = sight.shown.filter(({ batch }) => batch.id === batchId);
    const [first] = own;
    if (first === undefined) return [];
    const hint = own.map(
      (one) =>
        `${portionsOf(one)} in the ${one.lot.place === "freezer" ? "freezer" : "fridge"}, ${untilOf(one, sight.today)}`,
    );
    return [
      {
        value: batchId,
        label: first.batch.title.slice(0, 100),
        hint: hint.join("; ").slice(0, 100),
      },
    ];
  });
  if (options.length === 0) return [];
  return [
    {
      id: writePress("plan show", "pin", slot.key),
      placeholder: `Pin a dish to ${slot.name}…`.slice(0, 100),
      options,
    },
  ];
}
