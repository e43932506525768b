import type { ReadRemark, RecipeProblem } from "../../shared/recipe/problems.ts";
import { sayAmountProblem } from "./say-problem.ts";

/** One sentence for a coach about a fault in a recipe's text, with its line where it has one. */
export function sayRecipeProblem(problem: RecipeProblem): string {
  const sentence = sayFault(problem);
  return "line" in problem ? `Line ${problem.line}: ${sentence}` : sentence;
}

function sayFault(problem: RecipeProblem): string {
  switch (problem.code) {
    case "text empty":
      return "The file is empty: write a title, “Makes 6 portions”, the ingredients and the steps.";
    case "text too long":
      return `The text has ${problem.chars} characters: a recipe may have ${problem.max}.`;
    case "too many lines":
      return `The text has ${problem.lines} lines: a recipe may have ${problem.max}.`;
    case "line too long":
      return `longer than ${problem.max} characters; break it up.`;
    case "title too long":
      return `the title is longer than ${problem.max} characters; shorten it.`;
    case "title missing":
      return `“${problem.text}” stands where the title should: begin the text with the recipe's title.`;
    case "yield missing":
      return "Nothing says how many portions it makes: add a line such as “Makes 6 portions”.";
    case "yield not understood":
      return `“${problem.text}” does not say how many portions it makes; write such as “Makes 6 portions”.`;
    case "yield given twice":
      return "what it makes is said for the second time; keep one.";
    case "portions not whole":
      return `${problem.asked} portions are not whole; write such as “Makes 6 portions”.`;
    case "portions out of range":
      return `${problem.asked} portions; write a number from 1 to ${problem.max}.`;
    case "no ingredients":
      return "There are no ingredients: add an “Ingredients” heading and one ingredient a line.";
    default:
      return sayFaultOfPart(problem);
  }
}

type FaultOfPart = Extract<
  RecipeProblem,
  {
    readonly code:
      | "ingredient empty"
      | "amount wrong"
      | "swap without ingredient"
      | "part name too long"
      | "part named twice"
      | "part without ingredients"
      | "too many parts"
      | "too many tags"
      | "keeping of unknown part"
      | "keeping out of range";
  }
>;

function sayFaultOfPart(problem: FaultOfPart): string {
  switch (problem.code) {
    case "ingredient empty":
      return "an ingredient is missing after the mark; write one or remove the line.";
    case "amount wrong":
      return `in “${problem.text}”: ${sayAmountProblem(problem.problem)}`;
    case "swap without ingredient":
      return "a swap (“or …”) has no ingredient before it; put it below the one it replaces.";
    case "part name too long":
      return `the name of the part is longer than ${problem.max} characters; shorten it.`;
    case "part named twice":
      return `there is a part named “${problem.name}” already; give this one another name.`;
    case "part without ingredients":
      return `the part “${problem.name}” has no ingredients; add some or remove its heading.`;
    case "too many parts":
      return `There are more parts than ${problem.max}: put some together.`;
    case "too many tags":
      return `more tags than ${problem.max}; remove some.`;
    case "keeping of unknown part":
      return `there is no part named “${problem.name}”; the parts are ${problem.parts.join(", ")}.`;
    case "keeping out of range":
      return `“${problem.text}” is no keeping time I can use; write such as “Keeps 3 days in the fridge”.`;
  }
}

/** One sentence for a coach about something worth a look, which did not stop the recipe. */
export function sayReadRemark(remark: ReadRemark): string {
  switch (remark.code) {
    case "food not found":
      return `Line ${remark.line}: “${remark.foodText}” is not in the food table, so its figures are missing.`;
    case "cannot be weighed":
      return `Line ${remark.line}: “${remark.foodText}” by the ${remark.unit} cannot be weighed; add grams, such as “1 ${remark.unit} (40 g)”.`;
    case "no amount":
      return `Line ${remark.line}: “${remark.foodText}” has no amount; it is shown and not counted.`;
    case "converted":
      return `Line ${remark.line}: “${remark.foodText}” is counted as ${remark.tableFood}, by the published weight that it takes up in cooking.`;
    case "taken as dry":
      return `Line ${remark.line}: “${remark.foodText}” is counted as weighed dry; if it is weighed cooked, write “cooked ${remark.foodText}”.`;
    case "oil uptake assumed":
      return `Line ${remark.line}: of “${remark.foodText}” ${remark.percent} % is taken to be eaten; state it, such as “about 40 ml taken up”.`;
    case "counted in full":
      return `Line ${remark.line}: “${remark.foodText}” is counted in full; state what is eaten, such as “30 % taken up”.`;
    case "refuse not known":
      return `Line ${remark.line}: nothing says how much of “${remark.foodText}” is bone, shell or peel, so all is counted; write the edible weight.`;
    case "used not clear":
      return `Line ${remark.line}: “${remark.name}” makes more than is used, and all of it is counted; say how much is, such as “(makes 300 g, 180 g used)”.`;
    case "taken as note":
      return `Line ${remark.line}: “${remark.text}” was taken as a note.`;
    case "keeping inside a step":
      return `Line ${remark.line}: a keeping time inside a step is not used; give it a line of its own.`;
    case "yield is a range":
      return `Line ${remark.line}: of ${remark.from} to ${remark.to} portions, ${remark.from} is taken; write one number if that is wrong.`;
    case "no steps":
      return "There are no steps.";
    case "no keeping stated":
      return "Nothing is said about keeping, so the published chart decides.";
  }
}
