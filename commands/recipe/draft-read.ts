import type { FoodBook } from "../../shared/food/book.ts";
import { findFood } from "../../shared/food/find.ts";
import { fail, type Outcome, ok } from "../../shared/outcome.ts";
import type { ReadRemark } from "../../shared/recipe/problems.ts";
import { readRecipe } from "../../shared/recipe/read.ts";
import type { LineChoice, Recipe } from "../../shared/recipe/types.ts";
import { fold } from "../../shared/words/fold.ts";
import type { RecipeDraft } from "../kit/ports.ts";
import { sayReadRemark, sayRecipeProblem } from "../kit/say-recipe-problem.ts";
import { plainTextOf } from "./draft-json.ts";

/** A food of a line that was not found, or may be another. */
export interface DoubtfulFood {
  /** Line key and which of its choices. */
  readonly ref: string;
  readonly choice: LineChoice;
}

/** A draft as it is read now. */
export interface DraftRead {
  readonly recipe: Recipe;
  /** What it was read from: the draft's text, a document already turned into it. */
  readonly text: string;
  /** Sentences about lines that need a look, in the order of the text. */
  readonly look: readonly string[];
  /** How many lines these are. */
  readonly lookLines: number;
  /** Other remarks, as sentences. */
  readonly noted: readonly string[];
  /** Each written name once, in the order of the text. */
  readonly doubtful: readonly DoubtfulFood[];
}

/** What stops a line from being counted; all other remarks are only for information. */
const NEEDS_LOOK: ReadonlySet<ReadRemark["code"]> = new Set([
  "food not found",
  "cannot be weighed",
  "no amount",
]);

/** A slip in a long word still rates above it, a word that belongs to no food below it. */
const SURE = 0.9;

/** Reads a draft with the foods that the coach chose for it. The problem is sentences, one a fault. */
export function readDraft(
  draft: Pick<RecipeDraft, "text" | "takenFor">,
  foods: FoodBook,
): Outcome<DraftRead, readonly string[]> {
  const plain = plainTextOf(draft.text);
  if (!plain.ok) return plain;
  const { text } = plain.value;
  const read = readRecipe(text, foods, "us", draft.takenFor);
  if (!read.ok) return fail(read.problem.map(sayRecipeProblem));
  const { recipe, remarks } = read.value;
  const isLook = (remark: ReadRemark) => NEEDS_LOOK.has(remark.code);
  const unsure = choicesOf(recipe).filter(({ choice }) => isUnsure(choice, draft, foods));
  const marks = [
    ...withoutEchoes(remarks.filter(isLook)).map((remark) => ({
      line: "line" in remark ? remark.line : 0,
      said: sayReadRemark(remark),
    })),
    ...unsure.map(({ choice, lineText }) => sayUnsure(choice, lineNumber(text, lineText), foods)),
  ].sort((a, b) => a.line - b.line);
  return ok({
    recipe,
    text,
    look: marks.map(({ said }) => said),
    lookLines: new Set(marks.map(({ line }) => line)).size,
    noted: remarks.filter((remark) => !isLook(remark)).map(sayReadRemark),
    doubtful: doubtfulFoods(recipe, (choice) => isUnsure(choice, draft, foods)),
  });
}

/** A food that nobody knows cannot be weighed by the piece either: once is enough. */
function withoutEchoes(remarks: readonly ReadRemark[]): readonly ReadRemark[] {
  const unknown = remarks.filter((remark) => remark.code === "food not found");
  return remarks.filter(
    (remark) =>
      remark.code !== "cannot be weighed" ||
      !unknown.some((one) => one.line === remark.line && one.foodText === remark.foodText),
  );
}

interface PlacedChoice extends DoubtfulFood {
  readonly lineText: string;
}

function choicesOf(recipe: Recipe): readonly PlacedChoice[] {
  return recipe.components.flatMap((part) =>
    part.lines.flatMap((line) =>
      [line.main, ...line.swaps].map((choice, index) => ({
        ref: `${line.key}.${index}`,
        choice,
        lineText: line.text,
      })),
    ),
  );
}

/** Found, but not surely: some of its words fit no better food. */
function isUnsure(
  { foodText, foodId }: LineChoice,
  { takenFor }: Pick<RecipeDraft, "takenFor">,
  foods: FoodBook,
): boolean {
  if (foodId === null || Object.hasOwn(takenFor, fold(foodText))) return false;
  const [best] = findFood(foods, foodText, 1);
  return best !== undefined && best.food.id === foodId && best.score < SURE;
}

function sayUnsure(
  { foodText, foodId }: LineChoice,
  line: number,
  foods: FoodBook,
): { readonly line: number; readonly said: string } {
  const food = foodId === null ? null : foods.byId(foodId);
  const where = line === 0 ? "" : `Line ${line}: `;
  return { line, said: `${where}“${foodText}” is taken as ${food?.name ?? "?"}: is it that?` };
}

/** The line of the text in which an ingredient stands, counted from 1; 0 when it cannot be told. */
function lineNumber(text: string, lineText: string): number {
  const [first = ""] = lineText.split("; ");
  return text.split("\n").findIndex((line) => line.replace(/\s+/gu, " ").includes(first)) + 1;
}

function doubtfulFoods(
  recipe: Recipe,
  isUnsureOf: (choice: LineChoice) => boolean,
): readonly DoubtfulFood[] {
  const seen = new Set<string>();
  return choicesOf(recipe).flatMap(({ ref, choice }) => {
    const name = fold(choice.foodText);
    if (seen.has(name) || (choice.foodId !== null && !isUnsureOf(choice))) return [];
    seen.add(name);
    return [{ ref, choice }];
  });
}
