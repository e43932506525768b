import type { Part, Reply, Row } from "../../commands/kit/reply.ts";
import { cut, escapeLine, oneLine } from "./escape.ts";

/** Characters of text in one message, kept below the platform's 4,000 (components/reference). */
const TEXT_MAX = 3_800;
const HEADING_MAX = 600;
const CAUTIONS_MAX = 1_400;
/** Escaping at most doubles a text. */
const ESCAPED_FACTOR = 2;
const FILE_MAX = 4_000_000;
const ELSEWHERE = "The whole answer is in the attached file.";

export interface FittedText {
  readonly heading: string;
  /** Empty when there is nothing below the heading. */
  readonly body: string;
  /** Empty when there are none. */
  readonly cautions: string;
  /** The whole answer as plain text when it did not fit; null when it did. */
  readonly wholeText: string | null;
}

/** A line as it will be shown, and what it looks like unescaped. */
interface Line {
  readonly plain: string;
  readonly isTitle: boolean;
}

/**
 * The text of a reply within the platform's limit. Cautions keep their place: when something must move
 * to the file it is taken from the middle.
 */
export function fitText(reply: Reply, notes: readonly string[] = []): FittedText {
  const heading = `**${escapeLine(cut(oneLine(reply.heading) || "…", HEADING_MAX / ESCAPED_FACTOR))}**`;
  const small = [...notes, ...reply.cautions].flatMap(linesOf).map((l) => `-# ${escapeLine(l)}`);
  const cautions = fitLines(small, CAUTIONS_MAX);
  const lines = [...alertLines(reply.alerts), ...bodyLines(reply.parts)];
  const room = TEXT_MAX - heading.length - cautions.text.length - ELSEWHERE.length - 2;
  const body = fitLines(
    lines.map((line) => shownLine(line, room)),
    room,
  );
  const isWhole =
    body.isWhole &&
    cautions.isWhole &&
    lines.every(({ plain }) => plain.length <= room) &&
    oneLine(reply.heading).length <= HEADING_MAX / ESCAPED_FACTOR;
  return {
    heading,
    body: isWhole ? body.text : [body.text, ELSEWHERE].filter(Boolean).join("\n"),
    cautions: cautions.text,
    wholeText: isWhole ? null : wholeText(reply, notes, lines),
  };
}

function shownLine({ plain, isTitle }: Line, room: number): string {
  // Only a line longer than the whole message is cut; all others are shown whole or left to the file.
  const text = escapeLine(plain.length > room ? cut(plain, room / ESCAPED_FACTOR) : plain);
  return isTitle && text !== "" ? `**${text}**` : text;
}

function fitLines(lines: readonly string[], max: number): { text: string; isWhole: boolean } {
  const kept: string[] = [];
  let length = 0;
  for (const line of lines) {
    if (length + line.length + 1 > max) {
      return { text: kept.join("\n").trimEnd(), isWhole: false };
    }
    kept.push(line);
    length += line.length + 1;
  }
  return { text: kept.join("\n").trimEnd(), isWhole: true };
}

/** The parts one below the other, an empty line between them. */
function bodyLines(parts: readonly Part[]): readonly Line[] {
  return parts.flatMap((part, index) => {
    const gap: readonly Line[] = index === 0 ? [] : [{ plain: "", isTitle: false }];
    return [...gap, ...partLines(part)];
  });
}

/** What may hurt comes before everything else, and set like a title. */
function alertLines(alerts: readonly string[]): readonly Line[] {
  if (alerts.length === 0) return [];
  const lines = alerts.flatMap(linesOf).map((plain) => ({ plain, isTitle: true }));
  return [...lines, { plain: "", isTitle: false }];
}

function partLines(part: Part): readonly Line[] {
  if (part.kind === "text") {
    return part.lines.flatMap(linesOf).map((plain) => ({ plain, isTitle: false }));
  }
  const title = part.title === null ? [] : [{ plain: oneLine(part.title), isTitle: true }];
  return [...title, ...part.rows.map((row) => ({ plain: rowLine(row), isTitle: false }))];
}

function rowLine({ label, figure, note }: Row): string {
  const main = [label, figure].map(oneLine).filter(Boolean).join(" — ");
  return [main, oneLine(note ?? "")].filter(Boolean).join(" · ");
}

function linesOf(text: string): readonly string[] {
  return text.split(/\r\n|\r|\n/u).map(oneLine);
}

function wholeText(reply: Reply, notes: readonly string[], lines: readonly Line[]): string {
  const last = [...notes, ...reply.cautions].flatMap(linesOf);
  const all = [oneLine(reply.heading), "", ...lines.map((line) => line.plain)];
  return cut(`${[...all, ...(last.length > 0 ? ["", ...last] : [])].join("\n")}\n`, FILE_MAX);
}
