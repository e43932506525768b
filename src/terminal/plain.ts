/** Plain text for a terminal of a fixed width. */

export const COLUMNS = 76;

/**
 * Text that a member wrote, made safe to print: control characters would move the cursor or recolour
 * the screen, and direction marks would show it in another order than it is.
 */
export function plain(text: string): string {
  return text
    .replace(/\t/gu, " ")
    .replace(/[\p{Cc}\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069\u2028\u2029]/gu, "");
}

/** Columns that the text takes, by characters as they are seen (wide scripts count one each). */
export function widthOf(text: string): number {
  return [...text.normalize("NFC").replace(/\p{Mn}/gu, "")].length;
}

export function padded(text: string, width: number): string {
  return text + " ".repeat(Math.max(width - widthOf(text), 0));
}

/** Breaks at spaces; a word longer than a line stands alone, for half a name or path cannot be copied. */
export function wrap(text: string, width: number, indent = "", hang = indent): readonly string[] {
  const lines: string[] = [];
  let line = indent;
  let isEmpty = true;
  for (const word of plain(text).split(/ +/u)) {
    if (!isEmpty && widthOf(line) + 1 + widthOf(word) > width) {
      lines.push(line);
      line = hang;
      isEmpty = true;
    }
    line += isEmpty ? word : ` ${word}`;
    isEmpty = false;
  }
  return [...lines, line.trimEnd()];
}
