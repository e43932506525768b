import { matchLines, pairParts } from "./match-lines.ts";
import type {
  Component,
  Line,
  LineChoice,
  MakesMore,
  Recipe,
  StatedKeeping,
  Step,
} from "./types.ts";

/** What of a line is another. */
export type LineAspect =
  /** What it is called. */
  | "name"
  | "amount"
  /** Its grams, although the amount is the same. */
  | "weight"
  /** The entry of the food table, although the name is the same. */
  | "food"
  | "preparation"
  | "optional"
  | "swaps"
  /** The part in which it stands. */
  | "part"
  | "wording";

/** A line and the name of its part. */
export interface PlacedLine {
  readonly line: Line;
  readonly part: string;
}

/** One thing in which a recipe differs from another; wording in `commands/recipe`. */
export type RecipeChange =
  | { readonly code: "title"; readonly before: string; readonly after: string }
  | { readonly code: "portions"; readonly before: Makes; readonly after: Makes }
  /** The stated cooked weight, grams. */
  | {
      readonly code: "cooked weight";
      readonly before: number | null;
      readonly after: number | null;
    }
  | { readonly code: "part new" | "part gone"; readonly name: string; readonly optional: boolean }
  | { readonly code: "part renamed"; readonly before: string; readonly after: string }
  | { readonly code: "part optional"; readonly name: string; readonly optional: boolean }
  /** What a part makes beyond what is used; null where all of it is. */
  | {
      readonly code: "part makes";
      readonly name: string;
      readonly before: MakesMore | null;
      readonly after: MakesMore | null;
    }
  | {
      readonly code: "line changed";
      readonly before: PlacedLine;
      readonly after: PlacedLine;
      /** At least one. */
      readonly aspects: readonly LineAspect[];
    }
  | { readonly code: "line new" | "line gone"; readonly at: PlacedLine }
  /** `part` is null for the whole. */
  | {
      readonly code: "keeping";
      readonly part: string | null;
      readonly before: StatedKeeping;
      readonly after: StatedKeeping;
    }
  /** Steps count from 1. */
  | { readonly code: "step"; readonly number: number; readonly before: Step; readonly after: Step }
  /** From step `from` on, so many steps stand where there were so many before. */
  | {
      readonly code: "steps";
      readonly from: number;
      readonly before: number;
      readonly after: number;
    }
  | { readonly code: "reheating" | "notes" | "wording" }
  | { readonly code: "tags"; readonly added: readonly string[]; readonly gone: readonly string[] };

interface Makes {
  readonly portions: number;
  readonly word: string;
}

/**
 * In what two revisions of a recipe differ, in the order in which a cook meets it; empty when and only
 * when they say the same. A line is known again by its name, else by its food within its part.
 */
export function whatChanged(before: Recipe, after: Recipe): readonly RecipeChange[] {
  const found = [
    ...headChanges(before, after),
    ...partChanges(before.components, after.components),
    ...keepingChange(null, before.keeping, after.keeping),
    ...stepChanges(before.steps, after.steps),
    ...tailChanges(before, after),
  ];
  // The order of lines, say: nothing that differs may pass as the same.
  if (found.length === 0 && !isSame(withoutKeys(before), withoutKeys(after))) {
    return [{ code: "wording" }];
  }
  return found;
}

function headChanges(before: Recipe, after: Recipe): readonly RecipeChange[] {
  const found: RecipeChange[] = [];
  if (before.title !== after.title) {
    found.push({ code: "title", before: before.title, after: after.title });
  }
  const [had, has] = [makesOf(before), makesOf(after)];
  if (!isSame(had, has)) found.push({ code: "portions", before: had, after: has });
  if (before.yieldG !== after.yieldG) {
    found.push({ code: "cooked weight", before: before.yieldG, after: after.yieldG });
  }
  return found;
}

function makesOf({ portions, portionWord }: Recipe): Makes {
  return { portions, word: portionWord };
}

function partChanges(
  before: readonly Component[],
  after: readonly Component[],
): readonly RecipeChange[] {
  const parts = pairParts(before, after);
  const lines = matchLines({ before, after }, parts);
  return [
    ...parts.flatMap((pair) => partChange(pair.before, pair.after)),
    ...lines.flatMap(({ before: had, after: has }) => lineChange(had, has)),
    ...parts.flatMap(({ before: had, after: has }) =>
      had === null || has === null ? [] : keepingChange(has.name, had.keeping, has.keeping),
    ),
  ];
}

function partChange(before: Component | null, after: Component | null): readonly RecipeChange[] {
  if (before === null || after === null) {
    const one = before ?? after;
    if (one === null) return [];
    const code = before === null ? "part new" : "part gone";
    return [{ code, name: one.name, optional: one.optional }];
  }
  const found: RecipeChange[] = [];
  if (before.name !== after.name) {
    found.push({ code: "part renamed", before: before.name, after: after.name });
  }
  if (before.optional !== after.optional) {
    found.push({ code: "part optional", name: after.name, optional: after.optional });
  }
  const [had, has] = [before.makes ?? null, after.makes ?? null];
  if (!isSame(had, has)) {
    found.push({ code: "part makes", name: after.name, before: had, after: has });
  }
  return found;
}

function lineChange(before: MatchedLine, after: MatchedLine): readonly RecipeChange[] {
  if (before === null) return after === null ? [] : [{ code: "line new", at: placed(after) }];
  if (after === null) return [{ code: "line gone", at: placed(before) }];
  const aspects = [
    ...aspectsOf(before.line, after.line),
    ...(before.pair === after.pair ? [] : (["part"] as const)),
  ];
  if (aspects.length === 0) return [];
  return [{ code: "line changed", before: placed(before), after: placed(after), aspects }];
}

type MatchedLine = (PlacedLine & { readonly pair: number }) | null;

function placed({ line, part }: PlacedLine): PlacedLine {
  return { line, part };
}

function aspectsOf(before: Line, after: Line): readonly LineAspect[] {
  const [had, has] = [before.main, after.main];
  const found: LineAspect[] = [];
  if (had.foodText !== has.foodText) found.push("name");
  if (!isSame(had.amount, has.amount)) found.push("amount");
  else if (!isSame(countedOf(had), countedOf(has))) found.push("weight");
  if (had.foodId !== has.foodId && had.foodText === has.foodText) found.push("food");
  if (had.preparation !== has.preparation) found.push("preparation");
  if (before.optional !== after.optional) found.push("optional");
  if (!isSame(before.swaps, after.swaps)) found.push("swaps");
  if (found.length === 0 && !isSame({ ...before, key: "" }, { ...after, key: "" })) {
    found.push("wording");
  }
  return found;
}

/** What of a line goes into the figures. */
function countedOf({ grams, uptake, tableGPerG }: LineChoice) {
  return { grams, uptake, tableGPerG };
}

function keepingChange(
  part: string | null,
  before: StatedKeeping,
  after: StatedKeeping,
): readonly RecipeChange[] {
  return isSame(before, after) ? [] : [{ code: "keeping", part, before, after }];
}

/** What both have at the start and at the end stands; in between steps are paired, or told as a run. */
function stepChanges(before: readonly Step[], after: readonly Step[]): readonly RecipeChange[] {
  const shorter = Math.min(before.length, after.length);
  let head = 0;
  while (head < shorter && isSame(before[head], after[head])) head += 1;
  let tail = 0;
  while (tail < shorter - head && isSame(before.at(-1 - tail), after.at(-1 - tail))) tail += 1;
  const had = before.slice(head, before.length - tail);
  const has = after.slice(head, after.length - tail);
  if (had.length !== has.length) {
    return [{ code: "steps", from: head + 1, before: had.length, after: has.length }];
  }
  return had.flatMap((step, index): readonly RecipeChange[] => {
    const now = has[index];
    if (now === undefined || isSame(step, now)) return [];
    return [{ code: "step", number: head + index + 1, before: step, after: now }];
  });
}

function tailChanges(before: Recipe, after: Recipe): readonly RecipeChange[] {
  const found: RecipeChange[] = [];
  if (!isSame(before.reheating, after.reheating)) found.push({ code: "reheating" });
  if (!isSame(before.notes, after.notes)) found.push({ code: "notes" });
  const added = after.tags.filter((tag) => !before.tags.includes(tag));
  const gone = before.tags.filter((tag) => !after.tags.includes(tag));
  if (added.length + gone.length > 0) found.push({ code: "tags", added, gone });
  return found;
}

/** Keys count lines, so they differ where nothing else does. */
function withoutKeys(recipe: Recipe): Recipe {
  const components = recipe.components.map((part) => ({
    ...part,
    makes: part.makes ?? null,
    lines: part.lines.map((line) => ({ ...line, key: "" })),
  }));
  return { ...recipe, components };
}

/** Plain values: what they hold, whatever the order of their keys (a stored one comes back in another). */
function isSame(a: unknown, b: unknown): boolean {
  return a === b || JSON.stringify(a, inOrder) === JSON.stringify(b, inOrder);
}

function inOrder(_key: string, value: unknown): unknown {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
}
