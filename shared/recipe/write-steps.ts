import { classify } from "./classify.ts";
import { RECIPE_LIMITS } from "./problems.ts";

/** More places to break a long step than this are not tried. */
const TRIES_MAX = 500;
/** The reader takes numbers of at most two digits. */
const NUMBER_MAX = 99;

/**
 * Steps as lines: numbered, a long one broken over several lines that the reader joins again. Without
 * numbers, one a line, when space is tight or a line would be too long.
 */
export function stepLines(steps: readonly string[], isTight: boolean): readonly string[] {
  const numbered = numberedFrom(steps, 0);
  const fits = numbered.every((line) => line.length <= RECIPE_LIMITS.lineChars);
  if (fits && !isTight) return numbered;
  // Below a numbered step a plain line would be its continuation.
  const firstMarked = steps.findIndex((step) => !isPlain(step));
  const plain = firstMarked === -1 ? steps : steps.slice(0, firstMarked);
  return [...plain, ...numberedFrom(steps.slice(plain.length), plain.length)];
}

function numberedFrom(steps: readonly string[], from: number): readonly string[] {
  return steps.flatMap((step, at) => {
    const number = Math.min(from + at + 1, NUMBER_MAX);
    return broken(`${number}. `, step);
  });
}

function isPlain(text: string): boolean {
  const kind = classify(text, "steps");
  return text.length <= RECIPE_LIMITS.lineChars && kind.kind === "plain" && kind.text === text;
}

function broken(mark: string, text: string): readonly string[] {
  const max = RECIPE_LIMITS.lineChars;
  if (mark.length + text.length <= max) return [`${mark}${text}`];
  const words = text.split(" ");
  const lines = breakUp(words, 0, max - mark.length, { left: TRIES_MAX });
  return lines === null
    ? [`${mark}${text}`]
    : lines.map((line, at) => (at === 0 ? `${mark}${line}` : line));
}

/** Lines of at most `room` characters, each but the first read as plain; null when that cannot be had. */
function breakUp(
  words: readonly string[],
  from: number,
  room: number,
  tries: { left: number },
): readonly string[] | null {
  for (let until = lastThatFits(words, from, room); until > from; until -= 1) {
    tries.left -= 1;
    if (tries.left < 0) return null;
    const line = words.slice(from, until).join(" ");
    if (from > 0 && !isPlain(line)) continue;
    if (until === words.length) return [line];
    const rest = breakUp(words, until, RECIPE_LIMITS.lineChars, tries);
    if (rest !== null) return [line, ...rest];
  }
  return null;
}

function lastThatFits(words: readonly string[], from: number, room: number): number {
  let length = -1;
  let until = from;
  while (until < words.length && length + 1 + (words[until]?.length ?? 0) <= room) {
    length += 1 + (words[until]?.length ?? 0);
    until += 1;
  }
  return until;
}
