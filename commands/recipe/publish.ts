import { z } from "zod";
import { foodId } from "../../shared/ids.ts";
import { fold } from "../../shared/words/fold.ts";
import { excerpt } from "../../shared/words/problems.ts";
import { command, Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import type { FilledForm, Form } from "../kit/form.ts";
import { fileText } from "../kit/options.ts";
import type { RecipeDraft } from "../kit/ports.ts";
import { type Reply, reply, text } from "../kit/reply.ts";
import { foodsNear, LEAVE } from "./draft-foods.ts";
import { draftForm, textOfForm } from "./draft-form.ts";
import { publishDraft } from "./draft-publish.ts";
import { readDraft } from "./draft-read.ts";
import { draftReply } from "./draft-reply.ts";
import {
  findOwn,
  keepDraft,
  newDraftId,
  ownDraft,
  readDraftId,
  refuseTooMany,
  revisedBy,
  versionOf,
} from "./draft-store.ts";
import { FILE_MAX_BYTES, takeFile, takeTyped } from "./draft-take.ts";

const CHANGED = "The draft has changed since that message. This is how it stands now:";

export const recipePublish = command({
  path: ["recipe", "publish"],
  description: "Write or attach a recipe, see how it is read, and publish it",
  who: "coach",
  options: [
    {
      name: "file",
      description: "A text file or a schema.org recipe; leave it out to paste the text",
      required: false,
      kind: "file",
    },
  ],
  input: z.object({ file: fileText("file", FILE_MAX_BYTES) }),
  handle: (context, { file }) =>
    takeFile(context, { id: newDraftId(context, null), text: file, takenFor: {} }),
  opens: (given) => (given.length === 0 ? "blank" : null),
  forms: {
    blank: async (context) => {
      await refuseTooMany(context);
      return formOrRefuse({ id: newDraftId(context, null), text: "" }, "Your recipe");
    },
    edit: async (context, [id]) => {
      const draft = await ownDraft(context, id);
      return formOrRefuse(draft, draft.title);
    },
  },
  submissions: { send },
  actions: {
    show: async (context, [id]) => draftReply(context, await ownDraft(context, id)),
    food: pickFood,
    publish: (context, args) =>
      ifUnchanged(context, args, (draft) => publishDraft(context, draft, false)),
    "publish apart": (context, args) =>
      ifUnchanged(context, args, (draft) => publishDraft(context, draft, true)),
    drop: (context, args) => ifUnchanged(context, args, (draft) => drop(context, draft)),
  },
});

function formOrRefuse(draft: Pick<RecipeDraft, "id" | "text">, title: string): Form {
  const form = draftForm(draft, title);
  if (form === null) {
    throw new Refusal(
      "The text does not fit a form: attach it as a file to /recipe publish, and drop this draft.",
    );
  }
  return form;
}

async function send(
  context: Context,
  [arg]: readonly string[],
  filled: FilledForm,
): Promise<Reply> {
  const id = readDraftId(arg);
  const before = await findOwn(context, id);
  const takenFor = before?.takenFor ?? (await takenForOf(context, revisedBy({ id })));
  return takeTyped(context, { id, text: textOfForm(filled), takenFor });
}

/** The choices of the revision that a first draft of the next one starts from. */
async function takenForOf(
  { stores, group }: Context,
  revises: ReturnType<typeof revisedBy>,
): Promise<RecipeDraft["takenFor"]> {
  if (revises === null) return {};
  return (await stores.recipes.source(group.id, revises))?.takenFor ?? {};
}

/** Acts on a draft only while it is as the message shows it. */
async function ifUnchanged(
  context: Context,
  [id, version]: readonly string[],
  act: (draft: RecipeDraft) => Promise<Reply>,
): Promise<Reply> {
  const draft = await ownDraft(context, id);
  return versionOf(draft) === version
    ? act(draft)
    : draftReply(context, draft, { notes: [CHANGED] });
}

async function drop({ stores }: Context, draft: RecipeDraft): Promise<Reply> {
  await stores.drafts.drop(draft.id);
  return reply(`Dropped: ${draft.title}`, {
    parts: [text("Nothing was published. Should you want the text back, it is in the file.")],
    files: [{ name: "recipe.txt", text: draft.text }],
  });
}

/** Takes a doubtful name for the food picked, and shows the draft read anew with the next one. */
async function pickFood(context: Context, args: readonly string[]): Promise<Reply> {
  return ifUnchanged(context, args, async (draft) => {
    const [, , ref = "", picked = ""] = args;
    const read = readDraft(draft, context.foods);
    const doubt = read.ok ? read.value.doubtful.find((one) => one.ref === ref) : undefined;
    if (doubt === undefined) return draftReply(context, draft, { notes: [CHANGED] });
    if (picked === LEAVE) return draftReply(context, draft, { leftOpen: ref });
    const { foodText } = doubt.choice;
    const food = foodsNear(context.foods, foodText).find((one) => one.id === picked);
    if (food === undefined) {
      return draftReply(context, draft, { notes: ["Pick one of the foods in the list."] });
    }
    const takenFor = { ...draft.takenFor, [fold(foodText)]: foodId(food.id) };
    const kept = await keepDraft(context, draft.id, draft.text, takenFor);
    if (!kept.ok) throw new Refusal("That draft cannot be changed: attach its text anew.");
    return draftReply(context, kept.value, {
      notes: [`“${excerpt(foodText)}” is taken as ${food.name}.`],
    });
  });
}
