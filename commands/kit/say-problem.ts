import type { AmountProblem } from "../../shared/quantity/problems.ts";
import type { ScaleCaution } from "../../shared/recipe/cautions.ts";
import type { ScaleProblem } from "../../shared/recipe/problems.ts";
import { count } from "../../shared/words/plural.ts";

/** Sentences for what can be wrong with what a member typed: what it was, and what to type instead. */

export function sayAmountProblem(problem: AmountProblem): string {
  switch (problem.code) {
    case "no number":
      return "There is no amount: type one such as 850 g, 2 lb or 1 1/2 cups.";
    case "not a number":
      return `“${problem.text}” is not an amount I understand: type such as 850 g, 2 lb or 1 1/2 cups.`;
    case "number negative":
      return `“${problem.text}” is below zero: type an amount above zero.`;
    case "divided by zero":
      return `“${problem.text}” divides by zero: type such as 1/2.`;
    case "number too big":
      return `That number is too big: type one up to ${problem.max}.`;
    case "range backwards":
      return `The range ${problem.from} to ${problem.to} runs backwards: type the smaller number first.`;
    case "amount is zero":
      return "The amount is zero: type an amount above zero.";
    case "amount too big":
      return `That is more than ${Math.round(problem.maxG / 1000)} kg: type a smaller amount.`;
  }
}

export function sayScaleProblem(problem: ScaleProblem): string {
  switch (problem.code) {
    case "portions not whole":
      return `Portions are counted whole, and ${problem.asked} is not: type such as 8.`;
    case "portions out of range":
      return `${problem.asked} portions cannot be made: type a number from 1 to ${problem.max}.`;
    case "no such part":
      return problem.parts.length === 0
        ? `This recipe has nothing to leave out, so not “${problem.text}” either.`
        : `There is no “${problem.text}” in this recipe: type one of ${listed(problem.parts)}.`;
    case "several parts match":
      return `“${problem.text}” fits several things: type one of ${listed(problem.parts)}.`;
    case "nothing left":
      return "That would leave nothing of the recipe: leave out less.";
    case "no such swap":
      return problem.choices === 0
        ? "This line has no swap: ask for the card again to see which have."
        : `This line has ${count(problem.choices, "swap")}, and not that one: ask for the card again.`;
    case "in hand not understood":
      return `“${problem.text}” is not something in hand: type an amount and a food, such as 850 g thigh.`;
    case "food not in recipe":
      return `There is no “${problem.text}” in this recipe: type one of ${listed(problem.foods)}.`;
    case "several foods match":
      return `“${problem.text}” fits several lines: type one of ${listed(problem.foods)}.`;
    case "food cannot be weighed":
      return `The recipe's ${problem.food} cannot be weighed, so nothing can be scaled by it: use portions: instead.`;
    case "too little in hand":
      return `${Math.round(problem.grams)} g of ${problem.food} is less than one portion takes (${Math.round(problem.onePortionG)} g): nothing can be made of it.`;
    case "too much in hand":
      return `That would make ${problem.portions} portions, more than ${problem.max}: type a smaller amount.`;
  }
}

/** "a, b or c", at most eight and then "and others". */
export function listed(names: readonly string[]): string {
  const shown = names.slice(0, 8);
  const last = shown.at(-1) ?? "";
  if (names.length > shown.length) return `${shown.join(", ")} and others`;
  return shown.length < 2 ? last : `${shown.slice(0, -1).join(", ")} or ${last}`;
}

export function sayScaleCaution(caution: ScaleCaution): string {
  switch (caution.code) {
    case "hold seasoning back":
      return `More than four times the recipe: start with three quarters of the ${caution.foods.join(", ")}, then taste.`;
    case "times do not scale":
      return "Oven and resting times stay as written: use more trays or pots, not more time.";
  }
}
