import type { FoodBook } from "../../shared/food/book.ts";
import type { RecipeId } from "../../shared/ids.ts";
import { type GraveChange, graveChanges } from "../../shared/recipe/grave-changes.ts";
import type { Recipe } from "../../shared/recipe/types.ts";
import { whatChanged } from "../../shared/recipe/what-changed.ts";
import type { RecipeNews } from "../../shared/reminder/types.ts";
import { count } from "../../shared/words/plural.ts";
import type { PublishedRecipe } from "../kit/ports.ts";
import { sayChanges } from "./say-change.ts";

/** On a phone more is not read: the card has it all. */
const LINES_MAX = 8;
const LINE_CHARS = 160;

/** Changes that nobody has to be told of: nothing is cooked, counted or kept otherwise. */
const IDLE: readonly string[] = ["wording", "tags"];

/** What who has a recipe is told of its new revision; null when nothing of it concerns them. */
export function newsOf(before: PublishedRecipe, after: Recipe, foods: FoodBook): RecipeNews | null {
  const changes = whatChanged(before.recipe, after).filter(({ code }) => !IDLE.includes(code));
  const grave = graveChanges(before.recipe, after, foods);
  if (changes.length + grave.length === 0) return null;
  const said = sayChanges(changes, foods);
  const more = said.length - LINES_MAX;
  return news(before.id, {
    revision: before.revisionNumber + 1,
    grave: grave.map(sayGrave),
    changes: more > 1 ? [...said.slice(0, LINES_MAX), `and ${more} more changes`] : said,
  });
}

/** What who has a recipe is told when it is withdrawn. */
export function withdrawnNews({ id, revisionNumber }: PublishedRecipe): RecipeNews {
  return news(id, { revision: revisionNumber, grave: [], changes: [] });
}

function news(id: RecipeId, rest: Omit<RecipeNews, "recipeId">): RecipeNews {
  const short = (lines: readonly string[]) =>
    lines.map((line) => (line.length > LINE_CHARS ? `${line.slice(0, LINE_CHARS - 1)}…` : line));
  return { recipeId: id, ...rest, grave: short(rest.grave), changes: short(rest.changes) };
}

function sayGrave(change: GraveChange): string {
  switch (change.code) {
    case "allergens": {
      const named = change.new.map(({ allergen, foods }) => `${allergen} (${foods.join(", ")})`);
      return `now ${change.of === "contains" ? "contains" : "may hide"} ${named.join(", ")}`;
    }
    case "unknown foods":
      return `nobody knows what is in its ${change.foods.join(", ")}: read the pack`;
    case "keeps shorter":
      return `keeps ${change.beforeDays} → ${count(change.afterDays, "day")} in the fridge: go by the shorter for what you have, too`;
    case "freezes worse":
      return `${change.after === "no" ? "is not to be frozen any more" : "freezes badly"}${change.reason === "" ? "" : `: ${change.reason}`}`;
  }
}
