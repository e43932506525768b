import type { RecipeDraft } from "../kit/ports.ts";
import { writePress } from "../kit/press.ts";
import type { Button } from "../kit/reply.ts";
import { draftForm } from "./draft-form.ts";
import { versionOf } from "./draft-store.ts";
import type { DraftTarget } from "./draft-target.ts";

/** Publish; and, where the title is not that of the recipe which it revises, the way to publish it as another. */
export function publishButtons(draft: RecipeDraft, target: DraftTarget): readonly Button[] {
  const args = [draft.id, versionOf(draft)];
  const main: Button = {
    id: writePress("recipe publish", "publish", ...args),
    label: "Publish",
    weight: "main",
  };
  if (!target.isRetitled) return [main];
  const label = target.titled === null ? "As a new recipe" : `As “${target.titled.recipe.title}”`;
  const other: Button = {
    id: writePress("recipe publish", "publish apart", ...args),
    label: label.length > 34 ? "As the other recipe" : label,
    weight: "plain",
  };
  return [main, other];
}

/** Publish, Edit and Drop stand in the first row; whatever else there is, below. */
export function draftButtons(draft: RecipeDraft, publish: readonly Button[]): readonly Button[] {
  const [main, ...others] = publish;
  const edit: Button = {
    id: writePress("recipe publish", "edit", draft.id),
    label: "Edit",
    weight: main === undefined ? "main" : "plain",
  };
  const drop: Button = {
    id: writePress("recipe publish", "drop", draft.id, versionOf(draft)),
    label: "Drop",
    weight: "grave",
  };
  const fits = draftForm(draft, "") !== null;
  return [...(main === undefined ? [] : [main]), ...(fits ? [edit] : []), drop, ...others];
}
