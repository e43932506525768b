import type { FoodBook } from "../../shared/food/book.ts";
import { readBoxes } from "../../shared/recipe/containers-to-fill.ts";
import { readHandList } from "../../shared/recipe/hand-list.ts";
import { findLineInHand } from "../../shared/recipe/in-hand.ts";
import { marinadeOf } from "../../shared/recipe/marinade.ts";
import type { ScaleRequest } from "../../shared/recipe/scale.ts";
import { readTray } from "../../shared/recipe/tray.ts";
import type { LineChoice, Recipe } from "../../shared/recipe/types.ts";
import { atWallClock, dateIn, type Instant, timeIn } from "../../shared/time.ts";
import { excerpt } from "../../shared/words/problems.ts";
import { readTimeOfDay } from "../../shared/words/read-time-of-day.ts";
import { readUntil } from "../../shared/words/read-until.ts";
import { readWhen } from "../../shared/words/read-when.ts";
import { Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { resolveSwaps, resolveWithout } from "../kit/recipe-options.ts";
import { sayScaleProblem } from "../kit/say-problem.ts";
import type { CardRequest } from "./card-request.ts";

/** What decides how much is made, as typed. */
interface SizeAsked {
  readonly portions?: number | undefined;
  readonly have?: string | undefined;
  readonly fill?: string | undefined;
}

/** The options of a card as typed. */
export interface Asked extends SizeAsked {
  readonly without?: string | undefined;
  readonly swap?: string | undefined;
  readonly units?: "metric" | "us" | undefined;
  readonly tray?: string | undefined;
  readonly start?: string | undefined;
}

/** For a schema: whether not more than one of the options decides the size. */
export function hasOneSize({ portions, have, fill }: SizeAsked): boolean {
  return [portions, have, fill].filter((size) => size !== undefined).length <= 1;
}

export const ONE_SIZE =
  "Type one of portions:, have: and fill:, not both or all: each decides the size.";

/** What is asked for, resolved against the recipe; refuses what does not fit it. */
export function requestOf(context: Context, recipe: Recipe, asked: Asked): CardRequest {
  const without = asked.without === undefined ? [] : resolveWithout(recipe, asked.without);
  const swaps = asked.swap === undefined ? {} : resolveSwaps(recipe, asked.swap);
  return {
    by: sizeAsked(context.foods, recipe, asked, swaps),
    without,
    swaps,
    units: asked.units ?? "as written",
    ...(asked.tray === undefined ? {} : { tray: orRefuse(readTray(asked.tray)) }),
    ...(asked.start === undefined ? {} : { start: startOf(context, recipe, asked.start) }),
  };
}

function sizeAsked(
  foods: FoodBook,
  recipe: Recipe,
  { portions, have, fill }: Asked,
  swaps: CardRequest["swaps"],
): ScaleRequest["by"] {
  if (have !== undefined) return inHand(recipe, foods, have, swaps);
  if (fill !== undefined) return { kind: "fill", ...orRefuse(readBoxes(fill)) };
  return portions === undefined ? { kind: "as written" } : { kind: "portions", portions };
}

/** What is in hand, by the names that the recipe gives the foods. */
function inHand(
  recipe: Recipe,
  foods: FoodBook,
  typed: string,
  swaps: CardRequest["swaps"],
): ScaleRequest["by"] {
  const choices = choicesTaken(recipe, swaps);
  const held = orRefuse(readHandList(typed, recipe, foods)).map(({ grams, foodText }) => {
    return { grams, foodText: orRefuse(findLineInHand(choices, foods, foodText)).food };
  });
  return { kind: "have", foods: held };
}

function orRefuse<T>(
  read:
    | { readonly ok: true; readonly value: T }
    | { readonly ok: false; readonly problem: Parameters<typeof sayScaleProblem>[0] },
): T {
  if (!read.ok) throw new Refusal(sayScaleProblem(read.problem));
  return read.value;
}

function choicesTaken(recipe: Recipe, swaps: CardRequest["swaps"]): readonly LineChoice[] {
  return recipe.components.flatMap((part) =>
    part.lines.map((line) => [line.main, ...line.swaps][swaps[line.key] ?? 0] ?? line.main),
  );
}

/** Until then a night's hour is still the evening before. */
const NIGHT_ENDS = 4;
const EVENING_STARTS = 16;

/** When the marinating starts: a bare time is today's, in the small hours an evening's time is yesterday's. */
function startOf({ now, member }: Context, recipe: Recipe, typed: string): Instant {
  if (marinadeOf(recipe) === null) throw new Refusal(sayScaleProblem({ code: "no marinade" }));
  const { zone } = member.choice;
  const time = readTimeOfDay(typed);
  if (time.ok) {
    const isLastEvening = timeIn(now, zone).hour < NIGHT_ENDS && time.value.hour >= EVENING_STARTS;
    const today = dateIn(now, zone);
    const day = isLastEvening ? today.subtract({ days: 1 }) : today;
    return atWallClock(day, time.value, zone);
  }
  const past = readWhen(typed, now, zone);
  if (past.ok) return past.value;
  const ahead = readUntil(typed, now, zone);
  if (ahead.ok) return ahead.value;
  throw new Refusal(
    `“${excerpt(typed)}” is not a time I understand: type when you start to marinate, such as now, 18:30 or tomorrow 9:00.`,
  );
}
