import type { PrintBox } from "../picture/print.ts";

/**
 * Pages of labels, by their dimensions. The grid stands in the middle of its page, as on the sheets that
 * are sold in these sizes: common practice, no published source.
 */
export interface Grid {
  /** Page and grid, as a member picks it. */
  readonly name: string;
  readonly page: "A4" | "Letter";
  readonly columns: number;
  readonly rows: number;
  readonly labelWidthMm: number;
  readonly labelHeightMm: number;
  /** Between columns; rows touch. */
  readonly gapMm: number;
  /** On plain paper: with a thin line around each label to cut along. */
  readonly isCut: boolean;
}

/** ISO 216:2007, A4; ANSI/ASME Y14.1, size A (8.5 x 11 in). */
export const PAGES_MM = {
  A4: { widthMm: 210, heightMm: 297 },
  Letter: { widthMm: 215.9, heightMm: 279.4 },
} as const;

export const GRIDS: readonly Grid[] = [
  grid("A4, 2 x 4 of 99.1 x 67.7 mm", "A4", [2, 4], [99.1, 67.7], 2.5),
  grid("A4, 2 x 7 of 99.1 x 38.1 mm", "A4", [2, 7], [99.1, 38.1], 2.5),
  grid("A4, 3 x 7 of 63.5 x 38.1 mm", "A4", [3, 7], [63.5, 38.1], 2.5),
  grid("A4, 3 x 8 of 70 x 37 mm", "A4", [3, 8], [70, 37], 0),
  grid("Letter, 2 x 3 of 4 x 3 1/3 in", "Letter", [2, 3], [101.6, 84.66], 4.76),
  grid("Letter, 2 x 5 of 4 x 2 in", "Letter", [2, 5], [101.6, 50.8], 4.76),
  grid("Letter, 3 x 10 of 2 5/8 x 1 in", "Letter", [3, 10], [66.675, 25.4], 3.175),
  {
    ...grid("A4, plain paper to cut, 2 x 5 of 90 x 55 mm", "A4", [2, 5], [90, 55], 0),
    isCut: true,
  },
  {
    ...grid(
      "Letter, plain paper to cut, 2 x 4 of 3 3/4 x 2 1/2 in",
      "Letter",
      [2, 4],
      [95.25, 63.5],
      0,
    ),
    isCut: true,
  },
];

function grid(
  name: string,
  page: Grid["page"],
  [columns, rows]: readonly [number, number],
  [labelWidthMm, labelHeightMm]: readonly [number, number],
  gapMm: number,
): Grid {
  return { name, page, columns, rows, labelWidthMm, labelHeightMm, gapMm, isCut: false };
}

/** The labels of a page, row by row from the top left. */
export function cellsOf(grid: Grid): readonly PrintBox[] {
  const { columns, rows, labelWidthMm, labelHeightMm, gapMm } = grid;
  const page = PAGES_MM[grid.page];
  const leftMm = (page.widthMm - columns * labelWidthMm - (columns - 1) * gapMm) / 2;
  const topMm = (page.heightMm - rows * labelHeightMm) / 2;
  return Array.from({ length: columns * rows }, (_, index) => ({
    xMm: leftMm + (index % columns) * (labelWidthMm + gapMm),
    yMm: topMm + Math.floor(index / columns) * labelHeightMm,
    widthMm: labelWidthMm,
    heightMm: labelHeightMm,
  }));
}

/** From the edge of a label: sheets go through a printer with a slip of a millimetre. */
const PADDING_MM = 2;
/** From the edge of a page, where many printers cannot print: common practice, no published source. */
const PRINTER_MM = 5;

/** The part of a label that is printed on, from its top left: the same for all of a page. */
export function innerOf(grid: Grid): PrintBox {
  const [first] = cellsOf(grid);
  // The grid stands in the middle: what the first label lacks left and above, the last lacks right and below.
  const x = Math.max(PADDING_MM, PRINTER_MM - (first?.xMm ?? 0));
  const y = Math.max(PADDING_MM, PRINTER_MM - (first?.yMm ?? 0));
  const { labelWidthMm, labelHeightMm } = grid;
  return { xMm: x, yMm: y, widthMm: labelWidthMm - 2 * x, heightMm: labelHeightMm - 2 * y };
}
