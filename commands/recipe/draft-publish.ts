import type { FoodBook } from "../../shared/food/book.ts";
import { type CauseId, causeId } from "../../shared/ids.ts";
import { confirmable } from "../../shared/keeping/resolve.ts";
import type { Recipe } from "../../shared/recipe/types.ts";
import { whatChanged } from "../../shared/recipe/what-changed.ts";
import { count } from "../../shared/words/plural.ts";
import type { Context } from "../kit/context.ts";
import type { PublishedRecipe, RecipeDraft } from "../kit/ports.ts";
import { writePress } from "../kit/press.ts";
import type { Publication, RecipeTelling } from "../kit/publication.ts";
import { type Part, type Reply, reply, text } from "../kit/reply.ts";
import { AS_WRITTEN, requestPress } from "./card-request.ts";
import { type DraftRead, readDraft } from "./draft-read.ts";
import { draftReply } from "./draft-reply.ts";
import { versionOf } from "./draft-store.ts";
import { type DraftTarget, targetOf } from "./draft-target.ts";
import { newsOf } from "./recipe-news.ts";
import { sayChanges } from "./say-change.ts";
import { concernedSince, sayWhoHas } from "./who-has.ts";

/**
 * Publishes a draft and drops it. Twice is once: the cause is the draft in this very state, so two presses
 * give one revision whichever comes first. `apart`: under the draft's own title, where it revises a recipe
 * of another.
 */
export async function publishDraft(
  context: Context,
  draft: RecipeDraft,
  apart: boolean,
): Promise<Reply> {
  const { stores, group, member, now, newId } = context;
  const read = readDraft(draft, context.foods);
  if (!read.ok) return draftReply(context, draft, { notes: ["It cannot be published as it is."] });
  const target = await targetOf(context, draft, read.value.recipe);
  const { recipe, sourceText } = contentOf(read.value, target, apart);
  const before = apart && target.isRetitled ? target.titled : target.recipe;
  if (before !== null && whatChanged(before.recipe, recipe).length === 0) {
    await dropUnchanged(context, draft);
    return alreadyReply(before);
  }
  const cause = causeId(`draft:${draft.id}:${versionOf(draft)}`);
  const publication: Publication = {
    groupId: group.id,
    by: member.id,
    causeId: cause,
    now,
    recipe,
    sourceText,
    takenFor: draft.takenFor,
    tell: before === null ? null : tellingOf(context, before, recipe, cause),
    newId,
  };
  const done =
    before === null
      ? await stores.recipes.publish(publication)
      : await stores.recipes.publishOf(before.id, publication);
  if (done === "title taken") return draftReply(context, draft, { notes: [titleTaken(recipe)] });
  await dropUnchanged(context, draft);
  return publishedReply(context, done.published, before, done.isNew);
}

function titleTaken({ title }: Recipe): string {
  return `It cannot be called “${title}”: a recipe of that title was withdrawn and has its history. Give it another title, or publish it as a new recipe to bring that one back.`;
}

/** What who has the recipe is told of it; null where nothing of it concerns them. */
function tellingOf(
  { member, now, newId, foods }: Context,
  before: PublishedRecipe,
  recipe: Recipe,
  cause: CauseId,
): RecipeTelling | null {
  const news = newsOf(before, recipe, foods);
  if (news === null) return null;
  return {
    kind: "recipe changed",
    key: `recipe news/${cause}`,
    title: recipe.title,
    news,
    since: concernedSince(now),
    by: member.id,
    newId,
  };
}

/** What is published: under the recipe's own title where the new one is another recipe's. */
function contentOf(
  { recipe, text: sourceText }: DraftRead,
  target: DraftTarget,
  apart: boolean,
): { readonly recipe: Recipe; readonly sourceText: string } {
  const keepsTitle = target.isRetitled && target.titled !== null;
  if (!keepsTitle || target.recipe === null || apart) return { recipe, sourceText };
  const { title } = target.recipe.recipe;
  return { recipe: { ...recipe, title }, sourceText: withTitle(sourceText, title) };
}

/** The text with its title line exchanged, so that the next revision starts from what was published. */
function withTitle(sourceText: string, title: string): string {
  const lines = sourceText.split("\n");
  const at = lines.findIndex((line) => /[\p{L}\p{N}]/u.test(line));
  return lines.map((line, index) => (index === at ? `Title: ${title}` : line)).join("\n");
}

/** An edit that came in between is kept. */
async function dropUnchanged({ stores }: Context, draft: RecipeDraft): Promise<void> {
  const now = await stores.drafts.find(draft.id);
  if (now !== null && versionOf(now) === versionOf(draft)) await stores.drafts.drop(draft.id);
}

function alreadyReply({ recipe, id, revisionNumber }: PublishedRecipe): Reply {
  return reply(`Already published: revision ${revisionNumber} of ${recipe.title} says the same.`, {
    parts: [text("No new revision was made, and the draft is dropped.")],
    buttons: cardButton(id, recipe),
  });
}

async function publishedReply(
  context: Context,
  published: PublishedRecipe,
  before: PublishedRecipe | null,
  isNew: boolean,
): Promise<Reply> {
  const { recipe, id, revisionNumber } = published;
  const what = isNew ? "Published" : `Published as revision ${revisionNumber}`;
  return reply(`${what}: ${recipe.title}, ${count(recipe.portions, recipe.portionWord)}.`, {
    parts: [
      ...changeParts(context, published, before),
      ...(isNew
        ? []
        : [
            text(
              await sayWhoHas(context, published.id, tellingWord(context, before, recipe)),
              COOKED_STAYS,
            ),
          ]),
      ...uncountedParts(recipe),
    ],
    buttons: [...cardButton(id, recipe), ...longerButton(id, recipe, context.foods)],
  });
}

function tellingWord(
  { foods }: Context,
  before: PublishedRecipe | null,
  recipe: Recipe,
): "is told what changed" | null {
  return before !== null && newsOf(before, recipe, foods) !== null ? "is told what changed" : null;
}

/** Where the text states longer than the chart: the way to confirm it, a step of its own. */
function longerButton(id: string, recipe: Recipe, foods: FoodBook): Reply["buttons"] {
  if (confirmable(recipe, foods) === null) return [];
  const press = writePress("recipe keeping", "show", id);
  return [{ id: press, label: "Keeps longer than the chart?", weight: "plain" }];
}

const COOKED_STAYS = "What is cooked keeps the dates and figures of its own revision.";

function changeParts(
  { foods }: Context,
  { recipe }: PublishedRecipe,
  before: PublishedRecipe | null,
): readonly Part[] {
  if (before === null) return [];
  const changes = sayChanges(whatChanged(before.recipe, recipe), foods);
  return changes.length === 0 ? [] : [text("What changed:", ...changes)];
}

/** Said again once it is published: members read these figures. */
function uncountedParts(recipe: Recipe): readonly Part[] {
  const lines = recipe.components.flatMap((part) => part.lines);
  const uncounted = lines.filter(
    ({ main }) => main.amount !== null && (main.grams === null || main.foodId === null),
  );
  if (uncounted.length === 0) return [];
  const names = uncounted.map(({ main }) => main.foodText).join(", ");
  return [text(`Its figures are lower bounds: not counted are ${names}.`)];
}

function cardButton(id: PublishedRecipe["id"], recipe: Recipe): Reply["buttons"] {
  const card = requestPress("show", id, recipe, AS_WRITTEN);
  return card === null ? [] : [{ id: card, label: "See the card", weight: "main" }];
}
