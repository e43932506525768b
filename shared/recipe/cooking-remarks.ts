import type { FoodBook } from "../food/book.ts";
import { isAsBought, saidState } from "./line-words.ts";
import type { ReadRemark } from "./problems.ts";
import type { Line, LineChoice } from "./types.ts";
import { isCountedInFull, isDeepFryingOil } from "./uptake.ts";

/** What a coach should know about how a line's food is counted. */
export function cookingRemarks(built: Line, line: number, foods: FoodBook): readonly ReadRemark[] {
  return [built.main, ...built.swaps].flatMap((choice) => remarksOn(choice, line, foods));
}

function remarksOn(choice: LineChoice, line: number, foods: FoodBook): readonly ReadRemark[] {
  const { foodText, foodId, preparation, tableGPerG, uptake } = choice;
  const food = foodId === null ? null : foods.byId(foodId);
  const found: ReadRemark[] = [];
  if (food === null) return found;
  if (tableGPerG !== 1) found.push({ code: "converted", line, foodText, tableFood: food.name });
  if (isCountedInFull(choice)) found.push({ code: "counted in full", line, foodText });
  else if (isDeepFryingOil(choice)) {
    found.push({ code: "oil uptake assumed", line, foodText, percent: Math.round(uptake * 100) });
  }
  const isDry = saidState(food.name) === "dry" && food.state === "raw";
  if (isDry && saidState(foodText) === null && saidState(preparation) === "cooked") {
    found.push({ code: "taken as dry", line, foodText });
  }
  if (isAsBought(`${foodText}, ${preparation}`) && food.refusePct === 0) {
    found.push({ code: "refuse not known", line, foodText });
  }
  return found;
}
