import { Temporal } from "temporal-polyfill";
import type { StockProblem } from "../../shared/stock/problems.ts";
import { writeHalves } from "../../shared/words/halves.ts";
import { count } from "../../shared/words/plural.ts";
import { writeDate, writeWhen } from "../../shared/words/write-when.ts";

/** One sentence for a member: what was wrong, and what to do instead. */
export function sayStockProblem(problem: StockProblem, zone: string): string {
  switch (problem.code) {
    case "lot is gone":
      return "Those portions are no longer there. Type /stock to see what is.";
    case "portions not halves":
      return "Portions are counted in halves: type a number such as 1, 4, ½ or 1½.";
    case "counted so already":
      return `There are ${count(problem.portions, "portion")} by my count too. Nothing was changed.`;
    case "counted more than cooked":
      return `That would be more of this batch than was cooked: ${count(problem.most, "portion")} at most can be there, not ${writeHalves(problem.counted)}. If you cooked more than you logged, log the rest as a batch of its own.`;
    case "none in stock":
      return "There is none of that in stock. Type /stock to see what there is.";
    case "all past its date":
      return "All that is left is past its date: throw it away. Nothing was recorded.";
    case "thawing still":
      return `It is thawing still, until ${writeWhen(Temporal.Instant.from(problem.readyAt), zone)}. Nothing was recorded.`;
    case "not so many portions":
      return `There ${problem.have <= 1 ? "is" : "are"} only ${count(problem.have, "portion")} there, not ${writeHalves(problem.asked)}. Nothing was changed.`;
    case "already frozen":
      return "Those portions are in the freezer already.";
    case "not in the freezer":
      return "Only portions in the freezer can be set to thaw. Type /stock to see where they are.";
    case "past its date":
      return `Those portions had to be eaten by ${writeDate(Temporal.PlainDate.from(problem.discardBy))}. Throw them away; freezing or giving them does not make them safe.`;
    case "no fridge days left after thawing":
      return "Those portions had used too many of their days in the fridge before they were frozen to be thawed there. Heat them straight from frozen to 74 °C and eat at once.";
    case "cooked in the future":
      return `${writeWhen(Temporal.Instant.from(problem.cookedAt), zone)} has not come yet. Type when the cooking ended, such as “today 18:30” or “now”.`;
    case "cooked too long ago":
      return `That was cooked ${count(problem.daysAgo, "day")} ago and keeps ${count(problem.keepsDays, "day")} in the fridge. If it stood in the fridge since then, throw it away. Nothing was logged.`;
    case "froze more than cooked":
      return `You cannot freeze ${writeHalves(problem.froze)} of ${count(problem.cooked, "portion")}. Type a smaller number in freeze.`;
    case "thawed since":
      return "Those portions have been thawing since another day, so their days in the fridge are used and setting them to thaw stays. Type /stock to eat, freeze or throw away.";
    case "nothing to undo":
      return "There is nothing to undo.";
  }
}
