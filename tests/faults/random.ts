/** Chance that comes out the same each time it is seeded with the same words. */
export interface Dice {
  /** From 0 up to, not including, 1. */
  next(): number;
  /** A whole number from `from` to `to`, both included. */
  int(from: number, to: number): number;
  chance(of: number): boolean;
  pick<const T>(list: readonly [T, ...T[]]): T;
}

/** FNV-1a over the words, 32 bits. */
function hash(words: readonly (string | number)[]): number {
  let state = 0x811c9dc5;
  for (const sign of words.join("\u0000")) {
    state = Math.imul(state ^ (sign.codePointAt(0) ?? 0), 0x01000193);
  }
  return state >>> 0;
}

export function dice(...words: readonly (string | number)[]): Dice {
  let state = hash(words);
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const int = (from: number, to: number): number => from + Math.floor(next() * (to - from + 1));
  return {
    next,
    int,
    chance: (of) => next() < of,
    pick: (list) => list[int(0, list.length - 1)] ?? list[0],
  };
}
