import { bareYield, isYieldLine } from "./read-yield.ts";

/** Where in the text we are; it decides what a line without a mark is. */
export type Section = "head" | "ingredients" | "steps" | "reheating" | "notes";

/** A heading of a section, and what it says of the yield: "Ingredients (serves 4)". */
export interface SectionHeading {
  readonly section: Section;
  readonly yields: string | null;
}

const SECTION_WORDS: readonly (readonly [pattern: RegExp, section: Section])[] = [
  [/^(?:the )?ingredients?(?: list)?$|^(?:what )?you(?:['’]?ll| will)? need$/iu, "ingredients"],
  [
    /^(?:the )?(?:steps?|methods?|directions?|instructions?|procedure)$|^(?:what to do|how to (?:cook|make)(?: it)?|cooking(?: instructions)?|to (?:cook|make)(?: it)?)$/iu,
    "steps",
  ],
  [/^(?:(?:to |how to )?reheat|reheating(?: instructions)?)$/iu, "reheating"],
  [
    /^(?:(?:coach['’]?s? |recipe |cook['’]?s? |storage )?notes?|notes (?:and|&) tips|tips?(?: (?:and|&) notes)?|keeping|storage|storing|to store|make ahead|freezing|storage (?:and|&) reheating)$/iu,
    "notes",
  ],
];
/** "Ingredients (serves 4)", "Ingredients – makes 5 wraps", "Ingredients for 4 people". */
const WITH_YIELD =
  /^(.{3,40}?)(?: ?\(| [–—-] |, ?| (?=(?:for|serves|makes) ))((?:for )?[^()]{2,60})\)?$/iu;

/** The section that a line heads; null when it heads none. */
export function sectionHeading(heading: string): SectionHeading | null {
  const plain = sectionNamed(heading);
  if (plain !== null) return { section: plain, yields: null };
  const match = WITH_YIELD.exec(heading);
  const yields = match?.[2] ?? "";
  if (sectionNamed(match?.[1] ?? "") !== "ingredients") return null;
  return isYieldLine(yields) || bareYield(yields) ? { section: "ingredients", yields } : null;
}

function sectionNamed(words: string): Section | null {
  return SECTION_WORDS.find(([pattern]) => pattern.test(words))?.[1] ?? null;
}
