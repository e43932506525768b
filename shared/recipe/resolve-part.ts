import { fail, type Outcome, ok } from "../outcome.ts";
import { foldWords } from "../words/fold.ts";
import { singular } from "../words/plural.ts";
import { excerpt } from "../words/problems.ts";
import type { ScaleProblem } from "./problems.ts";
import type { Line, Recipe } from "./types.ts";

/** Something of a recipe that can be left out: a component, or all lines of one food. */
export interface RecipePart {
  readonly kind: "component" | "line";
  readonly name: string;
  /** Keys of the lines that go with it. */
  readonly keys: readonly string[];
  readonly optional: boolean;
}

/** Everything that can be named: components first, then foods in the order of the recipe. */
export function partsOf(recipe: Recipe): readonly RecipePart[] {
  const components = recipe.components.map(({ name, optional, lines }): RecipePart => {
    return { kind: "component", name, optional, keys: lines.map(({ key }) => key) };
  });
  const foods = new Map<string, RecipePart>();
  for (const component of recipe.components) {
    for (const line of component.lines) {
      const before = foods.get(foodKey(line));
      const optional = (line.optional || component.optional) && (before?.optional ?? true);
      foods.set(foodKey(line), {
        kind: "line",
        name: before?.name ?? line.main.foodText,
        keys: [...(before?.keys ?? []), line.key],
        optional,
      });
    }
  }
  return [...components, ...foods.values()];
}

function foodKey(line: Line): string {
  return line.main.foodId ?? foldWords(line.main.foodText);
}

/**
 * Finds the component or food a member means by a few words: its exact name or key first, else the one
 * optional part that has all the words, else the one part that has. A food means all its lines.
 */
export function resolvePart(recipe: Recipe, text: string): Outcome<RecipePart, ScaleProblem> {
  const parts = partsOf(recipe);
  const byKey = parts.find(({ kind, keys }) => kind === "line" && keys.includes(text.trim()));
  if (byKey !== undefined) return ok(byKey);
  const exact = parts.find(({ name }) => foldWords(name) === foldWords(text));
  if (exact !== undefined) return ok(exact);
  const loose = parts.filter(({ name }) => hasWords(name, text));
  const optional = loose.filter((part) => part.optional && part.kind === "component");
  const [only, ...others] = optional.length === 1 ? optional : loose;
  if (only === undefined) {
    return fail({ code: "no such part", text: excerpt(text), parts: namesOf(parts) });
  }
  return others.length === 0
    ? ok(only)
    : fail({ code: "several parts match", text: excerpt(text), parts: namesOf(loose) });
}

function namesOf(parts: readonly RecipePart[]): readonly string[] {
  const optionalFirst = [...parts].sort((a, b) => Number(b.optional) - Number(a.optional));
  return [...new Set(optionalFirst.map(({ name }) => name))];
}

/** Whether a name has every word of a text, whatever their number and order. */
export function hasWords(name: string, text: string): boolean {
  const own = wordsOf(name);
  const said = wordsOf(text);
  return said.length > 0 && said.every((word) => own.includes(word));
}

function wordsOf(text: string): readonly string[] {
  return foldWords(text.slice(0, 200))
    .split(" ")
    .filter((word) => word !== "" && word !== "the" && word !== "of")
    .map(singular);
}
