import type { Recipe } from "../../shared/recipe/types.ts";
import { fold } from "../../shared/words/fold.ts";
import type { Context } from "../kit/context.ts";
import type { PublishedRecipe, RecipeDraft } from "../kit/ports.ts";
import { recipeTitled, revisedBy } from "./draft-store.ts";

/** What a draft would become a revision of. */
export interface DraftTarget {
  /** Null for a new recipe. */
  readonly recipe: PublishedRecipe | null;
  /** The draft revises a recipe and has another title: the recipe's own becomes that, unless another recipe has it. */
  readonly isRetitled: boolean;
  /** The recipe that has the draft's title, where that is another than `recipe`. */
  readonly titled: PublishedRecipe | null;
}

/** A revision is of the recipe that it was begun from, whatever its title: so a new title keeps the history. */
export async function targetOf(
  context: Context,
  draft: RecipeDraft,
  { title }: Recipe,
): Promise<DraftTarget> {
  const revises = revisedBy(draft);
  const { stores, group } = context;
  const recipe = revises === null ? null : await stores.recipes.find(group.id, revises);
  const titled = await recipeTitled(context, title);
  // A recipe withdrawn since is revised by its title alone.
  if (recipe === null || recipe.id !== revises)
    return { recipe: titled, isRetitled: false, titled: null };
  const isRetitled = fold(recipe.recipe.title) !== fold(title);
  return { recipe, isRetitled, titled: isRetitled ? titled : null };
}
