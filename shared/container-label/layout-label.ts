import { MM_PER_PT, type PrintBox, type PrintItem } from "../picture/print.ts";
import { ALLERGENS_ELSEWHERE } from "./allergen-line.ts";
import { ARM_LENGTH_PT, LEAST_PT } from "./legibility.ts";
import { labelSide } from "./side.ts";
import type { LabelNote, LabelWords, NoteId } from "./types.ts";
import { firstLines, type Type, widthMm, wrapText } from "./wrap.ts";

/** One label, laid out, and what is not on it. */
export interface LaidLabel {
  readonly items: readonly PrintItem[];
  /** Notes that are not on it, allergens also where it only says where to find them; in the order in which they were given up. */
  readonly leftOff: readonly NoteId[];
}

/**
 * What is said shorter, or left off, when there is no room at the least size: one form shorter at each
 * mention, in this order. Name, date, code, the day of cooking and the allergens always stay: the end of a
 * long name is given up before them, and allergens that cannot all be named are not named in part.
 */
const SHORTEN: readonly NoteId[] = [
  "reheat",
  "portion",
  "cooked",
  "after",
  "thaw",
  "portion",
  "without",
  "thaw",
  "portion",
  "allergens",
  "reheat",
  "after",
  "without",
  "portion",
];

/** Sizes in points, tried from the largest down: the date never below what is read at arm's length. */
interface Sizes {
  /** The most; a long name is set smaller than the rest allows. */
  readonly name: number;
  /** Of a name in small type; in large type two. */
  readonly nameLines: number;
  readonly date: number;
  readonly note: number;
}

const SIZES: readonly Sizes[] = [
  { name: 20, nameLines: 3, date: 18, note: 11 },
  { name: 18, nameLines: 3, date: 16, note: 10 },
  { name: 16, nameLines: 3, date: 15, note: 9.5 },
  { name: 15, nameLines: 3, date: 14, note: 9 },
  { name: 14, nameLines: 3, date: 13, note: 8.5 },
  { name: 13, nameLines: 3, date: 12, note: 8 },
  { name: 12, nameLines: 3, date: ARM_LENGTH_PT, note: 7.5 },
  { name: ARM_LENGTH_PT, nameLines: 3, date: ARM_LENGTH_PT, note: 7 },
  { name: ARM_LENGTH_PT, nameLines: 2, date: ARM_LENGTH_PT, note: 6.5 },
  { name: 10, nameLines: 2, date: ARM_LENGTH_PT, note: LEAST_PT },
  { name: 9, nameLines: 2, date: ARM_LENGTH_PT, note: LEAST_PT },
];
/** Where all else fails the end of a long name is given up. */
const LAST: Sizes = { name: 9, nameLines: 1, date: ARM_LENGTH_PT, note: LEAST_PT };
const NAME_SIZES = [20, 18, 16, 15, 14, 13, 12, ARM_LENGTH_PT, 10, LAST.name];
const LARGE_LINES = 2;

/** "DejaVu Sans": from the top of a line to its baseline, and to the next line. */
const ASCENT = 0.93;
const PITCH = 1.17;
const GAP_MM = 0.5;
const RULE_MM = 0.35;
/** Room to write a name by hand. */
const WRITING_MM = 6;

/**
 * Lays a label out in `box`, counted from the label's top left corner: its name, then the date it must go
 * by, then the notes, with the code and the place to tick on the right.
 */
export function layLabel(words: LabelWords, box: PrintBox): LaidLabel {
  const side = labelSide(words, box);
  const room: PrintBox = { ...box, widthMm: box.widthMm - side.widthMm };
  const steps = SHORTEN.map((_, given) => ({ given: SHORTEN.slice(0, given), sizes: SIZES }));
  const last: readonly Step[] = [
    { given: SHORTEN, sizes: [...SIZES, LAST] },
    { given: [...SHORTEN, "allergens"], sizes: [...SIZES, LAST] },
  ];
  for (const { given, sizes } of [...steps, ...last]) {
    const notes = shortened(words.notes, given);
    for (const one of sizes) {
      const items = stack(words, notes, room, one);
      if (items !== null) return { items: [...items, ...side.items], leftOff: leftOffOf(notes) };
    }
  }
  throw new Error("a label too small for a name, a date and a code");
}

interface Step {
  readonly given: readonly NoteId[];
  readonly sizes: readonly Sizes[];
}

interface Formed {
  readonly id: NoteId;
  readonly text: string | null;
}

function shortened(notes: readonly LabelNote[], given: readonly NoteId[]): readonly Formed[] {
  return notes.map(({ id, forms }) => {
    const times = given.filter((one) => one === id).length;
    return { id, text: forms[Math.min(times, forms.length - 1)] ?? null };
  });
}

function leftOffOf(notes: readonly Formed[]): readonly NoteId[] {
  const isOff = ({ text }: Formed) => text === null || text === ALLERGENS_ELSEWHERE;
  const off = new Set(notes.filter(isOff).map(({ id }) => id));
  return [...new Set(SHORTEN)].filter((id) => off.has(id));
}

/** A pen that goes down a column. */
interface Column {
  readonly items: PrintItem[];
  readonly room: PrintBox;
  yMm: number;
}

/** Null when it does not fit at these sizes. */
function stack(
  words: LabelWords,
  notes: readonly Formed[],
  room: PrintBox,
  sizes: Sizes,
): readonly PrintItem[] | null {
  const column: Column = { items: [], room, yMm: room.yMm };
  addName(column, words.name, sizes);
  addDate(column, words, sizes);
  for (const { text } of notes) {
    if (text === null) continue;
    column.yMm += GAP_MM;
    const type = { sizePt: sizes.note, bold: false };
    addLines(column, wrapText(text, type, room.widthMm), type);
  }
  return column.yMm <= room.yMm + room.heightMm + 1e-9 ? column.items : null;
}

/** As large as it goes in its lines; where the smallest is too large, its end is given up. */
function addName(column: Column, name: string, { name: mostPt, nameLines }: Sizes): void {
  const { room } = column;
  if (name === "") {
    column.yMm += WRITING_MM;
    const yMm = column.yMm - RULE_MM;
    const { xMm, widthMm } = room;
    column.items.push({ kind: "rule", xMm, yMm, widthMm, heightMm: RULE_MM });
    return;
  }
  const tried = NAME_SIZES.filter((sizePt) => sizePt <= mostPt).map((sizePt) => {
    const type = { sizePt, bold: true };
    const linesMax = sizePt > ARM_LENGTH_PT ? Math.min(LARGE_LINES, nameLines) : nameLines;
    return { type, linesMax, lines: wrapText(name, type, room.widthMm) };
  });
  const fitting = tried.find(({ lines, linesMax }) => lines.length <= linesMax) ?? tried.at(-1);
  if (fitting === undefined) return;
  const { lines, linesMax, type } = fitting;
  addLines(column, firstLines(lines, linesMax, type, room.widthMm), type);
}

/** "Eat by" small before the date where both fit in a line, above it where not. */
function addDate(column: Column, { lead, date, dateShort }: LabelWords, sizes: Sizes): void {
  const { room } = column;
  const dateType = { sizePt: sizes.date, bold: true };
  const leadTypes = [Math.max(LEAST_PT, sizes.date * 0.75), LEAST_PT].map((sizePt) => ({
    sizePt,
    bold: true,
  }));
  const all = [date, dateShort].flatMap((text) =>
    leadTypes.map((leadType) => ({ text, leadType })),
  );
  const fitting = all.find(
    ({ text, leadType }) => widthMm(`${lead} `, leadType) + widthMm(text, dateType) <= room.widthMm,
  );
  column.yMm += GAP_MM;
  if (fitting === undefined) {
    addLines(column, [lead], { sizePt: LEAST_PT, bold: true });
    addLines(column, [date], dateType);
    return;
  }
  const { text, leadType } = fitting;
  const yMm = column.yMm + sizes.date * MM_PER_PT * ASCENT;
  column.items.push({ kind: "text", xMm: room.xMm, yMm, text: lead, ...leadType });
  addLines(column, [text], dateType, widthMm(`${lead} `, leadType));
}

function addLines(column: Column, lines: readonly string[], type: Type, indentMm = 0): void {
  const emMm = type.sizePt * MM_PER_PT;
  for (const text of lines) {
    const xMm = column.room.xMm + indentMm;
    column.items.push({ kind: "text", xMm, yMm: column.yMm + emMm * ASCENT, text, ...type });
    column.yMm += emMm * PITCH;
  }
}
