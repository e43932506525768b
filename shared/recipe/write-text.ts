import type { Amount } from "../quantity/types.ts";
import { isSwapLine, type ReadChoice, readIngredient } from "./read-ingredient.ts";
import type { Line, LineChoice, Recipe } from "./types.ts";
import { keepingLines } from "./write-keeping.ts";
import { layOut, type RecipePieces } from "./write-layout.ts";
import { yieldLine } from "./write-yield.ts";

/**
 * A recipe as plain text in our form (`shared/recipe/README.md`), such that `readRecipe` with the same
 * foods and spoons gives the same recipe again. Ingredient lines are the coach's own text.
 */
export function writeRecipeText(recipe: Recipe): string {
  return layOut(piecesOf(recipe));
}

function piecesOf(recipe: Recipe): RecipePieces {
  return {
    title: recipe.title,
    yieldLine: yieldLine(recipe),
    tags: recipe.tags,
    parts: recipe.components.map(({ name, optional, lines, keeping }) => ({
      name,
      optional,
      lines: lines.map(splitSwaps),
      keeping: keepingLines(keeping),
    })),
    steps: recipe.steps.map(({ text }) => text),
    keeping: keepingLines(recipe.keeping),
    reheating: recipe.reheating,
    notes: recipe.notes,
  };
}

interface SplitLine {
  readonly text: string;
  readonly swaps: readonly string[];
}

/**
 * A line's text holds its swaps after "; ", wherever they stood. They are put below it, as many of them
 * as can be without reading differently.
 */
function splitSwaps(line: Line): SplitLine {
  const forms = waysToSplit(line.text);
  return forms.find((form) => isReadAs(form, line)) ?? { text: line.text, swaps: [] };
}

/** A line with its swaps in one text; below it, parted by line ends, where one line would read differently. */
export function lineAsOneText(line: Line): string {
  if (isReadAs({ text: line.text, swaps: [] }, line)) return line.text;
  const { text, swaps } = splitSwaps(line);
  return [text, ...swaps].join("\n");
}

/** Nobody lists more swaps than this for one line; of more, only these ways are tried. */
const WAYS_MAX = 8;

/** All swaps on lines of their own, then all but the first, and so on; at last none. */
export function waysToSplit(text: string): readonly SplitLine[] {
  const pieces: string[] = [];
  for (const piece of text.split("; ")) {
    if (pieces.length === 0 || isSwapLine(piece)) pieces.push(piece);
    else pieces[pieces.length - 1] = `${pieces.at(-1)}; ${piece}`;
  }
  const apart = pieces.slice(0, WAYS_MAX).map((_, at) => ({
    text: pieces.slice(0, at + 1).join("; "),
    swaps: pieces.slice(at + 1),
  }));
  // A line is read without the spaces at its ends.
  const isTrimmed = (way: SplitLine) => [way.text, ...way.swaps].every((one) => one === one.trim());
  return [...apart.filter(isTrimmed), { text, swaps: [] }];
}

function isReadAs({ text, swaps }: SplitLine, line: Line): boolean {
  const read = readIngredient(text, 1, swaps);
  if (!read.ok || read.value.optional !== line.optional) return false;
  const said = [read.value.main, ...read.value.swaps].map(wordsOf);
  const meant = [line.main, ...line.swaps].map(wordsOf);
  return said.length === meant.length && said.every((words, at) => words === meant[at]);
}

/** Where the food ends and its preparation begins is the food table's to say. */
function wordsOf(choice: ReadChoice | LineChoice): string {
  return [amountOf(choice.amount), choice.foodText, choice.preparation]
    .filter((words) => words !== "")
    .join(", ");
}

function amountOf(amount: Amount | null): string {
  return amount === null ? "" : `${amount.value}–${amount.to} ${amount.unit}`;
}
