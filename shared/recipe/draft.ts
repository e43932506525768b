import { classify, type Kind, type Section } from "./classify.ts";
import { RECIPE_LIMITS, type ReadRemark, type RecipeProblem } from "./problems.ts";
import type { KeepingClause } from "./read-keeping.ts";
import { readKeeping } from "./read-keeping.ts";
import { type ReadYield, readYield } from "./read-yield.ts";
import type { SourceLine } from "./source-lines.ts";

export interface DraftLine {
  readonly line: number;
  readonly text: string;
  readonly swaps: string[];
}

export interface DraftPart {
  readonly line: number;
  readonly name: string;
  readonly optional: boolean;
  /** False for the part that a recipe without headings has. */
  readonly named: boolean;
  readonly lines: DraftLine[];
}

/** A recipe's text sorted into its places, line by line; looked up and checked as a whole afterwards. */
export interface Draft {
  section: Section;
  afterBlank: boolean;
  yields: ReadYield | null;
  readonly tags: string[];
  readonly parts: DraftPart[];
  readonly steps: { text: string; readonly line: number; readonly numbered: boolean }[];
  readonly keeping: {
    readonly line: number;
    readonly text: string;
    readonly part: DraftPart | null;
    readonly clause: KeepingClause;
  }[];
  readonly reheating: string[];
  readonly notes: string[];
  readonly problems: RecipeProblem[];
  readonly remarks: ReadRemark[];
}

export const FIRST_PART = "Base";

/** Sorts the lines after the title. */
export function sortLines(lines: readonly SourceLine[]): Draft {
  const draft: Draft = {
    section: "head",
    afterBlank: false,
    yields: null,
    tags: [],
    parts: [],
    steps: [],
    keeping: [],
    reheating: [],
    notes: [],
    problems: [],
    remarks: [],
  };
  for (const source of lines) {
    const kind = classify(source.text, draft.section);
    take(draft, kind, source);
    draft.afterBlank = kind.kind === "blank";
  }
  return draft;
}

function take(draft: Draft, kind: Kind, { line, text }: SourceLine): void {
  switch (kind.kind) {
    case "blank":
      break;
    case "section":
      draft.section = kind.section;
      break;
    case "yield":
      takeYield(draft, text, line);
      break;
    case "tags":
      takeTags(draft, kind.text, line);
      break;
    case "part":
      takePart(draft, kind.name, kind.optional, line);
      break;
    case "keeping":
      takeKeeping(draft, kind.clauses, { line, text });
      break;
    case "reheat":
      draft.reheating.push(kind.text);
      endSteps(draft);
      break;
    case "note":
      draft.notes.push(kind.text);
      endSteps(draft);
      break;
    case "ingredient":
      takeIngredient(draft, kind.text, line);
      break;
    case "swap":
      takeSwap(draft, kind.text, line);
      break;
    case "step":
      takeStep(draft, kind.text, kind.numbered, line);
      break;
    case "plain":
      takePlain(draft, kind.text, line);
      break;
  }
}

/** What stands below the first line about keeping, reheating or notes is no step any more. */
function endSteps(draft: Draft): void {
  if (draft.section === "steps") draft.section = "notes";
}

function takeYield(draft: Draft, text: string, line: number): void {
  const read = readYield(text, line);
  if (!read.ok) draft.problems.push(read.problem);
  else if (draft.yields !== null) draft.problems.push({ code: "yield given twice", line });
  else draft.yields = read.value;
}

function takeTags(draft: Draft, text: string, line: number): void {
  const tags = text.split(/[,;]/u).map((tag) => tag.trim().toLowerCase());
  draft.tags.push(...tags.filter((tag) => tag !== "" && !draft.tags.includes(tag)));
  if (draft.tags.length > RECIPE_LIMITS.tags) {
    draft.problems.push({ code: "too many tags", line, max: RECIPE_LIMITS.tags });
  }
}

function takePart(draft: Draft, name: string, optional: boolean, line: number): void {
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
  });
}

function takeIngredient(draft: Draft, text: string, line: number): void {
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
  };
  if (draft.parts.length === 0) draft.parts.push(open);
  open.lines.push({ line, text, swaps: [] });
}

function takeSwap(draft: Draft, text: string, line: number): void {
  const last = draft.parts.at(-1)?.lines.at(-1);
  if (last === undefined) draft.problems.push({ code: "swap without ingredient", line });
  else last.swaps.push(text);
}

function takeKeeping(
  draft: Draft,
  clauses: readonly KeepingClause[],
  { line, text }: SourceLine,
): void {
  // Directly below a named part's lines it speaks of that part; after a blank line, of the whole.
  const last = draft.parts.at(-1);
  const inPart = draft.section === "ingredients" && !draft.afterBlank && last?.named === true;
  for (const clause of clauses)
    draft.keeping.push({ line, text, part: inPart ? last : null, clause });
  endSteps(draft);
}

function takeStep(draft: Draft, text: string, numbered: boolean, line: number): void {
  if (text === "") return;
  draft.steps.push({ text, line, numbered });
  if (readKeeping(text)?.some((clause) => clause.keeping.fridgeDays !== null)) {
    draft.remarks.push({ code: "keeping inside a step", line });
  }
}

function takePlain(draft: Draft, text: string, line: number): void {
  if (draft.section === "steps") {
    takePlainStep(draft, text, line);
    return;
  }
  if (draft.section === "reheating") {
    draft.reheating.push(text);
    return;
  }
  if (draft.section === "ingredients") draft.remarks.push({ code: "taken as note", line, text });
  draft.notes.push(text);
}

/** Among numbered steps a plain line goes on with the step above it; after a gap it is a note. */
function takePlainStep(draft: Draft, text: string, line: number): void {
  const last = draft.steps.at(-1);
  if (last === undefined || !last.numbered) takeStep(draft, text, false, line);
  else if (draft.afterBlank) draft.notes.push(text);
  else last.text = `${last.text} ${text}`;
}
