import { z } from "zod";
import { findFood } from "../../shared/food/find.ts";
import type { Food } from "../../shared/food/types.ts";
import { foodId } from "../../shared/ids.ts";
import { excerpt } from "../../shared/words/problems.ts";
import { command, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { optionalText, requiredText } from "../kit/options.ts";
import type { Reply } from "../kit/reply.ts";
import { weighTyped } from "./amount.ts";
import { completeFood, foodsFor, isNameOf } from "./food-options.ts";
import { foodReply, whichReply } from "./look-reply.ts";

/** How many foods are offered when several fit. */
const OFFERED = 5;

export const foodLook = command({
  path: ["food", "look"],
  description: "Figures of a food per 100 g or for an amount, its measures, allergens and source",
  who: "everyone",
  options: [
    {
      name: "food",
      description: "Which food, in your own words",
      required: true,
      kind: "text",
      complete: completeFood,
    },
    {
      name: "amount",
      description: "How much of it, such as 250 g, 2 tbsp or 3; 100 g if you leave it out",
      required: false,
      kind: "text",
    },
  ],
  input: z.object({ food: requiredText("food", 100), amount: optionalText(60) }),
  handle: async (context, { food, amount }) => lookUp(context, food, amount),
  actions: {
    show: async (context, args) => {
      const pressed = pressedSchema.safeParse(args);
      const found = pressed.success ? context.foods.byId(pressed.data.id) : null;
      if (!pressed.success || found === null) {
        throw new Refusal("That food is no longer here: type /food look and its name.");
      }
      return shown(context, found, pressed.data.amount, []);
    },
  },
});

const idSchema = z.string().min(1).max(100).transform(foodId);
/** The amount as typed, where one was, and then the food picked. */
const pressedSchema = z.union([
  z.tuple([idSchema]).transform(([id]) => ({ id, amount: undefined })),
  z.tuple([z.string().max(60), idSchema]).transform(([amount, id]) => ({ id, amount })),
]);

function lookUp(context: Context, typed: string, amount: string | undefined): Reply {
  const meant = findFood(context.foods, typed, OFFERED).map(({ food }) => food);
  const fitting = meant.length > 0 ? meant : foodsFor(context.foods, typed).slice(0, OFFERED);
  const [best, ...others] = fitting;
  if (best === undefined) {
    throw new Refusal(
      `No food fits “${excerpt(typed)}”: type its plain name, such as chicken thigh or brown rice, and pick from what is offered while you type.`,
    );
  }
  if (others.length === 0 || isNameOf(best, typed)) return shown(context, best, amount, others);
  return whichReply(excerpt(typed), fitting, amount ?? "");
}

function shown(
  context: Context,
  food: Food,
  amount: string | undefined,
  others: readonly Food[],
): Reply {
  return foodReply(context, food, amount === undefined ? null : weighTyped(food, amount), others);
}
