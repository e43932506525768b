import { daysBetween, isDateBefore, type PlainDate } from "../time.ts";
import { type Face, widthPx } from "./measure.ts";
import type { BarKind, DayMark, StockBar } from "./stock-alt.ts";
import {
  BAR,
  type Box,
  filled,
  framed,
  GROUND,
  hatched,
  INK,
  polygon,
  QUIET,
  TRACK,
  textAt,
} from "./svg.ts";

/** The days that are drawn, side by side. */
export interface DayGrid {
  readonly x: number;
  readonly first: PlainDate;
  readonly columns: number;
}

export const COLUMN_PX = 54;
const BAR_PX = 32;
const MARK_PX = 30;
const MARK: Face = { sizePx: 22, bold: true };

/** How tall a bar is with what hangs under it. */
export function barHeightPx({ thaws }: StockBar): number {
  return BAR_PX + (thaws.length > 0 ? MARK_PX + 4 : 0);
}

/**
 * A bar from its first to the end of its last day, an arrow where it goes on beyond the days drawn,
 * meals as numbers on it, thaws under it. Each place has a pattern of its own.
 */
export function barPieces(bar: StockBar, days: DayGrid, y: number): readonly string[] {
  const from = daysBetween(days.first, bar.from);
  const to = daysBetween(days.first, bar.last) + 1;
  const left = days.x + Math.min(Math.max(from, 0), days.columns - 1) * COLUMN_PX;
  const right = days.x + Math.max(Math.min(to, days.columns), 0) * COLUMN_PX;
  // What was over before the first day drawn leaves only its arrow.
  const box = { x: left, y, width: Math.max(right - left, COLUMN_PX / 2), height: BAR_PX };
  const isDrawn = ({ date }: DayMark): boolean =>
    !isDateBefore(date, days.first) && daysBetween(days.first, date) < days.columns;
  const columnOf = ({ date }: DayMark): number =>
    days.x + (daysBetween(days.first, date) + 0.5) * COLUMN_PX;
  return [
    ...bodyOf(bar.kind, box),
    ...(from < 0 ? [arrow(box, "back")] : []),
    ...(to > days.columns ? [arrow(box, "on")] : [endPost(box)]),
    ...bar.meals
      .filter(isDrawn)
      .flatMap((mark) => markBox(mark.portions, { x: columnOf(mark), y: y + 1 }, "light")),
    ...bar.thaws
      .filter(isDrawn)
      .flatMap((mark) => markBox(mark.portions, { x: columnOf(mark), y: y + BAR_PX + 4 }, "dark")),
  ];
}

function bodyOf(kind: BarKind, box: Box): readonly string[] {
  const ground = filled(box, GROUND);
  switch (kind) {
    case "fridge":
      return [filled(box, BAR)];
    case "thawing":
      return [ground, hatched(box, BAR, 1), framed(box, BAR, 3)];
    case "freezer":
      return [filled(box, TRACK), framed(box, QUIET, 3)];
    case "to freeze":
      return [ground, framed(box, QUIET, 3)];
    case "past":
      return [ground, hatched(box, INK, 2), framed(box, INK, 3)];
  }
}

/** The end of the last day, seen on any pattern. */
function endPost(box: Box): string {
  return filled({ x: box.x + box.width - 7, y: box.y - 4, width: 7, height: box.height + 8 }, INK);
}

/** It began before the days drawn, or goes on after them. */
function arrow({ x, y, width, height }: Box, to: "back" | "on"): string {
  const [tip, base] = to === "back" ? [x - 2, x + 16] : [x + width + 2, x + width - 16];
  const points = [
    [base, y],
    [tip, y + height / 2],
    [base, y + height],
  ] as const;
  return polygon(points, { fill: INK, edge: GROUND });
}

/** A light box with the portions of a day's meals, or a dark one with what is to be set to thaw. */
function markBox(
  text: string,
  at: { readonly x: number; readonly y: number },
  look: "light" | "dark",
): readonly string[] {
  const textPx = widthPx(text, MARK);
  const width = Math.min(Math.max(textPx + 10, 30), COLUMN_PX - 2);
  const box = { x: at.x - width / 2, y: at.y, width, height: MARK_PX };
  // Six digits in a day would not fit; nobody has them.
  const sizePx = Math.min(MARK.sizePx, (MARK.sizePx * (width - 6)) / textPx);
  return [
    filled(box, look === "light" ? GROUND : INK),
    framed(box, INK, 2),
    textAt({ x: at.x, y: at.y + MARK_PX / 2 + 8 }, text, {
      ...MARK,
      sizePx,
      colour: look === "light" ? INK : GROUND,
      anchor: "middle",
    }),
  ];
}
