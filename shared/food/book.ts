import type { FoodId } from "../ids.ts";
import type { Food } from "./types.ts";

/** The foods known to a group, by id. */
export interface FoodBook {
  readonly foods: readonly Food[];
  readonly byId: (id: FoodId) => Food | null;
  /** The book that this one adds a group's own foods to; null for the table itself. */
  readonly base: FoodBook | null;
}

export function foodBook(foods: readonly Food[]): FoodBook {
  return layer(foods, null);
}

/** A group's book: the table with the group's own foods before it. The table's index is shared. */
export function withOwnFoods(base: FoodBook, own: readonly Food[]): FoodBook {
  return own.length === 0 ? base : layer(own, base);
}

function layer(own: readonly Food[], base: FoodBook | null): FoodBook {
  const index = new Map(own.map((food) => [food.id, food]));
  return {
    foods: base === null ? own : [...own, ...base.foods],
    byId: (id) => index.get(id) ?? base?.byId(id) ?? null,
    base,
  };
}
