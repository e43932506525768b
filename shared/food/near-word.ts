/** Longer words are never compared letter by letter. */
const MAX_LETTERS = 20;

/** How many slips a word of this length may hold: none in short words, where they make another word. */
export function slipsAllowed(word: string): number {
  if (word.length < 5 || word.length > MAX_LETTERS) return 0;
  return word.length < 8 ? 1 : 2;
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
  const at = (row: readonly number[], j: number): number => row[j] ?? Number.POSITIVE_INFINITY;
  const row = [i];
  for (let j = 1; j <= b.length; j += 1) {
    const wrong = at(last, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1);
    const swapped = a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
    const swap = swapped ? at(beforeLast, j - 2) + 1 : Number.POSITIVE_INFINITY;
    row.push(Math.min(at(last, j) + 1, at(row, j - 1) + 1, wrong, swap));
  }
  return row;
}
