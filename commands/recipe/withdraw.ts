import { z } from "zod";
import { command, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { requiredText } from "../kit/options.ts";
import { writePress } from "../kit/press.ts";
import { completeRecipe, recipeOrRefuse } from "../kit/recipe-options.ts";
import { type Reply, reply, text } from "../kit/reply.ts";
import { withdrawnNews } from "./recipe-news.ts";
import { concernedSince, sayWhoHas } from "./who-has.ts";

const GONE =
  "That recipe is not in the book any more: it is withdrawn already. /recipe find shows what there is.";

export const recipeWithdraw = command({
  path: ["recipe", "withdraw"],
  description: "Take a recipe out of the book; batches and history stay",
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
  handle: async (context, { recipe }) => {
    const { id, recipe: published } = await recipeOrRefuse(context, recipe);
    return reply(`Withdraw ${published.title}?`, {
      parts: [
        text(
          "Nobody finds it or can log it any more.",
          "Its revisions, all batches cooked of it, their dates and reminders stay as they are.",
          await sayWhoHas(context, id, "will be told"),
          "Publishing a recipe of the same title brings it back.",
        ),
      ],
      buttons: [
        { id: writePress("recipe withdraw", "go", id), label: "Withdraw", weight: "grave" },
      ],
    });
  },
  actions: { go: withdraw },
});

async function withdraw(
  { stores, group, member, now, newId }: Context,
  [arg = ""]: readonly string[],
): Promise<Reply> {
  const found = await stores.recipes.find(group.id, arg);
  if (found === null || found.id !== arg) throw new Refusal(GONE);
  const isDone = await stores.recipes.withdraw(group.id, found.id, now, {
    kind: "recipe withdrawn",
    key: `recipe news/${found.revisionId}/withdrawn`,
    title: found.recipe.title,
    news: withdrawnNews(found),
    since: concernedSince(now),
    by: member.id,
    newId,
  });
  if (!isDone) throw new Refusal(GONE);
  return reply(`Withdrawn: ${found.recipe.title}.`, {
    parts: [
      text(
        "Batches and history stay. To bring it back, publish it again with /recipe publish under the same title.",
      ),
    ],
  });
}
