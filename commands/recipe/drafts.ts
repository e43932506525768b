import { z } from "zod";
import { count } from "../../shared/words/plural.ts";
import { writeWhen } from "../../shared/words/write-when.ts";
import { command } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import type { RecipeDraft } from "../kit/ports.ts";
import { writePress } from "../kit/press.ts";
import { type Reply, type Row, reply, rows, text } from "../kit/reply.ts";
import { DRAFTS_MAX, revisedBy } from "./draft-store.ts";

export const recipeDrafts = command({
  path: ["recipe", "drafts"],
  description: "Your recipes that are written and not published yet",
  who: "coach",
  options: [],
  input: z.object({}),
  handle: async (context) => {
    const drafts = await context.stores.drafts.list(context.member.id);
    return drafts.length === 0 ? noneReply() : listReply(context, drafts);
  },
});

function noneReply(): Reply {
  return reply("You have no drafts.", {
    parts: [text("/recipe publish starts one; it stays yours until you publish or drop it.")],
  });
}

async function listReply(context: Context, drafts: readonly RecipeDraft[]): Promise<Reply> {
  const list = await Promise.all(drafts.map((draft) => rowOf(context, draft)));
  return reply(`You have ${count(drafts.length, "draft")}, of ${DRAFTS_MAX} at most.`, {
    parts: [rows(null, list), text("Only you see them. Nothing of them is published.")],
    choices: [
      {
        id: writePress("recipe publish", "show"),
        placeholder: "Go on with a draft",
        options: drafts.map(({ id, title }, index) => ({
          value: id,
          label: title,
          hint: list[index]?.note ?? "",
        })),
      },
    ],
  });
}

async function rowOf({ stores, group, member }: Context, draft: RecipeDraft): Promise<Row> {
  const revises = revisedBy(draft);
  const recipe = revises === null ? null : await stores.recipes.find(group.id, revises);
  const note = recipe === null ? "a new recipe" : `a revision of ${recipe.recipe.title}`;
  return {
    label: draft.title,
    figure: `changed ${writeWhen(draft.changedAt, member.choice.zone)}`,
    note,
  };
}
