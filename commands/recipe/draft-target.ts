import type { Recipe } from "../../shared/recipe/types.ts";
import { fold } from "../../shared/words/fold.ts";
import type { Context } from "../kit/context.ts";
import type { PublishedRecipe, RecipeDraft } from "../kit/ports.ts";
import { recipeTitled, revisedBy } from "./draft-store.ts";

/** What a draft would become a revision of. */
export interface DraftTarget {
  /** Null for a new recipe. */
  readonly recipe: PublishedRecipe | null;
  /** The draft revises a recipe and has another title: it would be published under the recipe's own. */
  readonly keepsTitle: boolean;
  /** The recipe that has the draft's title, where that is another than `recipe`. */
  readonly titled: PublishedRecipe | null;
}

/** A recipe is known by its title, so a revision under a new one would be another recipe that nobody cooked. */
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
    return { recipe: titled, keepsTitle: false, titled: null };
  const keepsTitle = fold(recipe.recipe.title) !== fold(title);
  return { recipe, keepsTitle, titled: keepsTitle ? titled : null };
}
