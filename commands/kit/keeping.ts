import type { FoodBook } from "../../shared/food/book.ts";
import { countedFor, whoseWord } from "../../shared/keeping/coach-word.ts";
import { resolveKeeping } from "../../shared/keeping/resolve.ts";
import type { KeepingTime } from "../../shared/keeping/types.ts";
import type { Profile } from "../../shared/people/types.ts";
import { count } from "../../shared/words/plural.ts";
import type { PublishedRecipe } from "./ports.ts";

/**
 * How long a revision keeps for who eats with a member: longer than the chart says only on the coach's
 * standing word, and never for the vulnerable.
 */
export function keepingFor(
  { recipe, longerWord }: Pick<PublishedRecipe, "recipe" | "longerWord">,
  foods: FoodBook,
  without: readonly string[],
  { vulnerable }: Pick<Profile, "vulnerable">,
): KeepingTime {
  return countedFor(resolveKeeping(recipe, foods, without, longerWord !== null), vulnerable);
}

/** Whose word counts: "coach's word, 5 days; chart: 4 days". Empty where there is only one. */
export function sayWhose(keeping: KeepingTime): string {
  const { longer } = keeping;
  if (longer === null) return "";
  const [coach, chart] = [longer.coach, longer.chart].map(({ fridgeDays }) => fridgeDays);
  return whoseWord(keeping) === "coach"
    ? `coach's word, ${count(coach ?? 0, "day")}; chart: ${count(chart ?? 0, "day")}`
    : `the chart's ${count(chart ?? 0, "day")}; the coach's ${coach ?? 0} are not for your table`;
}
