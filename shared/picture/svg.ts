import type { Face } from "./measure.ts";

/** A small drawing kit: pieces of SVG as text. All lengths in pixels. */

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Colours on a light ground; tests hold the contrasts of them against WCAG 2.2. */
export const INK = "#1e2a2f";
export const QUIET = "#4a575d";
export const GROUND = "#fcfbf7";
export const BAR = "#1f6f78";
export const TRACK = "#e1e6e3";

/** Characters that XML cannot carry, that nobody sees, or that turn the direction of what follows. */
const UNFIT =
  /[\p{Cc}\p{Cs}\p{Co}\u061C\u00AD\u200B-\u200F\u2028-\u202E\u2060-\u206F\uFEFF\uFFF0-\uFFFF]+/gu;
/** A few accents are a language, a tower of them is a blot. */
const TOWER = /(\p{M}{2})\p{M}+/gu;

/** One line of what a member wrote, without anything that could break out of its line. */
export function cleanLine(text: string): string {
  return text
    .normalize("NFC")
    .replace(UNFIT, " ")
    .replace(TOWER, "$1")
    .replace(/\s+/gu, " ")
    .trim();
}

/** Text as it may stand in an SVG, whoever wrote it. Emoji are left out: our fonts have none. */
function escapeText(text: string): string {
  return cleanLine(text.replace(/\p{Emoji_Presentation}/gu, " "))
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    .replaceAll("'", "&#39;");
}

/** A line of text, `y` its baseline; it begins, ends or has its middle at `x`. */
export function textAt(
  at: { readonly x: number; readonly y: number },
  text: string,
  { sizePx, bold = false, colour = INK, anchor = "start" }: TextLook,
): string {
  const weight = bold ? ' font-weight="bold"' : "";
  const where = anchor === "start" ? "" : ` text-anchor="${anchor}"`;
  return `<text x="${px(at.x)}" y="${px(at.y)}" font-family="DejaVu Sans" font-size="${px(sizePx)}"${weight}${where} fill="${colour}">${escapeText(text)}</text>`;
}

interface TextLook extends Face {
  readonly colour?: string;
  readonly anchor?: "start" | "middle" | "end";
}

export function filled({ x, y, width, height }: Box, colour: string): string {
  return `<rect x="${px(x)}" y="${px(y)}" width="${px(width)}" height="${px(height)}" fill="${colour}"/>`;
}

/** A frame drawn inside its box. */
export function framed({ x, y, width, height }: Box, colour: string, linePx: number): string {
  const half = linePx / 2;
  return `<rect x="${px(x + half)}" y="${px(y + half)}" width="${px(width - linePx)}" height="${px(height - linePx)}" fill="none" stroke="${colour}" stroke-width="${px(linePx)}"/>`;
}

/** A line from one point to another. */
export function lineFrom(
  [x1, y1]: readonly [number, number],
  [x2, y2]: readonly [number, number],
  { colour, linePx }: { readonly colour: string; readonly linePx: number },
): string {
  return `<line x1="${px(x1)}" y1="${px(y1)}" x2="${px(x2)}" y2="${px(y2)}" stroke="${colour}" stroke-width="${px(linePx)}"/>`;
}

/** A filled shape with a thin edge. */
export function polygon(
  points: readonly (readonly [number, number])[],
  { fill, edge }: { readonly fill: string; readonly edge: string },
): string {
  const list = points.map(([x, y]) => `${px(x)},${px(y)}`).join(" ");
  return `<polygon points="${list}" fill="${fill}" stroke="${edge}" stroke-width="2"/>`;
}

/** A box filled with slanting lines, in one direction or in both; drawn inside its box. */
export function hatched(box: Box, colour: string, directions: 1 | 2): string {
  const { x, y, width, height } = box;
  const look = { colour, linePx: 3 };
  const lines: string[] = [];
  for (let start = -height; start < width; start += 12) {
    const [left, right] = [Math.max(start, 0), Math.min(start + height, width)];
    if (right <= left) continue;
    // From the bottom left to the top right, cut at the box's sides.
    const [low, high] = [y + height - (left - start), y + height - (right - start)];
    lines.push(lineFrom([x + left, low], [x + right, high], look));
    if (directions === 2) {
      lines.push(
        lineFrom([x + left, 2 * y + height - low], [x + right, 2 * y + height - high], look),
      );
    }
  }
  return lines.join("");
}

/** A whole document on a light ground. */
export function drawing(
  size: { readonly widthPx: number; readonly heightPx: number },
  pieces: readonly string[],
): string {
  const { widthPx, heightPx } = size;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${px(widthPx)}" height="${px(heightPx)}" viewBox="0 0 ${px(widthPx)} ${px(heightPx)}">`,
    filled({ x: 0, y: 0, width: widthPx, height: heightPx }, GROUND),
    ...pieces,
    "</svg>",
  ].join("");
}

/** To a tenth of a pixel; never anything but a number. */
function px(length: number): string {
  return Number.isFinite(length) ? String(Math.round(length * 10) / 10) : "0";
}
