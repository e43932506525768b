import { classify, type Kind } from "./classify.ts";
import { takeIngredient, takeMakes, takePart, takeSwap } from "./draft-parts.ts";
import { flushAbove, isFirstStep, takePlainStep, takeStep } from "./draft-steps.ts";
import { hasMethodHeading, nextLines } from "./look-ahead.ts";
import { RECIPE_LIMITS, type ReadRemark, type RecipeProblem } from "./problems.ts";
import type { Around } from "./read-heading.ts";
import type { KeepingClause } from "./read-keeping.ts";
import type { ReadMakes } from "./read-makes.ts";
import type { Section } from "./read-section.ts";
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
  /** What the text says of a part that makes more than is used. */
  makes: ReadMakes | null;
}

/** A recipe's text sorted into its places, line by line; looked up and checked as a whole afterwards. */
export interface Draft {
  section: Section;
  afterBlank: boolean;
  /** Whether a heading of the steps is to come or was met: without one, sentences below the list are steps. */
  readonly hasMethod: boolean;
  /** What stands above the next step: "For the sauce:", and whether it is numbered ("Step 1"). */
  aboveStep: { readonly text: string; readonly line: number; readonly numbered: boolean } | null;
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

/** Sorts the lines after the title. */
export function sortLines(lines: readonly SourceLine[]): Draft {
  const draft: Draft = {
    section: "head",
    afterBlank: false,
    hasMethod: hasMethodHeading(lines),
    aboveStep: null,
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
  const next = nextLines(lines);
  for (const [at, source] of lines.entries()) {
    const around: Around = {
      afterBlank: draft.afterBlank,
      next: next[at] ?? null,
      isNextBelow: (lines[at + 1]?.text ?? "") !== "",
    };
    const kind = classify(source.text, draft.section, around);
    take(draft, kind, source);
    draft.afterBlank = kind.kind === "blank";
  }
  flushAbove(draft);
  return draft;
}

function take(draft: Draft, kind: Kind, { line, text }: SourceLine): void {
  switch (kind.kind) {
    case "blank":
      break;
    case "section":
      flushAbove(draft);
      draft.section = kind.section;
      if (kind.yields !== null) takeYield(draft, kind.yields, line);
      break;
    case "yield":
      takeYield(draft, text, line);
      break;
    case "tags":
      takeTags(draft, kind.text, line);
      break;
    case "part":
      takePart(draft, kind, line);
      break;
    case "makes":
      if (!takeMakes(draft, kind.makes)) takePlain(draft, text, line);
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
    case "step heading":
      flushAbove(draft);
      draft.aboveStep = { text: kind.text, line, numbered: false };
      break;
    case "plain":
      takePlain(draft, kind.text, line);
      break;
    case "paragraph":
      for (const piece of kind.pieces) take(draft, pieceOf(piece, draft), { line, text: piece });
      break;
  }
}

/** A piece of a paragraph is about keeping, or goes where the section has it. */
function pieceOf(text: string, draft: Draft): Kind {
  const kind = classify(text, draft.section);
  const isOwn =
    kind.kind === "keeping" ||
    kind.kind === "reheat" ||
    (kind.kind === "yield" && draft.section === "head");
  return isOwn ? kind : { kind: "plain", text };
}

/** What stands below the first line about keeping, reheating or notes is no step any more. */
function endSteps(draft: Draft): void {
  if (draft.section === "steps") draft.section = "notes";
}

function takeYield(draft: Draft, text: string, line: number): void {
  const read = readYield(text, line);
  const isBelow = draft.section !== "head" && draft.section !== "ingredients";
  // "Makes 12 balls, so roll them small" below the list is about a step.
  if (isBelow && (!read.ok || draft.yields !== null)) takePlain(draft, text, line);
  else if (!read.ok) draft.problems.push(read.problem);
  else if (draft.yields !== null) draft.problems.push({ code: "yield given twice", line });
  else {
    const { to, ...yields } = read.value;
    draft.yields = yields;
    if (to !== null)
      draft.remarks.push({ code: "yield is a range", line, from: yields.portions, to });
  }
}

function takeTags(draft: Draft, text: string, line: number): void {
  const tags = text.split(/[,;]/u).map((tag) => tag.trim().toLowerCase());
  draft.tags.push(...tags.filter((tag) => tag !== "" && !draft.tags.includes(tag)));
  if (draft.tags.length > RECIPE_LIMITS.tags) {
    draft.problems.push({ code: "too many tags", line, max: RECIPE_LIMITS.tags });
  }
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

function takePlain(draft: Draft, text: string, line: number): void {
  if (draft.section === "steps") {
    takePlainStep(draft, text, line);
    return;
  }
  if (draft.section === "reheating") {
    draft.reheating.push(text);
    return;
  }
  if (isFirstStep(draft, text)) {
    draft.section = "steps";
    takePlainStep(draft, text, line);
    return;
  }
  if (draft.section === "ingredients") draft.remarks.push({ code: "taken as note", line, text });
  draft.notes.push(text);
}
