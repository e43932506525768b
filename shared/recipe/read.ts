import type { FoodBook } from "../food/book.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import type { SpoonSet } from "../quantity/types.ts";
import { excerpt } from "../words/problems.ts";
import { buildParts } from "./build-parts.ts";
import { type Draft, sortLines } from "./draft.ts";
import { keepingOf } from "./keeping-of.ts";
import { RECIPE_LIMITS, type ReadRemark, type RecipeProblem } from "./problems.ts";
import { markedHeading } from "./read-heading.ts";
import { readStep } from "./read-step.ts";
import { isYieldLine, readYield } from "./read-yield.ts";
import { type SourceLine, sourceLines } from "./source-lines.ts";
import type { Recipe, TakenFoods } from "./types.ts";
import type { WeighMeans } from "./weigh-choice.ts";

export interface ReadRecipe {
  readonly recipe: Recipe;
  /** What the coach should look at; none of it stops the recipe. */
  readonly remarks: readonly ReadRemark[];
}

/**
 * Reads a recipe from plain text (the form is described in `shared/recipe/README.md`). All faults at
 * once, each with its line. Foods are looked up in `foods` and lines weighed with its densities and the
 * given spoons; a food that is not found is a remark. `takenFor` is what the coach says that names mean.
 * Work is bounded by `RECIPE_LIMITS`.
 */
export function readRecipe(
  text: string,
  foods: FoodBook,
  spoons: SpoonSet = "us",
  takenFor: TakenFoods = {},
): Outcome<ReadRecipe, readonly RecipeProblem[]> {
  const lines = sourceLines(text);
  if (!lines.ok) return lines;
  const at = lines.value.findIndex((line) => line.text !== "");
  const first = lines.value[at];
  if (first === undefined) return fail([{ code: "text empty" }]);
  const title = readTitle(first);
  // A text without a title still has its other faults told.
  const draft = sortLines(
    lines.value.slice(title.problems.length > 0 && title.title === "" ? at : at + 1),
  );
  return assemble(draft, yieldInTitle(title, draft), { foods, spoons, takenFor });
}

interface Title {
  readonly title: string;
  readonly problems: readonly RecipeProblem[];
  readonly line: number;
}

const TITLE_YIELD = /^(.{2,180}?)(?: ?\(| [–—-] |, )([^()]{3,40})\)?$/u;

/** "Bean chilli (serves 6)": where no line says what it makes, the title may. */
function yieldInTitle(title: Title, draft: Draft): Title {
  const match = draft.yields === null ? TITLE_YIELD.exec(title.title) : null;
  const said = match?.[2] ?? "";
  const read = isYieldLine(said) ? readYield(said, title.line) : null;
  if (match === null || read === null || !read.ok) return title;
  const { to, ...yields } = read.value;
  draft.yields = yields;
  if (to !== null) {
    draft.remarks.push({ code: "yield is a range", line: title.line, from: yields.portions, to });
  }
  return { ...title, title: match[1] ?? "" };
}

function readTitle({ line, text }: SourceLine): Title {
  const title = (markedHeading(text) ?? text).replace(/^(?:title|recipe) ?: ?/iu, "");
  const isSomethingElse =
    /^[-*•] /u.test(text) || isYieldLine(text) || !/[\p{L}\p{N}]/u.test(title);
  if (isSomethingElse) {
    return { title: "", problems: [{ code: "title missing", line, text: excerpt(text) }], line };
  }
  const max = RECIPE_LIMITS.titleChars;
  const problems: RecipeProblem[] =
    title.length > max ? [{ code: "title too long", line, max }] : [];
  return { title, problems, line };
}

function assemble(
  draft: Draft,
  { title, problems: titleProblems }: Title,
  means: WeighMeans,
): Outcome<ReadRecipe, readonly RecipeProblem[]> {
  const yields = draft.yields;
  const keeping = keepingOf(draft, title, yields?.portionWord ?? "portion");
  const parts = buildParts(draft, means, keeping.part);
  const problems = [...titleProblems, ...draft.problems, ...keeping.problems, ...parts.problems];
  if (yields === null && !problems.some(isAboutYield)) problems.push({ code: "yield missing" });
  if (yields === null || problems.length > 0) return fail(byLine(problems));
  const recipe: Recipe = {
    title,
    ...yields,
    tags: draft.tags,
    components: parts.components,
    steps: draft.steps.map((step) => readStep(step.text)),
    keeping: keeping.whole,
    reheating: draft.reheating,
    notes: draft.notes,
  };
  return ok({ recipe, remarks: [...byLine([...parts.remarks, ...draft.remarks]), ...gaps(draft)] });
}

function isAboutYield({ code }: RecipeProblem): boolean {
  return code.startsWith("yield") || code.startsWith("portions");
}

/** What the text leaves out, although members will ask for it. */
function gaps(draft: Draft): readonly ReadRemark[] {
  const found: ReadRemark[] = [];
  if (draft.steps.length === 0) found.push({ code: "no steps" });
  if (draft.keeping.length === 0) found.push({ code: "no keeping stated" });
  return found;
}

/** In the order of the text; what has no line comes first. */
function byLine<T extends { readonly code: string }>(found: readonly T[]): readonly T[] {
  const lineOf = (one: T) => ("line" in one && typeof one.line === "number" ? one.line : 0);
  return [...found].sort((a, b) => lineOf(a) - lineOf(b));
}
