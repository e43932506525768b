import { z } from "zod";
import { findLineInHand, readInHand } from "../../shared/recipe/in-hand.ts";
import { type ScaleRequest, scaleRecipe } from "../../shared/recipe/scale.ts";
import type { LineChoice, Recipe } from "../../shared/recipe/types.ts";
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
  resolveSwaps,
  resolveWithout,
} from "../kit/recipe-options.ts";
import { sayScaleProblem } from "../kit/say-problem.ts";
import { type Card, type CardReader, cardLabelReply, cardReply, stepsReply } from "./card-reply.ts";
import { type CardRequest, readPressedCard } from "./card-request.ts";

export const recipeCard = command({
  path: ["recipe", "card"],
  description: "A recipe at your size: by portions, or by what you have",
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
      description: "What you have of one ingredient, such as 850 g thigh",
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
  ],
  input: z
    .object({
      recipe: requiredText("recipe", 200),
      portions: portionsText.optional(),
      have: optionalText(100),
      without: optionalText(200),
      swap: optionalText(200),
      units: wordText(["metric", "us"], "Type units:metric or units:us.").optional(),
    })
    .refine(({ portions, have }) => portions === undefined || have === undefined, {
      message: "Type portions: or have:, not both: each decides the size.",
    }),
  handle: async (context, input) => {
    const published = await recipeOrRefuse(context, input.recipe);
    return cardReply(await cardOf(context, published, requestOf(context, published.recipe, input)));
  },
  actions: {
    show: async (context, args) => cardReply(await pressedCard(context, args)),
    steps: async (context, args) => stepsReply(await pressedCard(context, args)),
    label: async (context, args) => cardLabelReply(await pressedCard(context, args)),
  },
});

interface Asked {
  readonly portions?: number | undefined;
  readonly have?: string | undefined;
  readonly without?: string | undefined;
  readonly swap?: string | undefined;
  readonly units?: "metric" | "us" | undefined;
}

function requestOf({ foods }: Context, recipe: Recipe, asked: Asked): CardRequest {
  const without = asked.without === undefined ? [] : resolveWithout(recipe, asked.without);
  const swaps = asked.swap === undefined ? {} : resolveSwaps(recipe, asked.swap);
  const units = asked.units ?? "as written";
  if (asked.have !== undefined) {
    return { by: inHand(recipe, foods, asked.have, swaps), without, swaps, units };
  }
  const by: ScaleRequest["by"] =
    asked.portions === undefined
      ? { kind: "as written" }
      : { kind: "portions", portions: asked.portions };
  return { by, without, swaps, units };
}

/** What is in hand, by the name that the recipe gives the food. */
function inHand(
  recipe: Recipe,
  foods: Context["foods"],
  typed: string,
  swaps: CardRequest["swaps"],
): ScaleRequest["by"] {
  const read = readInHand(typed, recipe, foods);
  if (!read.ok) throw new Refusal(sayScaleProblem(read.problem));
  const line = findLineInHand(choicesTaken(recipe, swaps), foods, read.value.foodText);
  if (!line.ok) throw new Refusal(sayScaleProblem(line.problem));
  return { kind: "have", grams: read.value.grams, foodText: line.value.food };
}

function choicesTaken(recipe: Recipe, swaps: CardRequest["swaps"]): readonly LineChoice[] {
  return recipe.components.flatMap((part) =>
    part.lines.map((line) => [line.main, ...line.swaps][swaps[line.key] ?? 0] ?? line.main),
  );
}

async function cardOf(
  context: Context,
  published: PublishedRecipe,
  request: CardRequest,
): Promise<Card> {
  const { foods } = context;
  const scaled = scaleRecipe(published.recipe, foods, request);
  if (!scaled.ok) throw new Refusal(sayScaleProblem(scaled.problem));
  return { published, request, scaled: scaled.value, foods, reader: await readerOf(context) };
}

async function readerOf({ stores, member, group, now }: Context): Promise<CardReader> {
  const rules = await stores.targets.list(member.id);
  const today = figuresOn(rules, dateIn(now, member.choice.zone));
  return { profile: member.profile, style: group.labelStyle, target: today?.figures ?? null };
}

async function pressedCard(context: Context, args: readonly string[]): Promise<Card> {
  const pressed = readPressedCard(args);
  const published = await context.stores.recipes.find(context.group.id, pressed.recipeId);
  if (published === null) {
    throw new Refusal("That recipe is no longer here: type /recipe find to see which there are.");
  }
  return cardOf(context, published, pressed.requestFor(published.recipe));
}
