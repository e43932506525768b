import { Temporal } from "temporal-polyfill";
import { z } from "zod";
import { command, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import type { Reply } from "../kit/reply.ts";
import { clear, type LeftOut, leaveOut } from "./leave-out.ts";
import { look, type Meal, mealsAhead, type Sight } from "./look.ts";
import { mealReply } from "./meal-reply.ts";
import { pin, pinnableAt } from "./pin.ts";
import { mealsIn } from "./read-meals.ts";
import { weekReply } from "./week-reply.ts";

/** A meal of a button that was pressed weeks later is still found. */
const BUTTON_DAYS = 62;

const keyArgument = z.string().regex(/^[0-9a-z]{1,32}\/\d{4}-\d{2}-\d{2}$/u);
const idArgument = z.string().regex(/^[0-9a-z]{1,32}$/u);
const dateArgument = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/u)
  .refine((text) => isDate(text))
  .transform((text) => Temporal.PlainDate.from(text));
const spanArguments = z.tuple([idArgument, dateArgument, dateArgument]);

export const planShow = command({
  path: ["plan", "show"],
  description: "Your coming week: each meal, what it takes from where, and why",
  who: "everyone",
  options: [],
  input: z.object({}),
  handle: async (context) => weekReply(await look(context)),
  actions: {
    week: async (context) => weekReply(await look(context)),
    meal: async (context, args) => {
      const sight = await look(context);
      const meal = mealOf(sight, args);
      return mealReply(sight, meal, pinnableAt(context, sight, meal));
    },
    skip: (context, args) => pressLeaveOut(context, args, "skip"),
    out: (context, args) => pressLeaveOut(context, args, "out"),
    pin: async (context, args) => {
      const sight = await look(context);
      const id = idArgument.safeParse(args[1]);
      const batch = sight.stock.batches.find((one) => one.id === id.data);
      const isLeft = sight.stock.lots.some(({ batchId }) => batchId === batch?.id);
      if (batch === undefined || !isLeft) {
        throw new Refusal("Nothing of that is left. Type /plan show to see what is planned.");
      }
      return pin(context, sight, mealOf(sight, args), [batch]);
    },
    clear: async (context, args) => {
      const parsed = spanArguments.safeParse(args);
      if (!parsed.success) throw stale();
      const [mealId, from, until] = parsed.data;
      const sight = await look(context);
      const far = sight.today.add({ days: 2 * BUTTON_DAYS });
      const meals = mealsIn(sight, {
        from,
        until: Temporal.PlainDate.compare(far, until) < 0 ? far : until,
      }).filter((meal) => mealId === "all" || meal.mealId === mealId);
      if (meals.length === 0) throw stale();
      return clear(context, meals);
    },
  },
});

async function pressLeaveOut(
  context: Context,
  args: readonly string[],
  kind: LeftOut,
): Promise<Reply> {
  return leaveOut(context, [mealOf(await look(context), args)], kind);
}

/** The presser's own meal that a button names. */
function mealOf(sight: Sight, args: readonly string[]): Meal {
  const key = keyArgument.safeParse(args[0]);
  const meal = mealsAhead(sight, BUTTON_DAYS).find(({ slot }) => slot.key === key.data);
  if (meal === undefined) throw stale();
  return meal;
}

function stale(): Refusal {
  return new Refusal("That meal is over or off your list. Type /plan show for the coming ones.");
}

function isDate(text: string): boolean {
  try {
    Temporal.PlainDate.from(text);
    return true;
  } catch {
    return false;
  }
}
