import { type DraftId, draftId, type RecipeId, recipeId } from "../../shared/ids.ts";
import { fail, type Outcome, ok } from "../../shared/outcome.ts";
import { RECIPE_LIMITS } from "../../shared/recipe/problems.ts";
import type { Instant } from "../../shared/time.ts";
import { fold } from "../../shared/words/fold.ts";
import { excerpt } from "../../shared/words/problems.ts";
import { Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import type { PublishedRecipe, RecipeDraft } from "../kit/ports.ts";

/** More are a heap that nobody finishes. */
export const DRAFTS_MAX = 10;

/** One sentence for "gone" and "somebody else's": it must not tell which. */
const GONE =
  "That draft is not there any more: it is already published or dropped, or it is not yours. /recipe drafts lists yours, /recipe find what is published.";
const DRAFT_ID = /^[\w-]{1,40}(?:\.[\w-]{1,40})?$/u;

/**
 * A fresh id. That of a draft which revises a recipe names it: so the draft remembers, through a restart
 * and in every button, what it is to become a revision of, whatever title is written in it.
 */
export function newDraftId({ newId }: Pick<Context, "newId">, revises: RecipeId | null): DraftId {
  return draftId(revises === null ? newId() : `${newId()}.${revises}`);
}

/** The recipe that a draft revises; null for a recipe of its own. */
export function revisedBy({ id }: Pick<RecipeDraft, "id">): RecipeId | null {
  const [, revises] = id.split(".");
  return revises === undefined ? null : recipeId(revises);
}

/** Tells one state of a draft from another, in a button. */
export function versionOf({ changedAt }: Pick<RecipeDraft, "changedAt">): string {
  return changedAt.epochMilliseconds.toString(36);
}

/** The draft, when it is there and the asker's own in this group; else a refusal. */
export async function ownDraft(context: Context, id: string | undefined): Promise<RecipeDraft> {
  const found = await findOwn(context, readDraftId(id));
  if (found === null) throw new Refusal(GONE);
  return found;
}

export function readDraftId(id: string | undefined): DraftId {
  if (id === undefined || !DRAFT_ID.test(id)) throw new Refusal(GONE);
  return draftId(id);
}

/** Null when there is none of this id; a refusal when it is somebody else's. */
export async function findOwn(
  { stores, member, group }: Context,
  id: DraftId,
): Promise<RecipeDraft | null> {
  const draft = await stores.drafts.find(id);
  if (draft === null) return null;
  if (draft.by !== member.id || draft.groupId !== group.id) throw new Refusal(GONE);
  return draft;
}

export type KeepProblem =
  | { readonly code: "too many drafts" }
  | { readonly code: "too long"; readonly chars: number };

/** Keeps a draft of the asker's, new or changed; the same text sent twice is one draft. */
export async function keepDraft(
  context: Context,
  id: DraftId,
  text: string,
  takenFor: RecipeDraft["takenFor"],
): Promise<Outcome<RecipeDraft, KeepProblem>> {
  const { stores, group, member, now } = context;
  if (text.length > RECIPE_LIMITS.chars) return fail({ code: "too long", chars: text.length });
  const before = await findOwn(context, id);
  const others = (await stores.drafts.list(member.id)).filter((one) => one.id !== id);
  const twin = before === null ? others.find((one) => isTwin(one, id, text)) : undefined;
  if (twin !== undefined) return ok(twin);
  if (before === null && others.length >= DRAFTS_MAX) return fail({ code: "too many drafts" });
  const draft: RecipeDraft = {
    id,
    groupId: group.id,
    by: member.id,
    title: titleIn(text),
    text,
    takenFor,
    changedAt: before === null ? now : later(now, before.changedAt),
  };
  await stores.drafts.save(draft);
  return ok(draft);
}

/** A delivery repeated, or the same file attached again. */
function isTwin(other: RecipeDraft, id: DraftId, text: string): boolean {
  return other.text === text && revisedBy(other) === revisedBy({ id });
}

/** Always later than before, so that a version is never met twice. */
function later(now: Instant, before: Instant): Instant {
  const next = before.add({ milliseconds: 1 });
  return now.epochMilliseconds < next.epochMilliseconds ? next : now;
}

/** What a draft is called in a list: its first line that says something. */
function titleIn(text: string): string {
  const first = text.split("\n").find((line) => /[\p{L}\p{N}]/u.test(line)) ?? "";
  const plain = first.replace(/^[\s#]*(?:title ?:)?/iu, "").trim();
  return excerpt(plain) || "Untitled";
}

/** Refuses before anything is typed what could not be kept. */
export async function refuseTooMany({ stores, member }: Context): Promise<void> {
  const drafts = await stores.drafts.list(member.id);
  if (drafts.length >= DRAFTS_MAX) throw new Refusal(TOO_MANY);
}

export const TOO_MANY = `You have ${DRAFTS_MAX} drafts already, and that is as many as are kept: publish or drop one with /recipe drafts.`;

/** The newest revision of the recipe of this very title. */
export async function recipeTitled(
  { stores, group }: Context,
  title: string,
): Promise<PublishedRecipe | null> {
  const found = await stores.recipes.find(group.id, title);
  return found !== null && fold(found.recipe.title) === fold(title) ? found : null;
}
