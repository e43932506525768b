import type { FoodBook } from "../../shared/food/book.ts";
import { type StatedLonger, statedLonger } from "../../shared/keeping/coach-word.ts";
import { type Confirmable, confirmable, resolveKeeping } from "../../shared/keeping/resolve.ts";
import type { Recipe } from "../../shared/recipe/types.ts";
import { count } from "../../shared/words/plural.ts";
import { writeWhen } from "../../shared/words/write-when.ts";
import type { ConfirmedPart, KeepingWord } from "../kit/keeping-words.ts";
import type { PublishedRecipe } from "../kit/ports.ts";
import { writePress } from "../kit/press.ts";
import { type Button, type Part, type Reply, type Row, reply, rows, text } from "../kit/reply.ts";

const CAUTION =
  "More days in the fridge give germs that grow in the cold, Listeria among them, more time, and nobody sees or smells them. Local food codes and a fridge at 5 °C or colder come first.";

/** What the chart says of a recipe, what the coach states, what confirming it means, and who did. */
export function keepingWordReply(
  published: PublishedRecipe,
  words: readonly KeepingWord[],
  foods: FoodBook,
  zone: string,
): Reply {
  const { recipe } = published;
  const stated = statedLonger(recipe, foods);
  const found = confirmable(recipe, foods);
  const chart = found?.longer.chart ?? resolveKeeping(recipe, foods, []);
  const last = words.at(-1);
  const stands = last?.kind === "given";
  return reply(headingOf(recipe, chart.fridgeDays, found, stands), {
    parts: [
      ...(stated.length === 0 ? [] : [rows("Longer than the chart", stated.map(partRow))]),
      ...(found === null ? whyNot(stated) : [text(...meaning(published, found))]),
      ...(last === undefined ? [] : [text(sayWord(last, zone))]),
    ],
    cautions: found === null ? [] : [CAUTION],
    buttons: found === null ? [] : buttonsOf(published, found.longer.coach.fridgeDays, stands),
  });
}

/** What is written down with a word: each part it makes longer, with the chart's figure and source. */
export function confirmedParts(recipe: Recipe, foods: FoodBook): readonly ConfirmedPart[] {
  return statedLonger(recipe, foods)
    .filter(({ limit }) => limit.stays === null)
    .map(({ part, statedDays, limit }) => ({
      part,
      coachDays: statedDays,
      chartDays: limit.days,
      source: sourceOf(limit),
    }));
}

function headingOf(
  { title }: Recipe,
  chartDays: number,
  found: Confirmable | null,
  stands: boolean,
): string {
  if (found === null) return `${title}: ${count(chartDays, "day")} in the fridge, by the chart.`;
  const days = found.longer.coach.fridgeDays;
  const what = `${title}${withoutParts(found)}`;
  return stands
    ? `${what}: ${count(days, "day")} in the fridge, on your word; chart: ${count(chartDays, "day")}.`
    : `${what}: ${count(chartDays, "day")} in the fridge by the chart; you state ${days}.`;
}

/** " without the dressing": what must be left out for the longer time. */
export function withoutParts({ without }: Confirmable): string {
  return without.length === 0 ? "" : ` without the ${without.join(" and the ")}`;
}

function partRow({ part, statedDays, limit }: StatedLonger): Row {
  return {
    label: part,
    figure: `chart: ${count(limit.days, "day")}, you: ${count(statedDays, "day")}`,
    note: `${sourceOf(limit)}${limit.stays === null ? "" : `. The chart's stays: ${STAYS[limit.stays]}`}`,
  };
}

function sourceOf({ row }: StatedLonger["limit"]): string {
  return row === null
    ? "seven days at 5 °C, the day of cooking counted (FDA Food Code 3-501.17)"
    : `${row.name} (${row.source})`;
}

const STAYS = {
  "raw animal food": "raw meat, fish and egg keep no longer on anybody's word",
  "fish or seafood": "fish and seafood keep no longer on anybody's word",
  sprouts: "sprouts keep no longer on anybody's word",
} as const;

function whyNot(stated: readonly StatedLonger[]): readonly Part[] {
  return [
    text(
      stated.length === 0
        ? "You state no more days than the published chart gives, so there is nothing to confirm. To state more, revise the recipe: Keeps 5 days in the fridge."
        : "There is nothing to confirm: the part that decides keeps no longer on anybody's word.",
    ),
  ];
}

/** What is being taken responsibility for. */
function meaning({ revisionNumber }: PublishedRecipe, found: Confirmable): readonly string[] {
  const { coach, chart } = found.longer;
  const days = count(coach.fridgeDays, "day");
  return [
    `On your word, everyone who logs revision ${revisionNumber}${withoutParts(found)} from then on is told to eat it within ${days} instead of ${chart.fridgeDays}. You answer for the days beyond the chart.`,
    `Never so for members who say that somebody pregnant, under five, over 65 or with a weak immune system eats along: they keep ${count(chart.fridgeDays, "day")}.`,
    "Never more than seven days at 5 °C, the day of cooking counted. A new revision needs your word anew. You can take it back at any time.",
  ];
}

function sayWord({ kind, by, at, parts }: KeepingWord, zone: string): string {
  const who = by?.name ?? "a coach who has left";
  const what = parts.map(({ part, coachDays }) => `${part} ${count(coachDays, "day")}`).join(", ");
  return `${kind === "given" ? "Confirmed" : "Taken back"} by ${who}, ${writeWhen(at, zone)}${kind === "given" ? ` (${what})` : ""}.`;
}

function buttonsOf(
  { id, revisionId }: PublishedRecipe,
  days: number,
  stands: boolean,
): readonly Button[] {
  return [
    stands
      ? {
          id: writePress("recipe keeping", "back", id, revisionId),
          label: "Take my word back",
          weight: "grave",
        }
      : {
          id: writePress("recipe keeping", "give", id, revisionId, days),
          label: `Confirm ${count(days, "day")} on my word`,
          weight: "grave",
        },
  ];
}
