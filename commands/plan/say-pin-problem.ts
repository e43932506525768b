import type { PinProblem } from "../../shared/allocation/why-not-pinned.ts";
import { count } from "../../shared/words/plural.ts";
import { writeDate } from "../../shared/words/write-when.ts";

/** Why a dish cannot be kept for a meal, in one sentence. `meal` is "Thu 15 Oct, 12:30 lunch". */
export function sayPinProblem(problem: PinProblem, title: string, meal: string): string {
  switch (problem.code) {
    case "nothing good left":
      return `No whole portion of ${title} is left that is still good.`;
    case "kept for other meals":
      return `All portions of ${title} are pinned to other meals.`;
    case "still thawing then":
      return `${title} is still thawing at ${meal}.`;
    case "too soon to thaw":
      return `${title} is in the freezer and needs ${count(Math.ceil(problem.leadHours), "hour")} in the fridge to thaw: ${meal} is too soon.`;
    case "too few days to thaw":
      return `${title} had used too many of its days in the fridge before it was frozen to be thawed for ${meal}: heat it straight from frozen to 74 °C instead.`;
    case "past its date by then":
      return `${title} must be eaten by ${writeDate(problem.until)}${WHY_NOT[problem.not]}, so it cannot wait for ${meal}.`;
  }
}

const WHY_NOT = {
  "freezes badly": " and freezes badly",
  "thawed already": " and was thawed already",
  "too late to freeze": " and there is no time left to freeze and thaw it",
  "too few days": " and has too few days left to be frozen and thawed",
} as const;
