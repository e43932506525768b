import { z } from "zod";
import type { FoodBook } from "../../shared/food/book.ts";
import { resolveKeeping } from "../../shared/keeping/resolve.ts";
import { nutritionOf } from "../../shared/nutrition/portion.ts";
import { writeShort } from "../../shared/nutrition/write.ts";
import { writeAmount, writeGrams } from "../../shared/quantity/write-amount.ts";
import type { ReadRemark } from "../../shared/recipe/problems.ts";
import { readRecipe } from "../../shared/recipe/read.ts";
import { scaleRecipe } from "../../shared/recipe/scale.ts";
import type { LineChoice, Recipe } from "../../shared/recipe/types.ts";
import { count } from "../../shared/words/plural.ts";
import { command, Refusal } from "../kit/command.ts";
import { fileText } from "../kit/options.ts";
import type { PublishedRecipe } from "../kit/ports.ts";
import { type Part, type Reply, type Row, reply, rows, text } from "../kit/reply.ts";
import { sayScaleProblem } from "../kit/say-problem.ts";
import { sayReadRemark, sayRecipeProblem } from "../kit/say-recipe-problem.ts";
import { keepingRow } from "./card-reply.ts";
import { AS_WRITTEN, requestPress } from "./card-request.ts";

/** Four bytes for each of the 20,000 characters that a recipe may have. */
const FILE_MAX_BYTES = 80_000;

export const recipePublish = command({
  path: ["recipe", "publish"],
  description: "Publish a recipe from a text file, or a new revision of it",
  who: "coach",
  options: [
    {
      name: "file",
      description: "Plain text: title, “Makes 6 portions”, ingredients, steps, keeping",
      required: true,
      kind: "file",
    },
  ],
  input: z.object({ file: fileText("file", FILE_MAX_BYTES) }),
  handle: async (context, { file }) => {
    const { stores, group, member, causeId, now, newId, foods } = context;
    const read = readRecipe(file, foods);
    if (!read.ok) {
      throw new Refusal([
        "Nothing was published: the file needs mending.",
        ...read.problem.map(sayRecipeProblem),
      ]);
    }
    const done = await stores.recipes.publish({
      groupId: group.id,
      by: member.id,
      causeId,
      now,
      recipe: read.value.recipe,
      sourceText: file,
      takenFor: {},
      newId,
    });
    return publishedReply(done, read.value.remarks, foods);
  },
});

function publishedReply(
  { published, isNew }: { readonly published: PublishedRecipe; readonly isNew: boolean },
  remarks: readonly ReadRemark[],
  foods: FoodBook,
): Reply {
  const { recipe, id, revisionNumber } = published;
  const what = isNew ? "Published" : `Published as revision ${revisionNumber}`;
  const card = requestPress("show", id, recipe, AS_WRITTEN);
  return reply(`${what}: ${recipe.title}, ${count(recipe.portions, recipe.portionWord)}.`, {
    parts: [
      ...remarkParts(remarks),
      ...recipe.components.map((part) =>
        rows(
          part.optional ? `${part.name} (optional), as read` : `${part.name}, as read`,
          part.lines.flatMap(({ main, swaps }) => [
            readRow(main, foods, ""),
            ...swaps.map((swap) => readRow(swap, foods, "or ")),
          ]),
        ),
      ),
      rows("Per portion", [portionRow(recipe, foods), keepingRow(keepingOf(recipe, foods))]),
    ],
    cautions: keepingOf(recipe, foods).remarks,
    buttons: card === null ? [] : [{ id: card, label: "See the card", weight: "main" }],
  });
}

/** What the coach should look at comes first: it is why they read on. */
function remarkParts(remarks: readonly ReadRemark[]): readonly Part[] {
  return remarks.length === 0 ? [] : [text("Please look at:", ...remarks.map(sayReadRemark))];
}

/** How one line was read: its amount, its weight, and the food it was taken for. */
function readRow(choice: LineChoice, foods: FoodBook, before: string): Row {
  const food = choice.foodId === null ? null : foods.byId(choice.foodId);
  const amount = choice.amount === null ? "to taste" : writeAmount(choice.amount);
  const weight = choice.grams === null ? "" : writeGrams(choice.grams);
  const weightNote = weight === "" || weight === amount ? [] : [weight];
  const taken = food === null ? "not in the food table" : `taken as ${food.name}`;
  return {
    label: `${before}${choice.foodText}`,
    figure: amount,
    note: [...weightNote, taken].join("; "),
  };
}

function portionRow(recipe: Recipe, foods: FoodBook): Row {
  const scaled = scaleRecipe(recipe, foods, AS_WRITTEN);
  if (!scaled.ok) throw new Refusal(sayScaleProblem(scaled.problem));
  const figures = nutritionOf(scaled.value, foods);
  return { label: "figures", figure: writeShort(figures.perPortion) };
}

function keepingOf(recipe: Recipe, foods: FoodBook) {
  return resolveKeeping(recipe, foods, []);
}
