import { z } from "zod";
import { command } from "../kit/command.ts";
import {
  gramsText,
  optionalText,
  portionsText,
  requiredText,
  zeroOrMoreText,
} from "../kit/options.ts";
import {
  completePart,
  completeRecipe,
  completeSwap,
  recipeOrRefuse,
} from "../kit/recipe-options.ts";
import { hasOneSize, ONE_SIZE, requestOf } from "../recipe/card-asked.ts";
import { cardLogForm, pressedLog, readCardLog } from "./card-log.ts";
import { logBatch } from "./log-batch.ts";
import { readTypedSplit } from "./say-split.ts";

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
      name: "have",
      description: "Instead of portions: what went in, such as 850 g thigh; the scarcest decides",
      required: false,
      kind: "text",
    },
    {
      name: "fill",
      description:
        "Instead of portions: what you filled, by cooked weight, such as 6 boxes of 400 g",
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
      name: "split",
      description: "Or where it all went: 3 fridge, 5 freezer; 2 x 2 fridge, rest freezer",
      required: false,
      kind: "text",
    },
    {
      name: "without",
      description: "Parts or foods you left out, such as tortillas, cheese",
      required: false,
      kind: "text",
      complete: completePart,
    },
    {
      name: "swap",
      description: "Swaps you took, by the food you took instead",
      required: false,
      kind: "text",
      complete: completeSwap,
    },
  ],
  input: z
    .object({
      recipe: requiredText("recipe", 200),
      portions: portionsText.optional(),
      have: optionalText(300),
      fill: optionalText(80),
      cooked: optionalText(40),
      weight: gramsText.optional(),
      freeze: zeroOrMoreText.optional(),
      split: optionalText(200),
      without: optionalText(200),
      swap: optionalText(200),
    })
    .refine(hasOneSize, { message: ONE_SIZE })
    .refine(({ freeze, split }) => freeze === undefined || split === undefined, {
      message: "Type split or freeze, not both: split says what was frozen.",
    }),
  handle: async (context, input) => {
    const published = await recipeOrRefuse(context, input.recipe);
    const { split, portions } = readTypedSplit(input);
    const request = requestOf(context, published.recipe, { ...input, portions });
    return logBatch(context, published, request, { ...input, split });
  },
  forms: { form: async (context, args) => cardLogForm(await pressedLog(context, args)) },
  submissions: {
    done: async (context, args, filled) => {
      const { published, request } = await pressedLog(context, args);
      return logBatch(context, published, request, readCardLog(filled));
    },
  },
});
