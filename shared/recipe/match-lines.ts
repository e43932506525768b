import { fold } from "../words/fold.ts";
import type { Component, Line } from "./types.ts";

/** A part of one revision and the same part of another; null where only one of them has it. */
export interface PartPair {
  readonly before: Component | null;
  readonly after: Component | null;
}

/**
 * The parts of two revisions, each with its like: by name, and what is left over in order where it is
 * equally many (a part that was renamed). In the order of the later revision, gone ones last.
 */
export function pairParts(
  before: readonly Component[],
  after: readonly Component[],
): readonly PartPair[] {
  const named = paired(before, after, ({ name }) => fold(name));
  const left = {
    before: before.filter((part) => !named.some((pair) => pair.before === part)),
    after: after.filter((part) => !named.some((pair) => pair.after === part)),
  };
  const renamed = left.before.length === left.after.length;
  const beforeOf = (part: Component): Component | null =>
    named.find((pair) => pair.after === part)?.before ??
    (renamed ? left.before[left.after.indexOf(part)] : undefined) ??
    null;
  return [
    ...after.map((part) => ({ before: beforeOf(part), after: part })),
    ...(renamed ? [] : left.before.map((part) => ({ before: part, after: null }))),
  ];
}

/** A line, the name of its part and which pair of parts that is. */
interface LineIn {
  readonly line: Line;
  readonly part: string;
  readonly pair: number;
}

export interface LinePair {
  readonly before: LineIn | null;
  readonly after: LineIn | null;
}

/**
 * The lines of two revisions, each with its like: the same text in the same part first, then the same
 * name there, then the same name anywhere, then the same food of the table in the same part. The same
 * both ways round. In the order of the later revision, gone ones last.
 */
export function matchLines(
  recipes: { readonly before: readonly Component[]; readonly after: readonly Component[] },
  parts: readonly PartPair[],
): readonly LinePair[] {
  // Each in its own order, or the pairs would hang on which of the two came first.
  const before = linesIn(recipes.before, (part) => parts.findIndex((one) => one.before === part));
  const after = linesIn(recipes.after, (part) => parts.findIndex((one) => one.after === part));
  const likes: readonly ((at: LineIn) => string | null)[] = [
    ({ line, pair }) => `${pair} ${line.text}`,
    ({ line, pair }) => `${pair} ${fold(line.main.foodText)}`,
    ({ line }) => fold(line.main.foodText),
    ({ line, pair }) => (line.main.foodId === null ? null : `${pair} ${line.main.foodId}`),
  ];
  const found = new Map<LineIn, LineIn>();
  for (const like of likes) {
    const had = new Set(found.values());
    const open = paired(
      before.filter((at) => !had.has(at)),
      after.filter((at) => !found.has(at)),
      like,
    );
    for (const pair of open) found.set(pair.after, pair.before);
  }
  const matched = new Set(found.values());
  return [
    ...after.map((at) => ({ before: found.get(at) ?? null, after: at })),
    ...before.filter((at) => !matched.has(at)).map((at) => ({ before: at, after: null })),
  ];
}

function linesIn(
  components: readonly Component[],
  pairOf: (part: Component) => number,
): readonly LineIn[] {
  return components.flatMap((part) => {
    const pair = pairOf(part);
    return part.lines.map((line) => ({ line, part: part.name, pair }));
  });
}

/** The first of a key with the first of that key, the second with the second. */
function paired<T>(
  before: readonly T[],
  after: readonly T[],
  keyOf: (one: T) => string | null,
): readonly { readonly before: T; readonly after: T }[] {
  const waiting = new Map<string, T[]>();
  for (const one of before) {
    const key = keyOf(one);
    if (key !== null) waiting.set(key, [...(waiting.get(key) ?? []), one]);
  }
  return after.flatMap((one) => {
    const key = keyOf(one);
    const first = key === null ? undefined : waiting.get(key)?.shift();
    return first === undefined ? [] : [{ before: first, after: one }];
  });
}
