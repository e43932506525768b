import type { CauseId, GroupId, MemberId } from "../../shared/ids.ts";
import type { Recipe } from "../../shared/recipe/types.ts";
import type { RecipeNews } from "../../shared/reminder/types.ts";
import type { Instant } from "../../shared/time.ts";
import type { PublishedRecipe, TakenFor } from "./ports.ts";

/** A revision to be published. */
export interface Publication {
  readonly groupId: GroupId;
  readonly by: MemberId;
  readonly causeId: CauseId;
  readonly now: Instant;
  readonly recipe: Recipe;
  readonly sourceText: string;
  readonly takenFor: TakenFor;
  readonly tell?: RecipeTelling | null;
  readonly newId: () => string;
}

export interface PublicationResult {
  readonly published: PublishedRecipe;
  readonly isNew: boolean;
}

/** What is told of a recipe, once per key, to every member of `whoHas` who wants to be told, but for who did it. */
export interface RecipeTelling {
  readonly kind: "recipe changed" | "recipe withdrawn";
  readonly key: string;
  readonly title: string;
  readonly news: RecipeNews;
  /** As for `whoHas`. */
  readonly since: Instant;
  readonly by: MemberId;
  readonly newId: () => string;
}
