import type { Part, Reply, ReplyFile, Row } from "../../commands/kit/reply.ts";
import { COLUMNS, padded, plain, widthOf, wrap } from "./plain.ts";

/** A numbered thing that can be picked. */
export interface Pick {
  readonly number: number;
  readonly pressId: string;
  /** The value picked of a list; empty for a button. */
  readonly picked: readonly string[];
}

export interface Rendered {
  readonly text: string;
  readonly picks: readonly Pick[];
}

/** Writes a file to disk: its path, or null where that is not possible. */
export type KeepFile = (file: ReplyFile) => string | null;

const LABEL_MAX = 40;
const FIGURE_MAX = 24;
const BETWEEN = 2;

/**
 * A reply as text: the answer first, then its parts, cautions last, then what can be picked, numbered
 * from `firstNumber`. Files to keep are handed to `keep`. Ends in a newline.
 */
export function renderReply(
  reply: Reply,
  firstNumber: number,
  keep: KeepFile = () => null,
): Rendered {
  const numbered = numberPicks(reply, firstNumber);
  const blocks = [
    wrap(reply.heading, COLUMNS),
    reply.alerts.flatMap((alert) => wrap(`!! ${alert}`, COLUMNS, "", "   ")),
    ...reply.parts.map(renderPart),
    ...reply.pictures.map(({ alt }) => wrap(`[picture: ${alt}]`, COLUMNS, "", "  ")),
    reply.cautions.flatMap((caution) => wrap(`Caution: ${caution}`, COLUMNS, "", "  ")),
    ...reply.files.map((file) => renderFile(file, keep)),
    ...numbered.blocks,
  ].filter((block) => block.length > 0);
  return {
    text: `${blocks.map((block) => block.join("\n")).join("\n\n")}\n`,
    picks: numbered.picks,
  };
}

function renderPart(part: Part): readonly string[] {
  return part.kind === "text"
    ? part.lines.flatMap((line) => line.split("\n")).flatMap(renderLine)
    : renderRows(part.title, part.rows);
}

function renderLine(line: string): readonly string[] {
  // Lists keep their text in line: "- ", "1. ".
  const mark = /^(?:[-•]|\d{1,3}[.)])\s+/u.exec(line)?.[0] ?? "";
  return wrap(line, COLUMNS, "", " ".repeat(mark.length));
}

function renderRows(title: string | null, rows: readonly Row[]): readonly string[] {
  const widest = (texts: readonly string[], max: number): number =>
    Math.max(0, ...texts.map((text) => widthOf(plain(text))).filter((width) => width <= max));
  const label = widest(
    rows.map((row) => row.label),
    LABEL_MAX,
  );
  const figure = widest(
    rows.map((row) => row.figure),
    FIGURE_MAX,
  );
  const lines = rows.flatMap((row) => renderRow(row, label, figure));
  return title === null ? lines : [...wrap(title, COLUMNS), ...lines];
}

function renderRow(row: Row, labelWidth: number, figureWidth: number): readonly string[] {
  const [label, figure, note] = [plain(row.label), plain(row.figure), plain(row.note ?? "")];
  const gap = " ".repeat(BETWEEN);
  const lead = `${gap}${padded(label, labelWidth)}${gap}${figure}`.trimEnd();
  const whole = `${gap}${padded(label, labelWidth)}${gap}${padded(figure, figureWidth)}${gap}${note}`;
  const deeper = gap.repeat(2);
  if (widthOf(whole.trimEnd()) <= COLUMNS) return [whole.trimEnd()];
  const below = note === "" ? [] : wrap(note, COLUMNS, deeper);
  if (widthOf(lead) <= COLUMNS) return [lead, ...below];
  return [...wrap(label, COLUMNS, gap, deeper), ...wrap(figure, COLUMNS, deeper), ...below];
}

/** To read at once is written out as it is; to keep goes to disk, and is written out only where that fails. */
function renderFile(file: ReplyFile, keep: KeepFile): readonly string[] {
  const path = "text" in file && file.mediaType === undefined ? null : keep(file);
  // A path is not wrapped: it is meant to be copied.
  if (path !== null) return [`File: ${plain(path)}`];
  if ("bytes" in file) {
    return wrap(`File ${file.name}: it could not be written to disk here.`, COLUMNS);
  }
  const lines = file.text.replace(/\n$/u, "").split("\n");
  return [`File ${plain(file.name)}:`, ...lines.map((line) => `  | ${plain(line)}`.trimEnd())];
}

function numberPicks(
  reply: Reply,
  firstNumber: number,
): { readonly blocks: readonly (readonly string[])[]; readonly picks: readonly Pick[] } {
  const picks: Pick[] = [];
  const add = (pressId: string, picked: readonly string[], label: string): string => {
    const number = firstNumber + picks.length;
    picks.push({ number, pressId, picked });
    return `[${number}] ${plain(label)}`;
  };
  const buttons = reply.buttons.map(({ id, label }) => add(id, [], label));
  const choices = reply.choices.map((choice) => [
    ...wrap(`${choice.placeholder}:`, COLUMNS),
    ...choice.options.flatMap(({ value, label, hint }) =>
      wrap(
        `${add(choice.id, [value], label)}${hint === undefined ? "" : `  (${hint})`}`,
        COLUMNS,
        "  ",
        "      ",
      ),
    ),
  ]);
  return { blocks: [inLine(buttons), ...choices], picks };
}

/** Buttons side by side, as many as fit on a line; none is broken. */
function inLine(buttons: readonly string[]): readonly string[] {
  const lines: string[] = [];
  for (const button of buttons) {
    const last = lines.at(-1);
    if (last !== undefined && widthOf(last) + 3 + widthOf(button) <= COLUMNS) {
      lines[lines.length - 1] = `${last}   ${button}`;
    } else {
      lines.push(button);
    }
  }
  return lines;
}
