import qty from "js-quantities";
import { findFood } from "../../shared/food/find.ts";
import { nutritionOf } from "../../shared/nutrition/portion.ts";
import { RECIPE_LIMITS } from "../../shared/recipe/problems.ts";
import { readRecipe } from "../../shared/recipe/read.ts";
import { withAlternatives } from "../../shared/recipe/read-alternatives.ts";
import { readIngredient } from "../../shared/recipe/read-ingredient.ts";
import { scaleRecipe } from "../../shared/recipe/scale.ts";
import { type WeighMeans, weighChoice } from "../../shared/recipe/weigh-choice.ts";
import { loadFoodBook } from "../../src/foods/load.ts";
import { TEST_LINES, TUNING_LINES } from "../standards/ingredient-lines/score.ts";
import { distinctLines } from "./many-lines.ts";
import { median, report, timed } from "./measure.ts";

const LABELLED = [...TUNING_LINES, ...TEST_LINES].map(({ text }) => text);
/** 20,000 lines a second. */
const LINES_A_MS = 20;

/**
 * The reader: lines a second with and without the food lookup, a recipe of 60 lines up to its figures,
 * and how time grows with the length of hostile text.
 */
export async function benchRead(write: (line: string) => void): Promise<boolean> {
  const foods = loadFoodBook();
  const means = { foods, spoons: "us" as const, takenFor: {} };
  const readAll = () => LABELLED.map((text) => readIngredient(text, 1));
  const read = await timed(readAll, 100, 20);
  const results = readAll();
  const quantities = results.map((outcome) =>
    outcome.ok && outcome.value.main.amount !== null
      ? `${outcome.value.main.amount.value} g`
      : "1 g",
  );
  const parsed = await timed(() => quantities.map((text) => qty.parse(text)), 60, 10);
  const distinct = distinctLines(foods.foods);
  const lookedUp = await timed(() => lookUpAll(distinct, means), 5, 2);
  const perSecond = (count: number, ms: number) => Math.round((1000 * count) / ms);
  write(
    `lines a second: ${perSecond(LABELLED.length, median(read))} read (amount, food text, preparation), ${perSecond(distinct.length, median(lookedUp))} with the food looked up and weighed, no two alike`,
  );
  const sixty = recipeOf(60);
  const whole = await timed(() => figures(sixty, foods), 60, 10);
  const recipe = readRecipe(sixty, foods);
  const clone = await timed(() => JSON.parse(JSON.stringify(recipe)), 100, 10);
  const ok = [
    report(
      {
        what: `${LABELLED.length} lines read, foods not looked up`,
        ms: median(read),
        budgetMs: LABELLED.length / LINES_A_MS,
        reference: {
          name: "js-quantities parsing as many bare amounts",
          ms: median(parsed),
          times: 8,
        },
      },
      write,
    ),
    report(
      {
        what: `${distinct.length} lines, no two alike, read, looked up and weighed`,
        ms: median(lookedUp),
        budgetMs: distinct.length / LINES_A_MS,
        reference: {
          name: `js-quantities parsing ${LABELLED.length} bare amounts`,
          ms: median(parsed),
          times: 2500,
        },
      },
      write,
    ),
    report(
      {
        what: "a recipe of 60 lines read, matched, scaled and summed",
        ms: median(whole),
        budgetMs: 15,
        reference: { name: "JSON out and in of the result", ms: median(clone), times: 60 },
      },
      write,
    ),
    await growth(foods, write),
  ];
  return !ok.includes(false);
}

function lookUpAll(lines: readonly string[], means: WeighMeans): void {
  const knows = (name: string) => findFood(means.foods, name, 1).length > 0;
  for (const text of lines) {
    const outcome = readIngredient(text, 1);
    if (!outcome.ok) continue;
    const { main, swaps } = withAlternatives(outcome.value, knows);
    for (const choice of [main, ...swaps]) weighChoice(choice, means);
  }
}

function recipeOf(lines: number): string {
  const some = Array.from(
    { length: lines },
    (_, at) => `- ${LABELLED[(at * 7) % LABELLED.length]}`,
  );
  return `Bench pot\nMakes 8 portions\n\nIngredients\n${some.join("\n")}\n\nMethod\n1. Simmer it for 25 minutes, to 74 °C.\n\nKeeps 3 days`;
}

function figures(text: string, foods: ReturnType<typeof loadFoodBook>): void {
  const read = readRecipe(text, foods);
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  const scaled = scaleRecipe(read.value.recipe, foods, {
    by: { kind: "portions", portions: 8 },
    without: [],
    swaps: {},
  });
  if (!scaled.ok) throw new Error("cannot be scaled");
  nutritionOf(scaled.value, foods, { cookedWeightG: null });
}

/** Pieces that a careless pattern would go over again and again. */
const HOSTILE = [
  "(",
  "1 ",
  "1/",
  ", ",
  " or ",
  "**",
  "a ",
  "keeps 3 days and ",
  "½-",
  "<p>",
  "3 days / ",
  "salt & ",
  " x 2",
  ". A",
  "each ",
  "for the ",
  "£1",
  "–",
];

const MOST_TIMES = 5;

/**
 * Four times the text takes at most about four times as long, whether the lines are longer or more. A
 * quarter is allowed for what is built up once and for noise.
 */
async function growth(
  foods: ReturnType<typeof loadFoodBook>,
  write: (line: string) => void,
): Promise<boolean> {
  let worst = { name: "", factor: 0, ms: 0 };
  for (const piece of HOSTILE) {
    const line = (chars: number) => `- 1 g a${piece.repeat(chars)}`.slice(0, chars);
    const text = (lines: number, chars: number) =>
      `T\nMakes 1\n${`${line(chars)}\n`.repeat(lines)}`.slice(0, RECIPE_LIMITS.chars);
    const took = async (lines: number, chars: number) => {
      const said = text(lines, chars);
      return Math.min(...(await timed(() => readRecipe(said, foods), 15, 2)));
    };
    const pairs = [
      [async () => ({ small: await took(33, 150), large: await took(33, 600) }), "longer lines"],
      [async () => ({ small: await took(12, 400), large: await took(48, 400) }), "more lines"],
    ] as const;
    for (const [take, how] of pairs) {
      let { small, large } = await take();
      // What the machine was busy with meanwhile is not there each time; what the text does is.
      for (let again = 0; again < 3 && large / small > MOST_TIMES; again += 1) {
        const next = await take();
        small = Math.min(small, next.small);
        large = Math.min(large, next.large);
      }
      const factor = large / small;
      // Below a tenth of a millisecond there is nothing to measure.
      if (small > 0.1 && factor > worst.factor) {
        worst = { name: `“${piece}”, ${how}`, factor, ms: large };
      }
    }
  }
  const isLinear = worst.factor <= MOST_TIMES;
  write(
    `four times the hostile text takes at most ${worst.factor.toFixed(1)} times as long (${worst.name}: ${worst.ms.toFixed(1)} ms): ${isLinear ? "ok" : "more than linear"}`,
  );
  return isLinear;
}
