// Members' names, recipe titles and typed text are hostile: nothing in them may format, link, mention,
// or reorder what stands around it.

/** Controls, line separators, and marks that turn the direction of writing. */
const UNPRINTABLE = /[\p{Cc}\u2028\u2029\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069\uFEFF]+/gu;
const MARKUP = /[\\*_`[\]<]|~(?=~)|\|(?=\|)/gu;
const LINE_START = /^(?:[#>+-]|\d+(?=[.)](?:\s|$)))/u;
/** Between "@" and what follows it a mention cannot form; unlike a backslash it also survives copying. */
const ZERO_WIDTH = "\u200B";

/** Halves of characters, which the wire cannot carry. */
const HALVES = /\p{Cs}/gu;

/** One clean line of plain text, markup left as it is; for button labels and files. */
export function oneLine(text: string): string {
  return text.replace(HALVES, "").replace(UNPRINTABLE, " ").trim();
}

/** One line that the platform shows exactly as it is: no markup, no link, no mention. */
export function escapeLine(text: string): string {
  return oneLine(text)
    .replace(MARKUP, "\\$&")
    .replaceAll("@", `@${ZERO_WIDTH}`)
    .replaceAll("://", ":\\//")
    .replace(LINE_START, escapeStart);
}

function escapeStart(mark: string): string {
  // A number opens a list only together with its dot, so it is the dot that gets the backslash.
  return /^\d/u.test(mark) ? `${mark}\\` : `\\${mark}`;
}

/** At most `max` UTF-16 units, never half a character; what is cut ends in "…". */
export function cut(text: string, max: number): string {
  if (text.length <= max) return text;
  const end = Math.max(max - 1, 0);
  return `${text.slice(0, end).replace(HALVES, "")}…`.slice(0, max);
}
