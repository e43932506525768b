/** Longer words are never compared letter by letter. */
const MAX_LETTERS = 20;

/** How many slips a word of this length may hold: none in short words, where they make another word. */
export function slipsAllowed(word: string): number {
  if (word.length < 5 || word.length > MAX_LETTERS) return 0;
  return word.length < 8 ? 1 : 2;
}

/** Which of the letters a to z a word has, a bit each. */
export function lettersIn(word: string): number {
  let letters = 0;
  for (let i = 0; i < word.length; i += 1) letters |= 1 << (word.charCodeAt(i) - 97);
  return letters;
}

/**
 * Whether words of these letters may be so few slips apart: a slip takes one letter away and brings one in
 * at most. A look that spares most comparisons.
 */
export function mayBeNear(a: number, b: number, most: number): boolean {
  let differing = a ^ b;
  for (let left = 2 * most; differing !== 0; left -= 1) {
    if (left === 0) return false;
    differing &= differing - 1;
  }
  return true;
}

/**
 * Number of slips (a letter wrong, missing, too many, or two swapped) between two words, or null when
 * more than `most`. The first letter must be the same: people rarely miss it, and it keeps
 * "custard" from "mustard".
 */
export function slipsBetween(a: string, b: string, most: number): number | null {
  if (a[0] !== b[0] || Math.abs(a.length - b.length) > most) return null;
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = nextRow(a, b, i, last, beforeLast);
    if (Math.min(...row) > most) return null;
    beforeLast = last;
    last = row;
  }
  const slips = last[b.length] ?? Number.POSITIVE_INFINITY;
  return slips <= most ? slips : null;
}

/** One row of the optimal string alignment table. */
function nextRow(
  a: string,
  b: string,
  i: number,
  last: readonly number[],
  beforeLast: readonly number[],
): number[] {
  const row = [i];
  for (let j = 1; j <= b.length; j += 1) {
    const wrong = (last[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
    const least = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, wrong);
    const isSwapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
    row.push(isSwapped ? Math.min(least, (beforeLast[j - 2] ?? 0) + 1) : least);
  }
  return row;
}
