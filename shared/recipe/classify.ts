import { hasAmount, isAboutRecipe, looksLikeProse } from "./line-looks.ts";
import {
  type Around,
  isInCapitals,
  looseHeading,
  markedHeading,
  type PartHeading,
  partHeading,
  withoutBold,
} from "./read-heading.ts";
import { isSwapLine, saysToTaste } from "./read-ingredient.ts";
import { type KeepingClause, readKeeping } from "./read-keeping.ts";
import { makesLine, type ReadMakes } from "./read-makes.ts";
import { type Section, sectionHeading } from "./read-section.ts";
import { bareYield, isYieldLine } from "./read-yield.ts";

/** What a line of a recipe's text is. */
export type Kind =
  | { readonly kind: "blank" }
  /** A heading of a section, and what it says of the yield: "Ingredients (serves 4)". */
  | { readonly kind: "section"; readonly section: Section; readonly yields: string | null }
  | { readonly kind: "yield"; readonly text: string }
  | { readonly kind: "tags"; readonly text: string }
  | ({ readonly kind: "part" } & PartHeading)
  /** "This makes more than you need: use half", below the heading of a part. */
  | { readonly kind: "makes"; readonly makes: ReadMakes }
  | { readonly kind: "keeping"; readonly clauses: readonly KeepingClause[] }
  | { readonly kind: "reheat"; readonly text: string }
  | { readonly kind: "note"; readonly text: string }
  | { readonly kind: "ingredient"; readonly text: string }
  | { readonly kind: "swap"; readonly text: string }
  | { readonly kind: "step"; readonly text: string; readonly numbered: boolean }
  /** "For the sauce:" between steps: what the next step is about. */
  | { readonly kind: "step heading"; readonly text: string }
  | { readonly kind: "plain"; readonly text: string }
  /** A paragraph of which some sentences say how long it keeps; each piece is read as a line. */
  | { readonly kind: "paragraph"; readonly pieces: readonly string[] };

const BULLET =
  /^(?:(?:[-*•‣·–—◦○●▪■□☐☑✓✔►▸»]|\+|\[[ xX]?\])(?: |(?=[\p{L}\d½¼¾⅓⅔]))|(?:\p{Extended_Pictographic}\uFE0F?)+ ?(?=[\p{L}½¼¾⅓⅔]|\d))/u;
const NUMBERED = /^(?:step )?(\d{1,2})(?:[.):](?: |$)| [-–—] (?=\p{Lu}))|^step \d{1,2}$/iu;
const REHEAT = /^(?:reheat|reheating|to reheat)(?: ?: | ?:(?=\S)|, )|^to reheat (?=\S)/iu;
/** A paragraph of its own about reheating: "Reheat from frozen in the microwave". */
const REHEAT_PROSE =
  /^reheat\b.{0,200}\b(?:microwave|from (?:frozen|chilled|the fridge)|portions?|piping hot|throughout)\b/iu;
const NOTE = /^(?:notes?|(?:top |coach['’]?s )?tips?|n\.?b\.?) ?: ?/iu;
const TAGS = /^tags? ?: ?/iu;

/**
 * Tells what a line is, from its own marks first, then from the section it stands in; `around` decides
 * where the line alone leaves it open, and without it a line that may be a heading is one.
 */
export function classify(said: string, section: Section, around: Around | null = null): Kind {
  const strip = section === "head" ? stripWithYield(said) : null;
  if (strip !== null) return { kind: "paragraph", pieces: strip };
  const kind = kindOf(said, section, around);
  const pieces = kind.kind === "plain" ? keepingApart(kind.text) : [];
  return pieces.length > 1 ? { kind: "paragraph", pieces } : kind;
}

/** "Serves 4 | Prep 10 min | Cook 20 min": pieces of which one is the yield; null for any other line. */
function stripWithYield(said: string): readonly string[] | null {
  const pieces = said.split(/ ?[|·•] /u).map((piece) => piece.trim());
  if (pieces.length < 2 || pieces.includes("")) return null;
  return pieces.some((piece) => isYieldLine(piece) || bareYield(piece)) ? pieces : null;
}

/** The sentences about keeping, each alone, and what stands between them. */
function keepingApart(text: string): readonly string[] {
  const pieces: string[] = [];
  let isOpen = false;
  for (const sentence of text.split(/(?<=[.!?]) (?=\p{Lu})/u)) {
    const isKeeping = readKeeping(sentence) !== null;
    if (isOpen && !isKeeping) pieces[pieces.length - 1] = `${pieces.at(-1)} ${sentence}`;
    else pieces.push(sentence);
    isOpen = !isKeeping;
  }
  return pieces;
}

function kindOf(said: string, section: Section, around: Around | null): Kind {
  if (said === "") return { kind: "blank" };
  const text = markedHeading(said) === null ? withoutBold(said) : said;
  const isBulleted = BULLET.test(text);
  const bare = text.replace(BULLET, "").trim();
  const isList = section === "head" || section === "ingredients";
  const marked = isBulleted && isList ? null : labelled(bare, section);
  if (marked !== null) return marked;
  if (isList) return listKind(text, bare, section, around);
  const isStep = section === "steps" || (section === "notes" && NUMBERED.test(bare));
  return isStep
    ? stepKind(bare, isBulleted && section === "steps", around)
    : { kind: "plain", text: bare };
}

function listKind(text: string, bare: string, section: Section, around: Around | null): Kind {
  if (isSwapLine(bare)) return { kind: "swap", text: bare };
  return BULLET.test(text)
    ? { kind: "ingredient", text: bare }
    : ingredientKind(text, section, around);
}

/** Lines that say what they are, wherever they stand. */
function labelled(text: string, section: Section): Kind | null {
  const heading = sectionHeading((markedHeading(text) ?? text).replace(/ ?:$/u, ""));
  if (heading !== null) return { kind: "section", ...heading };
  if (TAGS.test(text)) return { kind: "tags", text: text.replace(TAGS, "") };
  const about = aboutYield(text, section);
  if (about !== null) return about;
  if (REHEAT.test(text) || REHEAT_PROSE.test(text)) {
    return { kind: "reheat", text: capital(text.replace(REHEAT, "")) };
  }
  if (NOTE.test(text)) return { kind: "note", text: capital(text.replace(NOTE, "")) };
  const clauses = NUMBERED.test(text) ? null : readKeeping(text);
  return clauses === null ? null : { kind: "keeping", clauses };
}

function aboutYield(text: string, section: Section): Kind | null {
  const makes = section === "ingredients" ? makesLine(text) : null;
  if (makes !== null) return { kind: "makes", makes };
  const isYield = isYieldLine(text) || (section === "head" && bareYield(text));
  return isYield ? { kind: "yield", text } : null;
}

function ingredientKind(text: string, section: Section, around: Around | null): Kind {
  const heading = headingIn(text, around);
  if (heading !== null) return { kind: "part", ...heading };
  // A lone mark is an ingredient that was not written out, or a rule between blocks.
  if (/^[-*•]$/u.test(text)) return { kind: "ingredient", text: "" };
  if (/^[-–—*_=]{3,}$/u.test(text)) return { kind: "blank" };
  const step = section === "ingredients" ? NUMBERED.exec(text) : null;
  const bare = step === null ? text : text.slice(step[0].length);
  if (step !== null && (looksLikeProse(bare) || !hasAmount(bare))) {
    return stepKind(text, false, around);
  }
  return isIngredient(bare, section)
    ? { kind: "ingredient", text: bare }
    : { kind: "plain", text: bare };
}

function headingIn(text: string, around: Around | null): PartHeading | null {
  // Where all is in capitals, or nothing follows, they mark no heading.
  const isLoud = around !== null && (around.next ?? "") === (around.next ?? "").toUpperCase();
  if (isLoud && isInCapitals(text)) return null;
  return partHeading(text) ?? (around === null ? null : looseHeading(text, around));
}

function isIngredient(text: string, section: Section): boolean {
  const isAmount = hasAmount(text);
  if (!/\p{L}/u.test(text)) return isAmount && section === "ingredients";
  if (isAboutRecipe(text)) return false;
  const isProse = looksLikeProse(text);
  if (section === "head") return isAmount && !isProse && !/^\d+ ingredients?\b/iu.test(text);
  return isAmount || saysToTaste(text) ? !isProse || text.length < 80 : !isProse;
}

function stepKind(bare: string, isBulleted: boolean, around: Around | null): Kind {
  const numbered = NUMBERED.exec(bare);
  if (numbered !== null)
    return { kind: "step", text: bare.slice(numbered[0].length).trim(), numbered: true };
  if (isBulleted) return { kind: "step", text: bare, numbered: true };
  const heading = bare.length > 80 ? null : partHeading(bare);
  if (heading === null) return { kind: "plain", text: bare };
  // A heading above a list of amounts begins a part that is made apart.
  const below = (around?.next ?? "").replace(BULLET, "");
  const isList = hasAmount(below) && !NUMBERED.test(below) && !looksLikeProse(below);
  return isList ? { kind: "part", ...heading } : { kind: "step heading", text: bare };
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
