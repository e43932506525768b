import type { AmountProblem } from "../../shared/quantity/problems.ts";
import { writeCore } from "../../shared/quantity/temperature.ts";
import type { ScaleCaution } from "../../shared/recipe/cautions.ts";
import type { CoreCheck } from "../../shared/recipe/core-check.ts";
import type { ScaleProblem } from "../../shared/recipe/problems.ts";
import type { TrayLoad } from "../../shared/recipe/tray.ts";
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
    case "too much to fill":
      return `That would make ${problem.portions} portions, more than ${problem.max}: type a smaller amount.`;
    default:
      return sayProblemOfSize(problem);
  }
}

type ProblemOfSize = Extract<
  ScaleProblem,
  {
    readonly code:
      | "too many in hand"
      | "boxes not understood"
      | "boxes out of range"
      | "whole cannot be weighed"
      | "tray not understood"
      | "no marinade";
  }
>;

function sayProblemOfSize(problem: ProblemOfSize): string {
  switch (problem.code) {
    case "too many in hand":
      return `Those are more than ${problem.max} foods: type the few that are scarce.`;
    case "boxes not understood":
      return `“${problem.text}” does not say what to fill: type how many and the cooked weight of each, such as 6 boxes of 400 g.`;
    case "boxes out of range":
      return `${problem.boxes} boxes of ${Math.round(problem.boxG)} g cannot be filled: type from 1 to ${problem.maxBoxes} boxes of 20 g to 10 kg.`;
    case "whole cannot be weighed":
      return `Nobody can tell what this recipe weighs cooked (no weight for ${listed(problem.foods)}): use portions: instead.`;
    case "tray not understood":
      return `“${problem.text}” is not the size of a tray: type two sides of 10 to 100 cm, such as 40x30 cm.`;
    case "no marinade":
      return "This recipe marinates nothing, so start: has no times to work out: leave it out.";
  }
}

/** "a, b or c", at most eight and then "and others". */
export function listed(names: readonly string[]): string {
  const shown = names.slice(0, 8);
  const last = shown.at(-1) ?? "";
  if (names.length > shown.length) return `${shown.join(", ")} and others`;
  return shown.length < 2 ? last : `${shown.slice(0, -1).join(", ")} or ${last}`;
}

/** "a, b and c", at most six and then "and others". */
function together(names: readonly string[]): string {
  const shown = names.slice(0, 6);
  const last = shown.at(-1) ?? "";
  if (names.length > shown.length) return `${shown.join(", ")} and others`;
  return shown.length < 2 ? last : `${shown.slice(0, -1).join(", ")} and ${last}`;
}

/** One short paragraph about a scaled recipe. */
export function sayScaleCaution(caution: ScaleCaution): string {
  switch (caution.code) {
    case "hold back":
      return `More than four times the recipe: ${sayHoldBack(caution).join("; ")}.`;
    case "less boils away":
      return `Less boils away in a big pot: hold back a tenth of the ${together(caution.liquids)}, and add it if it gets too thick.`;
    case "oven loads":
      return sayLoad(caution.load);
    case "same depth":
      return `Keep the depth, then the oven time holds: ${sayArea(caution.factor)}.`;
    case "times do not scale":
      return ["Times stay as written: use more trays or pots, not more time."]
        .concat(sayChecks(caution.checks))
        .join(" ");
  }
}

function sayHoldBack({
  seasonings,
  thickeners,
  leavenings,
}: Extract<ScaleCaution, { readonly code: "hold back" }>): readonly string[] {
  return [
    seasonings.length === 0
      ? ""
      : `start with three quarters of the ${together(seasonings)}, then taste`,
    thickeners.length === 0
      ? ""
      : `keep back a quarter of the ${together(thickeners)} and add it only if it stays thin`,
    leavenings.length === 0 ? "" : `take a little less ${together(leavenings)}`,
  ].filter((part) => part !== "");
}

function sayArea(factor: number): string {
  return factor > 1
    ? `${Math.round(factor * 10) / 10} times the area, in more tins or a larger one`
    : `${Math.round(factor * 100)} % of the area, in fewer tins or a smaller one`;
}

function sayLoad({ tray, trays, loads }: TrayLoad): string {
  const { widthCm, depthCm } = tray;
  const inches = [widthCm, depthCm].map((cm) => Math.round(cm / 2.54)).join(" × ");
  const size = `${Math.round(widthCm)} × ${Math.round(depthCm)} cm (${inches} in)`;
  if (trays === 1) return `In one layer it fits on one tray of ${size}.`;
  const how = loads === 1 ? "in the oven together" : `two at a time, so ${loads} loads`;
  return `In one layer it takes about ${trays} trays of ${size}, ${how}. Crowded food steams instead of browning.`;
}

function sayChecks(checks: readonly CoreCheck[]): readonly string[] {
  if (checks.length === 0) return [];
  const said = checks.map((check) =>
    check.by === "look"
      ? `${together(check.foods)} opaque, shells open`
      : `${together(check.foods)} ${writeCore(check.coreC)}${check.restMinutes === 0 ? "" : `, then ${check.restMinutes} minutes of rest`}`,
  );
  return [`Done when the middle reads: ${said.join("; ")}.`];
}
