import { type BookIndex, bookIndex } from "../../../shared/book/book-index.ts";
import type { BookQuery, RecipeInBook } from "../../../shared/book/types.ts";
import type { FoodBook } from "../../../shared/food/book.ts";
import { recipeId, revisionId } from "../../../shared/ids.ts";
import { FOODS, recipeOf } from "../../kit/recipes-and-context.ts";

/** Recipes in a book from their texts. */
export function inBook(texts: readonly string[], foods: FoodBook = FOODS): readonly RecipeInBook[] {
  return texts.map((text, at) => ({
    id: recipeId(`r${at}`),
    revisionId: revisionId(`v${at}`),
    recipe: recipeOf(text, foods),
  }));
}

export function bookOf(texts: readonly string[], foods: FoodBook = FOODS): BookIndex {
  return bookIndex(inBook(texts, foods), foods);
}

/** A recipe's text: a title and ingredient lines, for four portions. */
export function pot(title: string, ...lines: readonly string[]): string {
  return `${title}\nMakes 4 portions\n${lines.map((line) => `- ${line}`).join("\n")}\nSteps\n1. Simmer.`;
}

/** A query for what is named, with nothing else asked. */
export function query(rest: Partial<BookQuery>): BookQuery {
  return {
    style: "us",
    words: "",
    uses: [],
    energyKcal: null,
    proteinG: null,
    freezes: null,
    freeOf: [],
    ...rest,
  };
}
