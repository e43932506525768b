import { z } from "zod";
import { confirmable, resolveKeeping } from "../../shared/keeping/resolve.ts";
import { count } from "../../shared/words/plural.ts";
import { command, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { requiredText } from "../kit/options.ts";
import type { PublishedRecipe } from "../kit/ports.ts";
import { completeRecipe, recipeOrRefuse } from "../kit/recipe-options.ts";
import { type Reply, reply, text } from "../kit/reply.ts";
import { confirmedParts, keepingWordReply, withoutParts } from "./keeping-reply.ts";
import { sayHolders } from "./word-holders.ts";

const STALE =
  "That recipe has changed since, or is not in the book any more, so nothing was confirmed. Type /recipe keeping to see how it stands.";

export const recipeKeeping = command({
  path: ["recipe", "keeping"],
  description:
    "Where you state longer than the published chart: confirm it on your word, or take it back",
  who: "coach",
  options: [
    {
      name: "recipe",
      description: "Which recipe",
      required: true,
      kind: "text",
      complete: completeRecipe,
    },
  ],
  input: z.object({ recipe: requiredText("recipe", 200) }),
  handle: async (context, { recipe }) => show(context, await recipeOrRefuse(context, recipe)),
  actions: {
    show: async (context, [id = ""]) => show(context, await pressed(context, id, null)),
    give: (context, args) => give(context, args),
    back: (context, args) => takeBack(context, args),
  },
});

async function show(context: Context, published: PublishedRecipe): Promise<Reply> {
  const words = await context.stores.keepingWords.list(context.group.id, published.revisionId);
  return keepingWordReply(published, words, context.foods, context.member.choice.zone);
}

/** The newest revision; refused when it is another than the button spoke of. */
async function pressed(
  { stores, group }: Context,
  id: string,
  revision: string | null,
): Promise<PublishedRecipe> {
  const found = await stores.recipes.find(group.id, id);
  if (found === null || found.id !== id) throw new Refusal(STALE);
  if (revision !== null && found.revisionId !== revision) throw new Refusal(STALE);
  return found;
}

/** The coach takes the responsibility for exactly the days that were shown. */
async function give(context: Context, args: readonly string[]): Promise<Reply> {
  const [id = "", revision = "", days = ""] = args;
  const published = await pressed(context, id, revision);
  const { recipe } = published;
  const found = confirmable(recipe, context.foods);
  if (found === null || String(found.longer.coach.fridgeDays) !== days) throw new Refusal(STALE);
  await add(context, published, "given");
  const { coach, chart } = found.longer;
  return reply(
    `Confirmed on your word: ${recipe.title}${withoutParts(found)} keeps ${count(coach.fridgeDays, "day")} in the fridge.`,
    {
      parts: [
        text(
          `It holds for revision ${published.revisionNumber} and for what is logged from now on. The chart's ${count(chart.fridgeDays, "day")} stay for who says that somebody pregnant, under five, over 65 or with a weak immune system eats along.`,
          "Batches that are logged already keep their dates.",
        ),
      ],
      buttons: (await show(context, published)).buttons,
    },
  );
}

async function takeBack(context: Context, args: readonly string[]): Promise<Reply> {
  const [id = "", revision = ""] = args;
  const published = await pressed(context, id, revision);
  await add(context, published, "taken back");
  const chart = resolveKeeping(published.recipe, context.foods, []);
  return reply(
    `Taken back: ${published.recipe.title} keeps ${count(chart.fridgeDays, "day")} in the fridge, by the chart.`,
    {
      parts: [
        text(
          "That is so for what is logged from now on. Batches that were logged on your word keep its dates; you may want to tell who has them:",
          ...(await sayHolders(context, published)),
        ),
      ],
      buttons: (await show(context, published)).buttons,
    },
  );
}

/** Adds a word after the last, unless the last says the same. */
async function add(
  { stores, group, member, causeId, now, newId, foods }: Context,
  { revisionId, recipe }: PublishedRecipe,
  kind: "given" | "taken back",
): Promise<void> {
  const words = await stores.keepingWords.list(group.id, revisionId);
  const last = words.at(-1);
  if ((last?.kind ?? "taken back") === kind) return;
  const done = await stores.keepingWords.add({
    id: newId(),
    groupId: group.id,
    revisionId,
    position: (last?.position ?? 0) + 1,
    causeId,
    kind,
    parts: confirmedParts(recipe, foods),
    by: member.id,
    at: now,
  });
  if (done === "moved on") throw new Refusal(STALE);
}
