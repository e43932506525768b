import type { LabelStyle } from "../label/types.ts";
import type { TargetFigures } from "../target/types.ts";
import {
  COLUMNS,
  type MacroKey,
  type MacroRow,
  type MacroTold,
  macroAlt,
  macroFigure,
  writeTarget,
} from "./macro-alt.ts";
import { breakLines, type Face, widthPx } from "./measure.ts";
import {
  BAR,
  type Box,
  cleanLine,
  drawing,
  filled,
  framed,
  GROUND,
  INK,
  QUIET,
  TRACK,
  textAt,
} from "./svg.ts";
import type { Picture } from "./types.ts";

export interface MacroPictureParts {
  readonly title: string;
  /** Portions to compare, the one on the card first; more than five are not drawn, and it says so. */
  readonly rows: readonly MacroRow[];
  /** The member's figures for the day; null when they have none. */
  readonly target: TargetFigures | null;
  readonly style: LabelStyle;
}

const ROWS_MAX = 5;
/** Shown at about half its size on a phone, where 24 px are still read with ease. */
const WIDTH = 720;
const MARGIN = 24;
const INNER = WIDTH - 2 * MARGIN;
/** Energy has the longest figures, carbohydrate the longest name. */
const PLACES: Readonly<Record<MacroKey, { readonly x: number; readonly width: number }>> = {
  energyKcal: { x: MARGIN, width: 190 },
  proteinG: { x: MARGIN + 190, width: 145 },
  fatG: { x: MARGIN + 335, width: 145 },
  carbohydrateG: { x: MARGIN + 480, width: 192 },
};
const GAP = 20;
const BAR_HEIGHT = 16;
const TITLE: Face = { sizePx: 32, bold: true };
const NOT_KNOWN = "not known";
const NOT_SET = "not set";
const NAME: Face = { sizePx: 26 };
const FIGURE: Face = { sizePx: 26, bold: true };
/** The first that has room: a figure is never cut. */
const FIGURE_FACES: readonly Face[] = [FIGURE, { sizePx: 24, bold: true }];
const LEAST_FACE: Face = { sizePx: 24 };
const SMALL: Face = { sizePx: 24 };
const LEADING = 1.25;

/** Pieces of SVG from the top down, and where the next one goes. */
interface Sheet {
  readonly pieces: string[];
  y: number;
}

/**
 * Energy, protein, fat and carbohydrate of portions beside each other and against the day's target: a
 * row for each portion, a column for each figure. Every bar has its figure above it; nothing is told by
 * colour alone.
 */
export function macroPicture({ title, rows, target, style }: MacroPictureParts): Picture {
  const day = target !== null && COLUMNS.some(({ key }) => isAbove0(target[key])) ? target : null;
  const told: MacroTold = { title, rows: rows.slice(0, ROWS_MAX), target: day, style };
  const more = rows.length - told.rows.length;
  const moreNote = more === 0 ? [] : [`Not shown: ${more} more.`];
  const sheet: Sheet = { pieces: [], y: MARGIN };
  addLines(sheet, breakLines(cleanLine(title), TITLE, INNER, 2), TITLE);
  addHeads(sheet);
  for (const row of told.rows) addRow(sheet, row, told);
  if (day !== null) addTarget(sheet, day, told.rows);
  sheet.y += 8;
  for (const note of [...notesOf(told), ...moreNote]) {
    addLines(sheet, breakLines(note, SMALL, INNER, 3), SMALL, QUIET);
  }
  const heightPx = Math.ceil(sheet.y + MARGIN / 2);
  return {
    name: "macros",
    svg: drawing({ widthPx: WIDTH, heightPx }, sheet.pieces),
    widthPx: WIDTH,
    heightPx,
    alt: macroAlt(told, [...moreNote, fibreNote(style)]),
  };
}

function addLines(sheet: Sheet, lines: readonly string[], face: Face, colour = INK): void {
  for (const line of lines) {
    sheet.pieces.push(textAt({ x: MARGIN, y: sheet.y + face.sizePx }, line, { ...face, colour }));
    sheet.y += face.sizePx * LEADING;
  }
}

function addHeads(sheet: Sheet): void {
  sheet.y += 12;
  for (const { key, name } of COLUMNS) {
    const at = { x: PLACES[key].x, y: sheet.y + SMALL.sizePx };
    sheet.pieces.push(textAt(at, name, { ...SMALL, colour: QUIET }));
  }
  sheet.y += SMALL.sizePx * LEADING + 4;
}

function addRow(sheet: Sheet, row: MacroRow, { rows, target, style }: MacroTold): void {
  startRow(sheet, row.label);
  for (const { key } of COLUMNS) {
    const figure = macroFigure(row.sums, key, style);
    addFigure(sheet, key, figure);
    const fullScale = scaleOf(key, rows, target);
    if (fullScale === null || figure === NOT_KNOWN) continue;
    addBar(sheet, key, row.sums[key].amount / fullScale);
    const mark = markOf(key, rows, target);
    if (mark !== null) addMark(sheet, key, mark);
  }
  endRow(sheet);
}

/** The target is drawn as a frame, so that it is told from a portion without colour. */
function addTarget(sheet: Sheet, day: TargetFigures, rows: readonly MacroRow[]): void {
  startRow(sheet, "your target for the day");
  for (const { key } of COLUMNS) {
    addFigure(sheet, key, writeTarget(day, key) ?? NOT_SET);
    const mark = markOf(key, rows, day);
    if (mark !== null) sheet.pieces.push(framed(barBox(sheet, key, mark), INK, 3));
  }
  endRow(sheet);
}

function startRow(sheet: Sheet, label: string): void {
  sheet.pieces.push(filled({ x: MARGIN, y: sheet.y, width: INNER, height: 2 }, TRACK));
  sheet.y += 12;
  addLines(sheet, breakLines(cleanLine(label), NAME, INNER, 2), NAME);
  sheet.y += 4;
}

function endRow(sheet: Sheet): void {
  sheet.y += FIGURE.sizePx * LEADING + BAR_HEIGHT + 22;
}

function addFigure(sheet: Sheet, key: MacroKey, text: string): void {
  const short = text.replace(/^at least /u, "≥ ").replace(/^(?:below|less than) /u, "< ");
  const room = PLACES[key].width - GAP / 2;
  const fitting = FIGURE_FACES.find((face) => widthPx(short, face) <= room);
  const face = text === NOT_KNOWN || text === NOT_SET ? LEAST_FACE : (fitting ?? LEAST_FACE);
  const sizePx = face.sizePx * Math.min(1, room / widthPx(short, face));
  const at = { x: PLACES[key].x, y: sheet.y + FIGURE.sizePx };
  sheet.pieces.push(textAt(at, short, { ...face, sizePx }));
}

function addBar(sheet: Sheet, key: MacroKey, share: number): void {
  sheet.pieces.push(filled(barBox(sheet, key, 1), TRACK));
  // Something is never drawn as nothing.
  if (share > 0) sheet.pieces.push(filled(barBox(sheet, key, Math.max(share, 0.015)), BAR));
}

/** A post where the day's target lies, set off with light so that it is seen on a longer bar too. */
function addMark(sheet: Sheet, key: MacroKey, share: number): void {
  const bar = barBox(sheet, key, share);
  const post = { x: bar.x + bar.width - 4, y: bar.y - 4, width: 4, height: BAR_HEIGHT + 8 };
  sheet.pieces.push(filled({ ...post, x: post.x - 2, width: 8 }, GROUND), filled(post, INK));
}

function barBox(sheet: Sheet, key: MacroKey, share: number): Box {
  return {
    x: PLACES[key].x,
    y: sheet.y + FIGURE.sizePx * LEADING + 4,
    width: (PLACES[key].width - GAP) * Math.min(share, 1),
    height: BAR_HEIGHT,
  };
}

/**
 * What a full track stands for: the target, or the largest portion where that is more. Where only some
 * figures have a target, the others get no bar, which would mean something else beside them.
 */
function scaleOf(
  key: MacroKey,
  rows: readonly MacroRow[],
  day: TargetFigures | null,
): number | null {
  const most = Math.max(...rows.map((row) => row.sums[key].amount), 0);
  const target = day?.[key];
  if (day !== null && !isAbove0(target)) return null;
  return Math.max(most, target ?? 0) || null;
}

/** Where on the track the target lies; null where there is none. */
function markOf(
  key: MacroKey,
  rows: readonly MacroRow[],
  day: TargetFigures | null,
): number | null {
  const target = day?.[key];
  const fullScale = scaleOf(key, rows, day);
  return target === undefined || target <= 0 || fullScale === null ? null : target / fullScale;
}

function isAbove0(figure: number | undefined): boolean {
  return figure !== undefined && figure > 0;
}

function notesOf({ rows, target, style }: MacroTold): readonly string[] {
  const isBound = rows.some(({ sums }) => COLUMNS.some(({ key }) => sums[key].atLeast));
  return [
    target === null
      ? "Bars compare the portions with each other."
      : "A bar is the portion, its mark your target for the day.",
    ...(isBound ? ["≥ is at least: not everything could be counted."] : []),
    fibreNote(style),
  ];
}

/** The EU's own carbohydrate is without fibre, and so is that of the card: here it is held against a target. */
function fibreNote(style: LabelStyle): string {
  return style === "us" ? "Carbohydrate with fiber." : "Carbohydrate with fibre.";
}
