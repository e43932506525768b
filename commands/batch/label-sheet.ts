import { GRIDS, type Grid } from "../../shared/container-label/grids.ts";
import { fold } from "../../shared/words/fold.ts";
import { excerpt } from "../../shared/words/problems.ts";
import { type Completer, Refusal } from "../kit/command.ts";

/** Paper as members pick it. */
export const PAPERS = ["a4", "letter"] as const;
export type Paper = (typeof PAPERS)[number];

/** What a page is printed on when no grid was named: large enough for all that a label says. */
const USUAL: Readonly<Record<Paper, string>> = {
  a4: "A4, 2 x 7 of 99.1 x 38.1 mm",
  letter: "Letter, 2 x 5 of 4 x 2 in",
};
/** Sheets measured by hand are off by a little. */
const NEAR_MM = 1.2;
const MM_PER_IN = 25.4;
const TYPED_MAX = 60;

export function usualGrid(paper: Paper): Grid {
  const found = GRIDS.find(({ name }) => name === USUAL[paper]);
  if (found === undefined) throw new Error("the usual grid is not in the list");
  return found;
}

export function gridsOn(paper: Paper | undefined): readonly Grid[] {
  return GRIDS.filter(({ page }) => paper === undefined || fold(page) === paper);
}

export const completeGrid: Completer = async (_context, typed, others) => {
  const paper = PAPERS.find((one) => one === others["paper"]);
  return gridsOn(paper)
    .filter(({ name }) => fold(name).includes(fold(typed)))
    .map(({ name }) => ({ label: name, value: name }));
};

/**
 * The grid that was named, whole or by its dimensions: "63.5 x 38.1", "4 x 2 in", "3 x 7"; or "plain paper". A refusal names
 * the grids there are.
 */
export function gridNamed(typed: string, paper: Paper | undefined, usual: Paper): Grid {
  const all = gridsOn(paper);
  const exact = all.find(({ name }) => fold(name) === fold(typed));
  if (exact !== undefined) return exact;
  const isPlain = /\bplain\b/u.test(fold(typed.slice(0, TYPED_MAX)));
  const plain = gridsOn(paper ?? usual).find(({ isCut }) => isCut);
  if (isPlain && plain !== undefined) return plain;
  const sold = all.filter(({ isCut }) => !isCut);
  const fitting = sold.filter((grid) => pairsOf(typed).some((pair) => isOf(grid, pair)));
  const [only, ...others] = fitting;
  if (only !== undefined && others.length === 0) return only;
  const offered = (fitting.length > 0 ? fitting : all).map(({ name }) => name).join("; ");
  throw new Refusal(
    fitting.length > 0
      ? `“${excerpt(typed)}” fits several label grids: type one of ${offered}.`
      : `There is no label grid “${excerpt(typed)}”: type one of ${offered}.`,
  );
}

interface Pair {
  readonly first: number;
  readonly second: number;
  readonly isInches: boolean;
}

/** "63.5 x 38.1 mm" -> 63.5 and 38.1. */
function pairsOf(typed: string): readonly Pair[] {
  const text = fold(typed.slice(0, TYPED_MAX))
    .replaceAll("×", "x")
    .replace(/(\d),(\d)/gu, "$1.$2")
    .replace(/(\d{1,2}) (\d)\/(\d)/gu, (_, whole, above, below) =>
      (Number(whole) + Number(above) / Number(below)).toFixed(3),
    );
  const found = text.matchAll(
    /(\d{1,3}(?:\.\d{1,3})?) ?(?:mm)? ?x ?(\d{1,3}(?:\.\d{1,3})?) ?(in\b|")?/gu,
  );
  return [...found].map(([, first, second, inches]) => ({
    first: Number(first),
    second: Number(second),
    isInches: inches !== undefined,
  }));
}

/** The two are its columns and rows, or its label's width and height. */
function isOf(grid: Grid, { first, second, isInches }: Pair): boolean {
  if (!isInches && first === grid.columns && second === grid.rows) return true;
  const units = isInches ? [MM_PER_IN] : [1, MM_PER_IN];
  return units.some(
    (unit) =>
      Math.abs(first * unit - grid.labelWidthMm) <= NEAR_MM &&
      Math.abs(second * unit - grid.labelHeightMm) <= NEAR_MM,
  );
}
