import type { PlainDate } from "../time.ts";
import { writeDate } from "../words/write-when.ts";
import { cleanLine } from "./svg.ts";

/** What a bar stands for, in the order in which they stand under each other. */
export const BAR_KINDS = ["past", "fridge", "thawing", "to freeze", "freezer"] as const;
export type BarKind = (typeof BAR_KINDS)[number];

/** Heading of the bars of one kind. */
export const SECTION_NAMES: Readonly<Record<BarKind, string>> = {
  past: "Throw away",
  fridge: "Fridge",
  thawing: "Thawing in the fridge",
  freezer: "Freezer",
  "to freeze": "To be frozen now, of those in the fridge",
};

/** So many portions on a day; the number as it is written. */
export interface DayMark {
  readonly date: PlainDate;
  readonly portions: string;
}

/** One lot, or portions of one that are to be frozen. */
export interface StockBar {
  readonly kind: BarKind;
  readonly title: string;
  /** "3 portions". */
  readonly portions: string;
  /** "eat by Wed 28 Oct". */
  readonly until: string;
  /** First day in its place, the day of cooking for what was never frozen. */
  readonly from: PlainDate;
  /** Last good day, in the freezer the best-before day. */
  readonly last: PlainDate;
  /** Meals that take of it, by date. */
  readonly meals: readonly DayMark[];
  /** Days on which some are to be set to thaw. */
  readonly thaws: readonly DayMark[];
}

/** All that is told, drawn or in words. */
export interface StockTold {
  /** "Stock, Wed 25 Nov to Tue 8 Dec". */
  readonly title: string;
  readonly bars: readonly StockBar[];
  /** "and 5 more", or empty. */
  readonly more: string;
}

const ALT_MAX = 1_000;
/** Names are cut further and further until all facts fit. */
const NAME_LENGTHS = [120, 60, 40, 24, 16];

/** A name as it is shown: one line, never empty, never half a character. */
function nameOf(title: string, max: number): string {
  const all = [...cleanLine(title)];
  if (all.length === 0) return "(no name)";
  return all.length <= max
    ? all.join("")
    : `${all
        .slice(0, max - 1)
        .join("")
        .trimEnd()}…`;
}

/** A name as it is drawn: without the emoji, which our fonts do not have. */
export function drawnName(title: string): string {
  return nameOf(title.replace(/\p{Emoji_Presentation}/gu, " "), 120);
}

/**
 * What the picture shows, in words; at most 1,000 characters. Where that is too short for every lot,
 * names are cut first, then the last lots are counted only.
 */
export function stockAlt(told: StockTold): string {
  for (const length of NAME_LENGTHS) {
    const written = altOf(told, told.bars, length);
    if (written.length <= ALT_MAX) return written;
  }
  for (let kept = told.bars.length - 1; kept > 0; kept -= 1) {
    const written = altOf(told, told.bars.slice(0, kept), NAME_LENGTHS.at(-1) ?? 16);
    if (written.length <= ALT_MAX) return written;
  }
  return `${cleanLine(told.title)}: ${told.bars.length} bars.`.slice(0, ALT_MAX);
}

function altOf(told: StockTold, bars: readonly StockBar[], nameMax: number): string {
  const hidden = told.bars.length - bars.length;
  const sections = BAR_KINDS.flatMap((kind) => {
    const own = bars.filter((bar) => bar.kind === kind);
    return own.length === 0
      ? []
      : [`${SECTION_NAMES[kind]}: ${own.map((bar) => sayBar(bar, nameMax)).join("; ")}.`];
  });
  return [
    `${cleanLine(told.title)}.`,
    ...(told.bars.length === 0 ? ["Nothing in stock."] : sections),
    ...(hidden === 0 ? [] : [`Not told here: ${hidden} more of the picture.`]),
    ...(told.more === "" ? [] : [`Not drawn: ${told.more}.`]),
  ].join(" ");
}

function sayBar(bar: StockBar, nameMax: number): string {
  return [`${nameOf(bar.title, nameMax)}, ${bar.portions}`, bar.until, ...sayMarks(bar)].join(", ");
}

/** "meals Thu 26 Nov (1), Fri 27 Nov (2)", "set to thaw Tue 24 Nov (1)". */
export function sayMarks({ meals, thaws }: StockBar): readonly string[] {
  const days = (marks: readonly DayMark[]): string =>
    marks.map(({ date, portions }) => `${writeDate(date)} (${portions})`).join(", ");
  return [
    ...(meals.length === 0 ? [] : [`meals ${days(meals)}`]),
    ...(thaws.length === 0 ? [] : [`set to thaw ${days(thaws)}`]),
  ];
}
