import { readFileSync } from "node:fs";
import { type FoodBook, foodBook } from "../../shared/food/book.ts";
import { parseFoodTable } from "./parse.ts";

const TABLE = new URL("../../prisma/seed/foods.txt", import.meta.url);

/** Reads the food table that comes with the bot, once, at start. Throws with all its faults at once. */
export function loadFoodBook(): FoodBook {
  return foodBook(parseFoodTable(readFileSync(TABLE, "utf8")));
}
