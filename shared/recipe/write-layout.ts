import { classify, type Kind } from "./classify.ts";
import { RECIPE_LIMITS } from "./problems.ts";
import type { Section } from "./read-section.ts";
import { isYieldLine } from "./read-yield.ts";
import type { MakesMore } from "./types.ts";
import { stepLines } from "./write-steps.ts";

/** The pieces of a recipe's text, each as it is to be read again; `layOut` puts them in our form. */
export interface RecipePieces {
  readonly title: string;
  /** "Makes 6 portions"; null where nobody said. */
  readonly yieldLine: string | null;
  readonly tags: readonly string[];
  readonly parts: readonly PartPieces[];
  readonly steps: readonly string[];
  /** Statements about keeping, for the whole or naming a part. */
  readonly keeping: readonly string[];
  readonly reheating: readonly string[];
  readonly notes: readonly string[];
}

export interface PartPieces {
  readonly name: string;
  readonly optional: boolean;
  /** Where it makes more than is used. */
  readonly makes?: MakesMore | null | undefined;
  /** Each ingredient, and the swaps that stand on lines of their own below it. */
  readonly lines: readonly { readonly text: string; readonly swaps: readonly string[] }[];
  /** Statements about the keeping of this part. */
  readonly keeping: readonly string[];
}

/** The name of a part that needs no heading. */
const FIRST_PART = "Base";

/**
 * A recipe's text in our plain form. Of the ways to write a line the first that the reader takes for what
 * is meant is used ("For the Notes:" for a part of that name). Where blank lines and bullets would push the
 * text over the reader's limits, they are left out.
 */
export function layOut(pieces: RecipePieces): string {
  const airy = written(pieces, false);
  return isWithinLimits(airy) ? airy : written(pieces, true);
}

function isWithinLimits(text: string): boolean {
  const { chars, lines } = RECIPE_LIMITS;
  return text.length <= chars && text.split("\n").length <= lines;
}

function written(pieces: RecipePieces, isTight: boolean): string {
  const blocks: (readonly string[])[] = [
    [titleLine(pieces.title)],
    [...(pieces.yieldLine === null ? [] : [pieces.yieldLine]), ...tagLines(pieces.tags)],
    ["Ingredients"],
    ...pieces.parts.map((part, at) => partLines(part, at === 0 && needsNoHeading(pieces), isTight)),
    ...tail(pieces, isTight),
  ];
  const filled = blocks.filter((block) => block.length > 0).map((block) => block.join("\n"));
  return `${filled.join(isTight ? "\n" : "\n\n")}\n`;
}

function needsNoHeading({ parts }: RecipePieces): boolean {
  const [only, ...others] = parts;
  if (only === undefined || others.length > 0) return false;
  return only.name === FIRST_PART && !only.optional && !only.makes && only.keeping.length === 0;
}

/** What stands below the ingredients. */
function tail(pieces: RecipePieces, isTight: boolean): readonly (readonly string[])[] {
  const steps = pieces.steps.length === 0 ? [] : ["Steps", ...stepLines(pieces.steps, isTight)];
  const reheat = pieces.reheating.map(reheatLine);
  const notes = pieces.notes.map(noteLine);
  // Below the ingredients without a heading, a statement would be taken for that of the last part.
  const keepingHeading = pieces.steps.length === 0 && pieces.keeping.length > 0 ? ["Keeping"] : [];
  const labelled = [...reheat, ...notes].filter(({ isLabelled }) => isLabelled);
  const allLabelled = labelled.length === reheat.length + notes.length;
  const textOf = ({ text }: Labelled) => text;
  const rest = allLabelled
    ? [[...keepingHeading, ...pieces.keeping, ...reheat.map(textOf), ...notes.map(textOf)]]
    : [
        [...keepingHeading, ...pieces.keeping],
        reheat.length === 0 ? [] : ["Reheating", ...reheat.map(textOf)],
        notes.length === 0 ? [] : ["Notes", ...notes.map(textOf)],
      ];
  return [steps, ...rest];
}

function partLines(part: PartPieces, isBare: boolean, isTight: boolean): readonly string[] {
  return [
    ...(isBare ? [] : [partHeading(part.name, part.optional, part.makes)]),
    ...part.lines.flatMap(({ text, swaps }) => [
      ingredientLine(text, isTight),
      ...swaps.map((swap) => swapLine(swap, isTight)),
    ]),
    ...part.keeping,
  ];
}

/** "Sauce:", "Sauce (optional):", or another heading where that one would be read as something else. */
export function partHeading(
  name: string,
  optional: boolean,
  makes: MakesMore | null | undefined = null,
): string {
  const used = makes ? ` (makes ${makes.madeG} g, ${makes.usedG} g used)` : "";
  const mark = `${used}${optional ? " (optional)" : ""}`;
  const first = optional ? [`(optional) ${name}${used}:`] : [];
  return firstReadAs(
    [
      `${name}${mark}:`,
      `For the ${name}${mark}:`,
      ...first,
      `# ${name}${mark}`,
      `# For the ${name}${mark}`,
    ],
    "ingredients",
    (kind) => kind.kind === "part" && kind.name === name && kind.optional === optional,
  );
}

function titleLine(title: string): string {
  const isElse = /^(?:#|title ?:|[-*•] )/iu.test(title) || isYieldLine(title);
  return isElse ? `Title: ${title}` : title;
}

/** As many lines as it takes. */
function tagLines(tags: readonly string[]): readonly string[] {
  const lines: string[] = [];
  for (const tag of tags) {
    const last = lines.at(-1);
    const joined = `${last}, ${tag}`;
    if (last !== undefined && joined.length <= RECIPE_LIMITS.lineChars) {
      lines[lines.length - 1] = joined;
    } else lines.push(firstThatFits([`Tags: ${tag}`, `Tags:${tag}`]));
  }
  return lines;
}

function ingredientLine(text: string, isTight: boolean): string {
  const forms = [`- ${text}`, `-${text}`, text];
  return firstReadAs(
    isTight ? forms.reverse() : forms,
    "ingredients",
    (kind) => kind.kind === "ingredient" && kind.text === text,
  );
}

function swapLine(text: string, isTight: boolean): string {
  const forms = isTight ? [text, `-${text}`, `- ${text}`] : [`  ${text}`, `- ${text}`, text];
  return firstReadAs(forms, "ingredients", (kind) => kind.kind === "swap" && kind.text === text);
}

interface Labelled {
  readonly text: string;
  /** Whether it says what it is, wherever it stands. */
  readonly isLabelled: boolean;
}

function reheatLine(text: string): Labelled {
  const labels = [`Reheat: ${text}`, `Reheat:${text}`];
  const line = firstReadAs(
    [...labels, text, `- ${text}`],
    "reheating",
    (kind) => (kind.kind === "reheat" || kind.kind === "plain") && kind.text === text,
  );
  return { text: line, isLabelled: labels.includes(line) };
}

function noteLine(text: string): Labelled {
  const labels = [`Note: ${text}`, `Tip:${text}`];
  const line = firstReadAs(
    [...labels, text, `- ${text}`],
    "notes",
    (kind) => (kind.kind === "note" || kind.kind === "plain") && kind.text === text,
  );
  return { text: line, isLabelled: labels.includes(line) };
}

/** The first form that fits a line and is read as meant; when none is, the first. */
function firstReadAs(
  forms: readonly string[],
  section: Section,
  isMeant: (kind: Kind) => boolean,
): string {
  const fitting = forms.filter((form) => form.trim().length <= RECIPE_LIMITS.lineChars);
  return fitting.find((form) => isMeant(classify(form.trim(), section))) ?? forms[0] ?? "";
}

function firstThatFits(forms: readonly string[]): string {
  return forms.find((form) => form.length <= RECIPE_LIMITS.lineChars) ?? forms[0] ?? "";
}
