import { dateIn, type Instant, type PlainDate } from "../time.ts";
import { writeDate, writeWeekday } from "../words/write-when.ts";
import { type Face, shorten, widthPx } from "./measure.ts";
import {
  BAR_KINDS,
  type BarKind,
  drawnName,
  SECTION_NAMES,
  type StockBar,
  type StockTold,
  stockAlt,
} from "./stock-alt.ts";
import { barHeightPx, barPieces, COLUMN_PX, type DayGrid } from "./stock-bars.ts";
import { cleanLine, drawing, filled, GROUND, INK, lineFrom, QUIET, TRACK, textAt } from "./svg.ts";
import type { Picture } from "./types.ts";

/** Days drawn before today, and from today on. */
const DAYS_BACK = 2;
const DAYS_AHEAD = 14;
const COLUMNS = DAYS_BACK + DAYS_AHEAD;
/** More would be taller than a phone can show at a legible size. */
const BARS_MAX = 14;
/** Shown at about half its size on a phone. */
const MARGIN = 24;
const INNER = COLUMNS * COLUMN_PX;
const WIDTH = INNER + 2 * MARGIN;
const DAY_BOX_PX = 62;
const GAP = 14;
const TITLE: Face = { sizePx: 30, bold: true };
const SECTION: Face = { sizePx: 26, bold: true };
const NAME: Face = { sizePx: 24, bold: true };
const SMALL: Face = { sizePx: 23 };
const LEADING = 1.25;

export interface StockPictureParts {
  /** In the order in which they must go. */
  readonly bars: readonly StockBar[];
  readonly now: Instant;
  readonly zone: string;
}

/**
 * The coming two weeks of a member's stock: a bar for each lot from when it came to its place to its
 * last good day, the freezer apart, meals and thaws as marks on it, now as a line. Every bar has its name,
 * count and date in words; places are told apart by headings and pattern, never by colour alone.
 */
export function stockPicture({ bars, now, zone }: StockPictureParts): Picture {
  const today = dateIn(now, zone);
  const days: DayGrid = { x: MARGIN, first: today.subtract({ days: DAYS_BACK }), columns: COLUMNS };
  const shown = bars.slice(0, BARS_MAX);
  const hidden = bars.length - shown.length;
  const told: StockTold = {
    title: `Stock, ${writeDate(today)} to ${writeDate(today.add({ days: DAYS_AHEAD - 1 }))}`,
    bars: shown,
    more: hidden === 0 ? "" : `and ${hidden} more`,
  };
  const sheet: Sheet = { pieces: [], y: MARGIN };
  addLine(sheet, told.title, TITLE);
  addDays(sheet, days, today);
  const top = sheet.y;
  for (const kind of BAR_KINDS) addSection(sheet, days, kind, shown);
  if (shown.length === 0) addLine(sheet, "Nothing in stock.", NAME);
  const grid = gridPieces(days, nowX(now, zone), [top, sheet.y]);
  sheet.y += 8;
  if (told.more !== "") addLine(sheet, `${told.more}, not drawn: see the list.`, NAME);
  for (const note of keyOf(shown)) addLine(sheet, note, SMALL, QUIET);
  const heightPx = Math.ceil(sheet.y + MARGIN / 2);
  return {
    name: "stock",
    svg: drawing({ widthPx: WIDTH, heightPx }, [...grid, ...sheet.pieces]),
    widthPx: WIDTH,
    heightPx,
    alt: stockAlt(told),
  };
}

/** Pieces of SVG from the top down, and where the next one goes. */
interface Sheet {
  readonly pieces: string[];
  y: number;
}

/** A line of text on its own ground, so that the lines of the days do not strike it through. */
function addLine(sheet: Sheet, text: string, face: Face, colour = INK): void {
  addTexts(sheet, [{ text, face, colour }]);
}

/** Pieces of text behind each other on one line. */
function addTexts(
  sheet: Sheet,
  texts: readonly { readonly text: string; readonly face: Face; readonly colour?: string }[],
): void {
  const sizePx = Math.max(...texts.map(({ face }) => face.sizePx));
  let x = MARGIN;
  for (const { text, face, colour = INK } of texts) {
    const width = widthPx(text, face);
    sheet.pieces.push(
      filled({ x: x - 2, y: sheet.y + 2, width: width + 4, height: sizePx * LEADING - 2 }, GROUND),
      textAt({ x, y: sheet.y + sizePx }, text, { ...face, colour }),
    );
    x += width + GAP;
  }
  sheet.y += sizePx * LEADING;
}

/** Weekday and day of the month above each column; today's in a dark box, named. */
function addDays(sheet: Sheet, days: DayGrid, today: PlainDate): void {
  const boxTop = sheet.y + 34;
  for (let column = 0; column < days.columns; column += 1) {
    const date = days.first.add({ days: column });
    const x = days.x + column * COLUMN_PX;
    const isToday = date.equals(today);
    const look = { ...SMALL, anchor: "middle", colour: isToday ? GROUND : QUIET } as const;
    const middle = x + COLUMN_PX / 2;
    sheet.pieces.push(
      ...(isToday ? todayPieces(x, boxTop) : []),
      textAt({ x: middle, y: boxTop + 25 }, writeWeekday(date.dayOfWeek).slice(0, 2), look),
      textAt({ x: middle, y: boxTop + 53 }, String(date.day), look),
    );
  }
  sheet.y = boxTop + DAY_BOX_PX;
}

function todayPieces(x: number, boxTop: number): readonly string[] {
  const box = { x: x + 1, y: boxTop, width: COLUMN_PX - 2, height: DAY_BOX_PX };
  const look = { ...SMALL, bold: true, anchor: "middle" } as const;
  return [textAt({ x: x + COLUMN_PX / 2, y: boxTop - 8 }, "today", look), filled(box, INK)];
}

/** Days as faint lines, now as a strong one. */
function gridPieces(
  days: DayGrid,
  now: number,
  [top, bottom]: readonly [number, number],
): readonly string[] {
  const faint = Array.from({ length: days.columns + 1 }, (_, index) => {
    const x = days.x + index * COLUMN_PX;
    return lineFrom([x, top], [x, bottom], { colour: TRACK, linePx: 2 });
  });
  return [...faint, lineFrom([now, top], [now, bottom], { colour: INK, linePx: 4 })];
}

/** Where now is, by the hours that this very day has: 23 or 25 where clocks change. */
function nowX(now: Instant, zone: string): number {
  const local = now.toZonedDateTimeISO(zone);
  const passed = local.startOfDay().until(local).total("hours") / local.hoursInDay;
  return MARGIN + (DAYS_BACK + passed) * COLUMN_PX;
}

function addSection(sheet: Sheet, days: DayGrid, kind: BarKind, bars: readonly StockBar[]): void {
  const own = bars.filter((bar) => bar.kind === kind);
  if (own.length === 0) return;
  sheet.y += 12;
  addLine(sheet, SECTION_NAMES[kind], SECTION);
  for (const bar of own) {
    addLabel(sheet, bar);
    sheet.pieces.push(...barPieces(bar, days, sheet.y + 3));
    sheet.y += barHeightPx(bar) + 12;
  }
}

/** Name, count and date on one line where they fit, else the name on a line of its own. */
function addLabel(sheet: Sheet, bar: StockBar): void {
  const detail = shorten(cleanLine(`${bar.portions}, ${bar.until}`), SMALL, INNER);
  const name = drawnName(bar.title);
  const told = [{ text: detail, face: SMALL }];
  if (widthPx(name, NAME) + GAP + widthPx(detail, SMALL) <= INNER) {
    addTexts(sheet, [{ text: name, face: NAME }, ...told]);
    return;
  }
  addLine(sheet, shorten(name, NAME, INNER), NAME);
  addTexts(sheet, told);
}

function keyOf(bars: readonly StockBar[]): readonly string[] {
  const has = (test: (bar: StockBar) => boolean, note: string): readonly string[] =>
    bars.some(test) ? [note] : [];
  return [
    ...has(
      ({ kind }) => kind !== "freezer" && kind !== "to freeze",
      "A bar ends with its last good day.",
    ),
    ...has(
      ({ kind }) => kind === "freezer" || kind === "to freeze",
      "In the freezer it ends with best-before, or goes on: ▶",
    ),
    ...has(({ meals }) => meals.length > 0, "A number on a bar: portions a meal takes that day."),
    ...has(
      ({ thaws }) => thaws.length > 0,
      "A dark number under a bar: set so many to thaw that day.",
    ),
  ];
}
