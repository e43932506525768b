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
    parts: recipe.components.map(({ name, optional, makes, lines, keeping }) => ({
      name,
      optional,
      makes,
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
  return closest(waysToSplit(line.text), line);
}

/** A line with its swaps in one text; below it, parted by line ends, where one line would read differently. */
export function lineAsOneText(line: Line): string {
  const joined: SplitLine = { text: line.text, swaps: [] };
  const { text, swaps } = closest([joined, ...waysToSplit(line.text)], line);
  return [text, ...swaps].join("\n");
}

/** The first of the ways that read most like the line. */
function closest(ways: readonly SplitLine[], line: Line): SplitLine {
  let best: SplitLine = { text: line.text, swaps: [] };
  let most = -1;
  for (const way of ways) {
    const score = likeness(way, line);
    if (score > most) [best, most] = [way, score];
  }
  return best;
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

/**
 * How much a way reads like the line: whether it is optional goes before all, then how many of the swaps
 * agree, from the last on. The reader may have found more of them before those ("butter or oil").
 */
function likeness({ text, swaps }: SplitLine, line: Line): number {
  const read = readIngredient(text, 1, swaps);
  if (!read.ok) return -1;
  const meant = line.swaps.map(wordsOf).reverse();
  const said = read.value.swaps.map(wordsOf).reverse();
  const agree = said.filter((words, at) => words === meant[at]).length;
  const isAll = agree === said.length ? 1 : 0;
  return (read.value.optional === line.optional ? 1_000 : 0) + 2 * agree + isAll;
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
