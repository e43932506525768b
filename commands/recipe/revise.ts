import { z } from "zod";
import { command, type OtherOptions, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import type { Form } from "../kit/form.ts";
import { fileText, requiredText } from "../kit/options.ts";
import { completeRecipe, recipeOrRefuse } from "../kit/recipe-options.ts";
import { draftForm } from "./draft-form.ts";
import { keepDraft, newDraftId, refuseTooMany } from "./draft-store.ts";
import { FILE_MAX_BYTES, takeFile } from "./draft-take.ts";

const recipeText = requiredText("recipe", 200);

export const recipeRevise = command({
  path: ["recipe", "revise"],
  description: "Change a published recipe: its text as you wrote it, in a form",
  who: "coach",
  options: [
    {
      name: "recipe",
      description: "Which recipe",
      required: true,
      kind: "text",
      complete: completeRecipe,
    },
    {
      name: "file",
      description: "The whole new text as a file; leave it out to change the text in a form",
      required: false,
      kind: "file",
    },
  ],
  input: z.object({ recipe: recipeText, file: fileText("file", FILE_MAX_BYTES) }),
  handle: async (context, { recipe, file }) => {
    const { id, source } = await toRevise(context, recipe);
    return takeFile(context, { id, text: file, takenFor: source.takenFor });
  },
  opens: (given) => (given.includes("file") ? null : "text"),
  forms: { text: reviseForm },
});

async function reviseForm(
  context: Context,
  _args: readonly string[],
  typed: OtherOptions,
): Promise<Form> {
  const named = recipeText.safeParse(typed["recipe"]);
  if (!named.success) throw new Refusal(named.error.issues.map((issue) => issue.message));
  const { id, title, source } = await toRevise(context, named.data);
  await refuseTooMany(context);
  const form = draftForm({ id, text: source.text }, title);
  if (form !== null) return form;
  await keepDraft(context, id, source.text, source.takenFor);
  throw new Refusal(
    `The text of ${title} does not fit a form. It is a draft now: /recipe drafts shows it, with the text as a file to change and attach to /recipe revise.`,
  );
}

async function toRevise(context: Context, typed: string) {
  const { id, recipe } = await recipeOrRefuse(context, typed);
  const source = await context.stores.recipes.source(context.group.id, id);
  if (source === null) {
    throw new Refusal("That recipe is no longer here: type /recipe find to see which there are.");
  }
  return { id: newDraftId(context, id), title: recipe.title, source };
}
