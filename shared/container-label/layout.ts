import type { PrintBox, PrintItem, PrintPage } from "../picture/print.ts";
import { cellsOf, type Grid, innerOf, PAGES_MM } from "./grids.ts";
import { type LaidLabel, layLabel } from "./layout-label.ts";
import type { LabelWords } from "./types.ts";

/** A label and how often it is printed. */
export interface LabelJob {
  readonly words: LabelWords;
  readonly copies: number;
}

/** A label by itself. */
export interface SingleLabel extends LaidLabel {
  readonly page: PrintPage;
}

/** Pages of labels, and each label by itself to be looked at on a phone. */
export interface LaidSheets {
  readonly pages: readonly PrintPage[];
  /** One for each job, in the same order. */
  readonly singles: readonly SingleLabel[];
}

/** Lays labels out on pages of a grid, from its label number `first` on (1 is the one top left). */
export function laySheets(grid: Grid, jobs: readonly LabelJob[], first: number): LaidSheets {
  const cells = cellsOf(grid);
  const inner = innerOf(grid);
  const singles = jobs.map(({ words }) => layOne(words, inner, grid));
  const placed = jobs.flatMap(({ copies }, job) =>
    Array.from({ length: copies }, () => singles[job]?.items ?? []),
  );
  const pageCount = Math.ceil((first - 1 + placed.length) / cells.length);
  const pages = Array.from({ length: pageCount }, (_, number) => ({
    ...PAGES_MM[grid.page],
    items: cells.flatMap((cell, at) => {
      const items = placed[number * cells.length + at - (first - 1)];
      if (items === undefined) return [];
      return [...cutLines(grid, cell), ...items.map((item) => moved(item, cell))];
    }),
  }));
  return { pages, singles };
}

const CUT_MM = 0.1;

function cutLines({ isCut }: Grid, cell: PrintBox): readonly PrintItem[] {
  return isCut ? [{ kind: "frame", ...cell, lineMm: CUT_MM }] : [];
}

/** A label for the screen of a phone: no sheet, but the size of a large label. */
const PHONE_CARD = { labelWidthMm: 90, labelHeightMm: 60 };
const PHONE_EDGE_MM = 4;

export function layCard(words: LabelWords): SingleLabel {
  const { labelWidthMm, labelHeightMm } = PHONE_CARD;
  const inner: PrintBox = {
    xMm: PHONE_EDGE_MM,
    yMm: PHONE_EDGE_MM,
    widthMm: labelWidthMm - 2 * PHONE_EDGE_MM,
    heightMm: labelHeightMm - 2 * PHONE_EDGE_MM,
  };
  return layOne(words, inner, PHONE_CARD);
}

function layOne(
  words: LabelWords,
  inner: PrintBox,
  { labelWidthMm, labelHeightMm }: Pick<Grid, "labelWidthMm" | "labelHeightMm">,
): SingleLabel {
  const laid = layLabel(words, inner);
  const page = { widthMm: labelWidthMm, heightMm: labelHeightMm, items: laid.items };
  return { ...laid, page };
}

function moved(item: PrintItem, by: PrintBox): PrintItem {
  return { ...item, xMm: item.xMm + by.xMm, yMm: item.yMm + by.yMm };
}
