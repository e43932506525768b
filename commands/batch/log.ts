import { z } from "zod";
import { lotId } from "../../shared/ids.ts";
import { decideLog } from "../../shared/stock/decide.ts";
import { dateIn } from "../../shared/time.ts";
import { command, Refusal } from "../kit/command.ts";
import {
  gramsText,
  optionalText,
  portionsText,
  requiredText,
  zeroOrMoreText,
} from "../kit/options.ts";
import { changeStock } from "../kit/plan.ts";
import { completePart, completeRecipe, recipeOrRefuse } from "../kit/recipe-options.ts";
import { sayStockProblem } from "../kit/say-stock-problem.ts";
import { cookedBatch } from "./cooked-batch.ts";
import { loggedReply } from "./logged.ts";

export const batchLog = command({
  path: ["batch", "log"],
  description: "Record what you cooked: dates, freezing and reminders follow",
  who: "everyone",
  options: [
    {
      name: "recipe",
      description: "What you cooked",
      required: true,
      kind: "text",
      complete: completeRecipe,
    },
    {
      name: "portions",
      description: "How many portions it made; as the recipe says if you leave it out",
      required: false,
      kind: "text",
    },
    {
      name: "cooked",
      description: "When the cooking ended, such as now, 18:30, yesterday 18:30, Sun",
      required: false,
      kind: "text",
    },
    {
      name: "weight",
      description: "Cooked weight of it all from your scale, such as 2.4 kg",
      required: false,
      kind: "text",
    },
    {
      name: "freeze",
      description: "How many portions went straight into the freezer",
      required: false,
      kind: "text",
    },
    {
      name: "without",
      description: "An optional part you left out",
      required: false,
      kind: "text",
      complete: completePart,
    },
  ],
  input: z.object({
    recipe: requiredText("recipe", 120),
    portions: portionsText.optional(),
    cooked: optionalText(40),
    weight: gramsText.optional(),
    freeze: zeroOrMoreText.optional(),
    without: optionalText(100),
  }),
  handle: async (context, input) => {
    const published = await recipeOrRefuse(context, input.recipe);
    const { batch, alerts } = cookedBatch(context, published, input);
    const { stores, member, now, newId, causeId } = context;
    const zone = member.choice.zone;
    const changed = await changeStock({
      stores,
      member,
      now,
      causeId,
      newId,
      newBatch: batch,
      decide: () =>
        decideLog(batch, input.freeze ?? 0, { at: now, on: dateIn(now, zone) }, () =>
          lotId(newId()),
        ),
    });
    if (!changed.ok) throw new Refusal(sayStockProblem(changed.problem, zone));
    const rules = await stores.meals.list(member.id);
    return loggedReply({
      ...changed.value,
      batch,
      froze: input.freeze ?? 0,
      now,
      zone,
      zoneIsOwn: member.zoneIsOwn,
      hasMeals: rules.length > 0,
      alerts,
    });
  },
});
