import type { Food } from "../../shared/food/types.ts";
import { weigh } from "../../shared/food/weigh.ts";
import { readAmount } from "../../shared/quantity/read-amount.ts";
import { writeAmount, writeGrams } from "../../shared/quantity/write-amount.ts";
import { foldWords } from "../../shared/words/fold.ts";
import { count, singular } from "../../shared/words/plural.ts";
import { excerpt } from "../../shared/words/problems.ts";
import { Refusal } from "../kit/command.ts";
import { listed, sayAmountProblem } from "../kit/say-problem.ts";

/** An amount of a food that was asked for, weighed. */
export interface WeighedAmount {
  readonly grams: number;
  readonly typed: string;
  /** "250 g", "2 tbsp (27 g)", "3 thighs (447 g)". */
  readonly written: string;
}

/** Spoons and cups are US customary, as the source's own weights are. */
const SPOONS = "us";

/**
 * Weighs what was typed: a mass, a volume by the food's density, a count by the weight of one, or a
 * number of a published measure ("2 slices"). Refuses what the table cannot weigh.
 */
export function weighTyped(food: Food, typed: string): WeighedAmount {
  const read = readAmount(typed);
  if (!read.ok) throw new Refusal(sayAmountProblem(read.problem));
  const { amount, stated, rest } = read.value;
  if (amount.to !== null) {
    throw new Refusal("That is a range: type one amount, such as 250 g.");
  }
  const measure = measureNamed(food, unitAndRest(typed));
  if (measure !== null) {
    const grams = (weighedNumber(typed) ?? amount.value) * measure.grams;
    return { grams, typed, written: `${excerpt(typed)} (${writeGrams(grams)})` };
  }
  const ofOne = rest === "" || isOneOf(food, rest);
  const grams = stated !== null || ofOne ? weigh(stated ?? amount, food, SPOONS) : null;
  if (grams === null) throw new Refusal(cannotWeigh(food, typed));
  const { value, unit } = amount;
  const counted = unit === "piece" && food.one !== null ? count(value, food.one.word) : null;
  return { grams, typed, written: withWeight(counted ?? writeAmount(amount), grams) };
}

function withWeight(amount: string, grams: number): string {
  const weight = writeGrams(grams);
  return amount === weight ? amount : `${amount} (${weight})`;
}

/** "2 cups, chopped" -> "cup chopped" */
function unitAndRest(typed: string): string {
  return singularWords(typed.replace(/^[\s\d.,/½¼¾⅓⅔⅛]+/u, ""));
}

function weighedNumber(typed: string): number | null {
  const read = readAmount(typed.replace(/\p{L}.*$/u, "").trim());
  return read.ok ? read.value.amount.value : null;
}

/** A published measure by its name, or by the name's part before the comma where nothing else is said. */
function measureNamed(food: Food, said: string): Food["measures"][number] | null {
  if (said === "") return null;
  const whole = food.measures.find(({ name }) => singularWords(name) === said);
  // Spoons and cups alone go by the density, which is of the food as it is most used.
  if (whole !== undefined || /^(?:cup|tbsp|tsp|tablespoon|teaspoon)$/u.test(said)) {
    return whole ?? null;
  }
  return food.measures.find(({ name }) => singularWords(name.split(",")[0] ?? "") === said) ?? null;
}

/** "thighs", "large eggs": the thing that the table has the weight of. */
function isOneOf(food: Food, rest: string): boolean {
  const words = singularWords(rest).split(" ");
  const names = [food.one?.word ?? "", food.name].flatMap((name) => singularWords(name).split(" "));
  return food.one !== null && words.every((word) => names.includes(word));
}

function singularWords(text: string): string {
  return foldWords(text).split(" ").map(singular).join(" ");
}

function cannotWeigh(food: Food, typed: string): string {
  const known = [
    "250 g",
    ...(food.densityGPerMl === null ? [] : ["2 tbsp"]),
    ...(food.one === null ? [] : [`2 ${food.one.word}`]),
    ...food.measures.slice(0, 3).map(({ name }) => `1 ${name}`),
  ];
  return `“${excerpt(typed)}” of ${food.name} cannot be weighed, for nothing published says what it weighs: type such as ${listed(known)}.`;
}
