import type { Draft } from "./draft.ts";
import { flushAbove } from "./draft-steps.ts";
import { RECIPE_LIMITS } from "./problems.ts";
import type { PartHeading } from "./read-heading.ts";
import type { ReadMakes } from "./read-makes.ts";
import { splitFoods } from "./split-foods.ts";

/** The name of the part that a recipe without headings has. */
const FIRST_PART = "Base";

export function takePart(draft: Draft, { name, optional, makes }: PartHeading, line: number): void {
  flushAbove(draft);
  draft.section = "ingredients";
  if (name.length > RECIPE_LIMITS.nameChars) {
    draft.problems.push({ code: "part name too long", line, max: RECIPE_LIMITS.nameChars });
  }
  draft.parts.push({
    line,
    name: name === "" ? FIRST_PART : name,
    optional,
    named: true,
    lines: [],
    makes,
  });
}

/** False where no named part is open that it could speak of. */
export function takeMakes(draft: Draft, makes: ReadMakes): boolean {
  const last = draft.parts.at(-1);
  if (last?.named !== true) return false;
  last.makes = makes;
  return true;
}

export function takeIngredient(draft: Draft, text: string, line: number): void {
  draft.section = "ingredients";
  if (text === "") {
    draft.problems.push({ code: "ingredient empty", line });
    return;
  }
  const open = draft.parts.at(-1) ?? {
    line,
    name: FIRST_PART,
    optional: false,
    named: false,
    lines: [],
    makes: null,
  };
  if (draft.parts.length === 0) draft.parts.push(open);
  for (const one of splitFoods(text)) open.lines.push({ line, text: one, swaps: [] });
}

export function takeSwap(draft: Draft, text: string, line: number): void {
  const last = draft.parts.at(-1)?.lines.at(-1);
  if (last === undefined) draft.problems.push({ code: "swap without ingredient", line });
  else last.swaps.push(text);
}
