import { z } from "zod";
import { scaleRecipe } from "../../shared/recipe/scale.ts";
import { figuresOn } from "../../shared/target/holding.ts";
import { dateIn } from "../../shared/time.ts";
import { command, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { optionalText, portionsText, requiredText, wordText } from "../kit/options.ts";
import type { PublishedRecipe } from "../kit/ports.ts";
import {
  completePart,
  completeRecipe,
  completeSwap,
  recipeOrRefuse,
} from "../kit/recipe-options.ts";
import { sayScaleProblem } from "../kit/say-problem.ts";
import { hasOneSize, ONE_SIZE, requestOf } from "./card-asked.ts";
import type { Card, CardReader } from "./card-model.ts";
import { cardLabelReply, cardReply } from "./card-reply.ts";
import { type CardRequest, readPressedCard } from "./card-request.ts";
import { stepsReply } from "./card-steps.ts";
import { changesSince } from "./changes-since.ts";

export const recipeCard = command({
  path: ["recipe", "card"],
  description: "A recipe at your size: by portions, by what you have, or by what you fill",
  who: "everyone",
  options: [
    {
      name: "recipe",
      description: "Which recipe",
      required: true,
      kind: "text",
      complete: completeRecipe,
    },
    {
      name: "portions",
      description: "How many portions; as the recipe says if you leave it out",
      required: false,
      kind: "text",
    },
    {
      name: "have",
      description:
        "What you have, such as 850 g thigh, or 850 g thigh, 400 g beans: the scarcest decides",
      required: false,
      kind: "text",
    },
    {
      name: "fill",
      description: "What you fill, by cooked weight, such as 6 boxes of 400 g",
      required: false,
      kind: "text",
    },
    {
      name: "without",
      description: "Parts or foods to leave out, such as tortillas, cheese",
      required: false,
      kind: "text",
      complete: completePart,
    },
    {
      name: "swap",
      description: "Swaps to take, by the food you take instead",
      required: false,
      kind: "text",
      complete: completeSwap,
    },
    {
      name: "units",
      description: "Grams, or pounds and ounces; as the recipe says if you leave it out",
      required: false,
      kind: "text",
      choices: ["metric", "us"],
    },
    {
      name: "tray",
      description: "Your oven tray inside, such as 40x30 cm: how many trays and loads it takes",
      required: false,
      kind: "text",
    },
    {
      name: "start",
      description: "When you start to marinate, such as now or 18:00: until when it may lie",
      required: false,
      kind: "text",
    },
  ],
  input: z
    .object({
      recipe: requiredText("recipe", 200),
      portions: portionsText.optional(),
      have: optionalText(300),
      fill: optionalText(80),
      without: optionalText(200),
      swap: optionalText(200),
      units: wordText(["metric", "us"], "Type units:metric or units:us.").optional(),
      tray: optionalText(60),
      start: optionalText(60),
    })
    .refine(hasOneSize, { message: ONE_SIZE }),
  handle: async (context, input) => {
    const published = await recipeOrRefuse(context, input.recipe);
    return cardReply(await cardOf(context, published, requestOf(context, published.recipe, input)));
  },
  actions: {
    show: async (context, args) => cardReply(await pressedCard(context, args)),
    // Behind a reminder, whose id comes first.
    news: async (context, [, ...args]) => cardReply(await pressedCard(context, args)),
    steps: async (context, args) => stepsReply(await pressedCard(context, args)),
    label: async (context, args) => cardLabelReply(await pressedCard(context, args)),
  },
});

async function cardOf(
  context: Context,
  published: PublishedRecipe,
  request: CardRequest,
): Promise<Card> {
  const { foods } = context;
  const scaled = scaleRecipe(published.recipe, foods, request);
  if (!scaled.ok) throw new Refusal(sayScaleProblem(scaled.problem));
  const reader = await readerOf(context, published);
  return { published, request, scaled: scaled.value, foods, reader };
}

async function readerOf(context: Context, published: PublishedRecipe): Promise<CardReader> {
  const { stores, member, group, now } = context;
  const rules = await stores.targets.list(member.id);
  const today = figuresOn(rules, dateIn(now, member.choice.zone));
  return {
    profile: member.profile,
    style: group.labelStyle,
    target: today?.figures ?? null,
    zone: member.choice.zone,
    changes: await changesSince(context, published),
  };
}

async function pressedCard(context: Context, args: readonly string[]): Promise<Card> {
  const pressed = readPressedCard(args);
  const { id, recipesVersion } = context.group;
  const published = await context.stores.recipes.find(id, pressed.id, recipesVersion);
  if (published === null) {
    throw new Refusal("That recipe is no longer here: type /recipe find to see which there are.");
  }
  return cardOf(context, published, pressed.requestFor(published.recipe));
}
