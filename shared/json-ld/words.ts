import { type PartPieces, partHeading } from "../recipe/write-layout.ts";

/** Names of the sections below the ingredients in documents of ours. */
export const SECTIONS = { steps: "Steps", keeping: "Keeping", reheating: "Reheating" } as const;

/** What a document of ours says of its allergens starts with this: they are found anew when it is read. */
export const ALLERGENS_SAY = "Allergens by the food table, every part in it:";

/** A part's heading as a name: "Sauce (makes 300 g, 180 g used) (optional)". */
export function partName(part: Pick<PartPieces, "name" | "optional" | "makes">): string {
  return partHeading(part.name, part.optional, part.makes).replace(/:$/u, "");
}

/** The parts in words, for readers that show only the flat list of ingredients. */
export function partsSentence(names: readonly string[]): string {
  return `Made in parts: ${names.join("; ")}.`;
}

const BULLET = /^(?:[-*•‣·–—▢□☐]|\+) ?(?=[\p{L}\d½¼¾⅓⅔(])/u;
const HEADING = /:(?: ?\(optional\))?$/iu;

/** An entry of a list of ingredients without a bullet that somebody left in. */
export function withoutBullet(entry: string): string {
  return entry.replace(BULLET, "");
}

/** Whether an entry is the heading of what follows: the standard has none, so they stand in the list. */
export function isHeading(entry: string): boolean {
  return HEADING.test(entry);
}

/** Whether an entry is taken for an ingredient, word for word. */
export function isPlainEntry(entry: string): boolean {
  return withoutBullet(entry) === entry && !isHeading(entry);
}
