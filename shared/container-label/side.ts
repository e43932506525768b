import { MM_PER_PT, type PrintBox, type PrintItem } from "../picture/print.ts";
import { ARM_LENGTH_PT, LEAST_PT } from "./legibility.ts";
import type { LabelWords } from "./types.ts";
import { widthMm } from "./wrap.ts";

/** The right side of a label: the code to scan, the code to type, the places to tick. */
export interface Side {
  readonly items: readonly PrintItem[];
  /** What it takes of the width, with the free space to its left. */
  readonly widthMm: number;
}

/** A symbol of version 1 has 21 modules and wants four free ones all around (ISO/IEC 18004). */
const MODULES = 21;
const QUIET_MODULES = 4;
/** A module below half a millimetre is hard for a phone to read on a wet box: common practice. */
const LEAST_MODULE_MM = 0.5;
const MOST_MODULE_MM = 0.8;
const TICK_MM = 4;
const TICK_GAP_MM = 1;
const TICK_LINE_MM = 0.35;
/** From the line of the code, below which a Q reaches. */
const CODE_GAP_MM = 1.5;
/** What round capitals and digits reach above their line, as a share of the size ("DejaVu Sans"). */
const CAPITAL = 0.76;

/** `box` is what may be printed on, from the top left corner of the label. */
export function labelSide(words: LabelWords, box: PrintBox): Side {
  const wantedMm = Math.min(box.widthMm * 0.21, box.heightMm * 0.5) / MODULES;
  const moduleMm = Math.min(MOST_MODULE_MM, Math.max(LEAST_MODULE_MM, wantedMm));
  const sideMm = moduleMm * MODULES;
  const quietMm = moduleMm * QUIET_MODULES;
  // The free modules lie on the label itself: what it sticks to may be dark.
  const rightMm = Math.max(0, quietMm - box.xMm);
  const topMm = Math.max(0, quietMm - box.yMm);
  const code = codeType(words.code, sideMm + rightMm);
  const columnMm = Math.max(sideMm + rightMm, code.widthMm);
  const edgeMm = box.xMm + box.widthMm;
  const qr: PrintItem = {
    kind: "qr",
    xMm: edgeMm - rightMm - sideMm,
    yMm: box.yMm + topMm,
    widthMm: sideMm,
    heightMm: sideMm,
    text: words.code,
  };
  const codeMm = qr.yMm + sideMm + quietMm + code.sizePt * MM_PER_PT * CAPITAL;
  const codeItem: PrintItem = {
    kind: "text",
    xMm: edgeMm - code.widthMm,
    yMm: codeMm,
    text: words.code,
    sizePt: code.sizePt,
    bold: true,
  };
  const ticks = tickItems(words.ticks, {
    xMm: edgeMm - columnMm,
    yMm: codeMm + CODE_GAP_MM,
    widthMm: columnMm,
    heightMm: box.yMm + box.heightMm - codeMm - CODE_GAP_MM,
  });
  return { items: [qr, codeItem, ...ticks], widthMm: columnMm + quietMm };
}

/** As large as the column takes, up to what is read at arm's length. */
function codeType(code: string, roomMm: number): { sizePt: number; widthMm: number } {
  const eachMm = widthMm(code, { sizePt: 1, bold: true });
  const sizePt = Math.max(LEAST_PT, Math.min(ARM_LENGTH_PT, Math.floor((4 * roomMm) / eachMm) / 4));
  return { sizePt, widthMm: eachMm * sizePt };
}

/** A frame for each portion, from the bottom up; where they do not all fit, a line to write how many are left. */
function tickItems(ticks: number, room: PrintBox): readonly PrintItem[] {
  const step = TICK_MM + TICK_GAP_MM;
  const columns = Math.max(1, Math.floor((room.widthMm + TICK_GAP_MM) / step));
  const rows = Math.floor((room.heightMm + TICK_GAP_MM) / step);
  const right = room.xMm + room.widthMm;
  const bottom = room.yMm + room.heightMm;
  if (ticks <= columns * rows) {
    const frames = Array.from(
      { length: ticks },
      (_, index): PrintItem => ({
        kind: "frame",
        xMm: right - (index % columns) * step - TICK_MM,
        yMm: bottom - Math.floor(index / columns) * step - TICK_MM,
        widthMm: TICK_MM,
        heightMm: TICK_MM,
        lineMm: TICK_LINE_MM,
      }),
    );
    return ticks === 1 ? [...frames, ...tickWord(room)] : frames;
  }
  const left = { text: "left:", sizePt: LEAST_PT, bold: false };
  const textMm = widthMm(left.text, left);
  return [
    { kind: "text", xMm: room.xMm, yMm: bottom - TICK_LINE_MM, ...left },
    {
      kind: "rule",
      xMm: room.xMm + textMm,
      yMm: bottom - TICK_LINE_MM,
      widthMm: room.widthMm - textMm,
      heightMm: TICK_LINE_MM,
    },
  ];
}

/** What one tick means, where there is room for it beside the frame. */
function tickWord(room: PrintBox): readonly PrintItem[] {
  const word = { text: "eaten", sizePt: LEAST_PT, bold: false };
  const wordMm = widthMm(word.text, word);
  if (wordMm + TICK_GAP_MM / 2 + TICK_MM > room.widthMm) return [];
  const xMm = room.xMm + room.widthMm - TICK_MM - TICK_GAP_MM / 2 - wordMm;
  return [{ kind: "text", xMm, yMm: room.yMm + room.heightMm - TICK_GAP_MM, ...word }];
}
