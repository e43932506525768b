import { ALLERGENS } from "../../shared/food/types.ts";
import type { LabelProblem } from "../../shared/label-entry/problems.ts";
import { listed } from "../kit/say-problem.ts";

const PER_EXAMPLES = "100 g, 100 ml, serving 30 g or serving 250 ml";

/** One sentence for a coach: what of the label cannot be read, and what to type instead. */
export function sayLabelProblem(problem: LabelProblem): string {
  switch (problem.code) {
    case "per not understood":
      return `per:${problem.text} is not understood: type what the figures are for, such as ${PER_EXAMPLES}.`;
    case "per without grams or millilitres":
      return `per:${problem.text} has no grams or millilitres: type those that the pack gives beside it, such as serving 30 g or 2 tbsp (32 g).`;
    case "per out of range":
      return `The figures must be for ${problem.least} to ${problem.most} g or ml: type such as ${PER_EXAMPLES}.`;
    case "energy not understood":
      return `energy:${problem.text} is not understood: type such as 520 kJ, 124 kcal or 520 kJ / 124 kcal.`;
    case "energy without unit":
      return `energy:${problem.text} may be kJ or kcal: type the unit too, such as 124 kcal.`;
    case "figure not understood":
      return `${problem.field}:${problem.text} is not understood: type such as ${EXAMPLES[problem.field] ?? "3.5 g, 0,5 g or <0.5 g"}.`;
    case "figure below zero":
      return `${problem.field}:${problem.text} is below zero: type what the pack says, such as 0 g.`;
    case "salt or sodium":
      return `salt:${problem.text} may be salt or sodium: type such as sodium 480 mg or salt 1.2 g.`;
    case "alcohol needs density":
      return "Alcohol by volume in a label by weight needs a density: type density: too, such as 0.99 g/ml, or alcohol: in grams.";
    default:
      return sayMeasureProblem(problem);
  }
}

const EXAMPLES: Readonly<Partial<Record<string, string>>> = {
  salt: "1.2 g (salt) or sodium 480 mg",
  alcohol: "12.5 % vol or 10 g",
};

type MeasureProblem = Extract<
  LabelProblem,
  {
    readonly code:
      | "density not understood"
      | "density impossible"
      | "density needed"
      | "one not understood"
      | "allergen not known"
      | "allergen could be several"
      | "none beside others";
  }
>;

function sayMeasureProblem(problem: MeasureProblem): string {
  switch (problem.code) {
    case "density not understood":
      return `density:${problem.text} is not understood: type such as 1 tbsp = 15 g, 100 ml = 103 g or 1.03 g/ml.`;
    case "density impossible":
      return `That is ${shown(problem.gPerMl)} g in a millilitre, and foods have between 0.01 and ${problem.most}: type such as 1 tbsp = 15 g.`;
    case "density needed":
      return "Foods are kept per 100 g, and this label is by volume: type density: too, such as 1.03 g/ml from the pack or 1 tbsp = 15 g from your scale.";
    case "one not understood":
      return `one:${problem.text} is not understood: type what one weighs, such as 1 slice = 35 g.`;
    case "allergen not known":
      return `“${problem.text}” is no allergen I know: type some of ${ALLERGENS.join(", ")}, or none if the pack was read and has none.`;
    case "allergen could be several":
      return `“${problem.text}” may be ${listed(problem.choices)}: type which of them the pack means.`;
    case "none beside others":
      return "“None” stands beside other allergens: type none alone, or leave it out.";
  }
}

function shown(value: number): string {
  return String(Number(value.toPrecision(2)));
}
