import { type ReadMakes, withoutMakes } from "./read-makes.ts";

/** A heading of a part of a recipe: "Sauce:", "For the sauce", "SAUCE", "## Sauce", "**Sauce** (optional)". */
export interface PartHeading {
  readonly name: string;
  readonly optional: boolean;
  /** What it says of a part that makes more than is used; null where it says nothing of the kind. */
  readonly makes: ReadMakes | null;
}

/** What stands around a line, where that is known. */
export interface Around {
  /** The line above is blank. */
  readonly afterBlank: boolean;
  /** The next line that is not blank; null at the end. */
  readonly next: string | null;
  /** Whether that line is directly below. */
  readonly isNextBelow: boolean;
}

const HASHES = /^#{1,6} ?(?=\S)/u;
const BOLD = /^(\*\*|__)(?=\S)(.{1,200}?)\1( ?:)?( ?\(optional\))?$/iu;
const ENDS_IN_COLON = /^(.{1,200}?) ?:(?: ?\(optional\))?$/iu;
const FOR_THE =
  /^(?:for|to make) (?:the|a|an|your) [\p{L} '’&-]{2,50}(?: ?\(optional\))?$|^(?:to (?:serve|finish|garnish|assemble|top)|for (?:serving|garnish|topping|assembly)|optional(?: (?:extras|toppings?|sides?))?)$/iu;

/** The text of a line that is marked as a heading by hashes or as bold; null for any other. */
export function markedHeading(text: string): string | null {
  if (HASHES.test(text)) return withoutBold(text.replace(HASHES, ""));
  const bold = BOLD.exec(text);
  return bold === null ? null : `${bold[2]}${bold[3] ?? ""}${bold[4] ?? ""}`.trim();
}

/** A line without the stars and underscores that make some of it bold. */
export function withoutBold(text: string): string {
  return text.replace(/(\*\*|__)(?=\S)(.{1,300}?)(?<=\S)\1/gu, "$2");
}

/** The heading of a part that a line is by its own form; null for any other line. */
export function partHeading(text: string): PartHeading | null {
  const marked = markedHeading(text);
  if (marked !== null) return named(marked);
  // No ingredient says what it makes.
  if (withoutMakes(text).makes !== null) return named(text);
  return ENDS_IN_COLON.test(text) || FOR_THE.test(text) || isInCapitals(text) ? named(text) : null;
}

/** The heading that a line is only by where it stands: "Sauce" above a list, below a blank line. */
export function looseHeading(text: string, around: Around): PartHeading | null {
  if (!around.afterBlank || !around.isNextBelow || around.next === null) return null;
  return PART_WORD.test(text) && !SOLD.test(text) ? named(text) : null;
}

/** Whether a line is all in capitals and short: "SAUCE", "FOR THE DRESSING". */
export function isInCapitals(text: string): boolean {
  return (
    text.length <= 50 &&
    /\p{Lu}.*\p{Lu}.*\p{Lu}/u.test(text) &&
    !/[\d½¼¾.,;]/u.test(text) &&
    text.split(" ").length <= 6 &&
    text === text.toUpperCase()
  );
}

const PART_WORD =
  /^(?:[\p{L}'’-]{1,20} ){0,3}(?:sauce|dressing|marinade|toppings?|base|fillings?|rub|glaze|gravy|assembly|garnish|dough|batter|crust|salad|slaw|bowl|vinaigrette|crumble|crumb|sides?|extras)$/iu;
const SOLD =
  /\b(?:soya?|fish|oyster|hot|chill?i|tomato|pasta|hoisin|barbecue|bbq|worcestershire|teriyaki|brown|apple|cranberry|tartare?|sriracha|pizza|enchilada|bread|salad|caesar|ranch|pie|stock) (?:sauce|dressing|base|dough|crust)$|^(?:gravy|batter|dough)$/iu;

function named(said: string): PartHeading {
  const { text: heading, makes } = withoutMakes(said);
  const optional = /\boptional\b/iu.test(heading);
  const whole = heading.replace(/,? ?\(optional\)/iu, "").replace(/ ?:/gu, "");
  const bare = whole.replace(/,? ?\boptional\b(?! (?:extras|toppings?|sides?)$)/iu, "").trim();
  const name = (bare === "" ? whole : bare)
    .replace(/^(?:for|to make) (?:the|a|an|your) (?=\S)/iu, "")
    .trim();
  return { name: plainCase(name), optional, makes };
}

/** "SAUCE" is named "Sauce", but "BBQ" stays. */
function plainCase(name: string): string {
  const said = name.length > 4 && isInCapitals(name) ? name.toLowerCase() : name;
  return said.slice(0, 1).toUpperCase() + said.slice(1);
}
