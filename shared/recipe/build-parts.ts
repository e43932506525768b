import { findFood } from "../food/find.ts";
import { foldWords } from "../words/fold.ts";
import { cookingRemarks } from "./cooking-remarks.ts";
import type { Draft, DraftLine, DraftPart } from "./draft.ts";
import { makesMore } from "./part-makes.ts";
import { RECIPE_LIMITS, type ReadRemark, type RecipeProblem } from "./problems.ts";
import { withAlternatives } from "./read-alternatives.ts";
import { readIngredient, saysToTaste } from "./read-ingredient.ts";
import type { Component, Line, LineChoice, StatedKeeping } from "./types.ts";
import { withFryingOil, withUptakeOfPart } from "./uptake.ts";
import { type WeighMeans, weighChoice } from "./weigh-choice.ts";

export interface BuiltParts {
  readonly components: readonly Component[];
  readonly problems: readonly RecipeProblem[];
  readonly remarks: readonly ReadRemark[];
}

/** Reads and weighs every ingredient line, and checks the parts as a whole. */
export function buildParts(
  draft: Draft,
  means: WeighMeans,
  keepingOf: (part: DraftPart) => StatedKeeping,
): BuiltParts {
  const problems: RecipeProblem[] = [...partProblems(draft.parts)];
  const remarks: ReadRemark[] = [];
  const components = draft.parts.map((part, at): Component => {
    const lines = part.lines.flatMap((line, index) => {
      const built = buildLine(line, `${at}.${index}`, means);
      if ("code" in built) {
        problems.push(built);
        return [];
      }
      return [{ built, line: line.line }];
    });
    const eaten = withFryingOil(
      withUptakeOfPart(
        lines.map(({ built }) => built),
        part.name,
      ),
    );
    for (const [index, built] of eaten.entries()) {
      const at = lines[index]?.line ?? part.line;
      remarks.push(...remarksOn(built, at), ...cookingRemarks(built, at, means.foods));
    }
    const makes = part.makes === null ? null : makesMore(part.makes, eaten);
    if (part.makes !== null && makes === null) {
      remarks.push({ code: "used not clear", line: part.line, name: part.name });
    }
    const { name, optional } = part;
    const built = { name, optional, lines: eaten, keeping: keepingOf(part) };
    return makes === null ? built : { ...built, makes };
  });
  return { components, problems, remarks };
}

function buildLine(
  { line, text, swaps }: DraftLine,
  key: string,
  means: WeighMeans,
): Line | RecipeProblem {
  const outcome = readIngredient(text, line, swaps);
  if (!outcome.ok) return outcome.problem;
  const read = withAlternatives(outcome.value, (name) => findFood(means.foods, name, 1).length > 0);
  return {
    key,
    text: [text, ...swaps].join("; "),
    main: weighChoice(read.main, means),
    swaps: read.swaps.map((swap) => weighChoice(swap, means)),
    optional: read.optional,
  };
}

function remarksOn(built: Line, line: number): readonly ReadRemark[] {
  return [built.main, ...built.swaps].flatMap((choice): readonly ReadRemark[] => {
    const { foodText, amount, foodId, grams } = choice;
    const found: ReadRemark[] = [];
    if (foodId === null) found.push({ code: "food not found", line, foodText });
    if (amount === null && !isToTaste(built, choice))
      found.push({ code: "no amount", line, foodText });
    if (amount !== null && grams === null) {
      found.push({ code: "cannot be weighed", line, foodText, unit: amount.unit });
    }
    return found;
  });
}

function isToTaste(line: Line, choice: LineChoice): boolean {
  return choice === line.main && saysToTaste(line.text);
}

function partProblems(parts: readonly DraftPart[]): readonly RecipeProblem[] {
  const problems: RecipeProblem[] = [];
  if (parts.every((part) => part.lines.length === 0)) problems.push({ code: "no ingredients" });
  else {
    for (const { line, name, lines } of parts) {
      if (lines.length === 0) problems.push({ code: "part without ingredients", line, name });
    }
  }
  if (parts.length > RECIPE_LIMITS.parts) {
    problems.push({ code: "too many parts", max: RECIPE_LIMITS.parts });
  }
  const seen = new Set<string>();
  for (const { line, name } of parts) {
    if (seen.has(foldWords(name))) problems.push({ code: "part named twice", line, name });
    seen.add(foldWords(name));
  }
  return problems;
}
