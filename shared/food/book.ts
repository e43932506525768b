import type { FoodId } from "../ids.ts";
import type { Food } from "./types.ts";

/** The foods known to a group, by id. */
export interface FoodBook {
  readonly foods: readonly Food[];
  readonly byId: (id: FoodId) => Food | null;
}

export function foodBook(foods: readonly Food[]): FoodBook {
  const index = new Map(foods.map((food) => [food.id, food]));
  return { foods, byId: (id) => index.get(id) ?? null };
}
