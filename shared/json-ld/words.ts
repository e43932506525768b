import { partHeading } from "../recipe/write-layout.ts";

/** Names of the sections below the ingredients in documents of ours. */
export const SECTIONS = { steps: "Steps", keeping: "Keeping", reheating: "Reheating" } as const;

/** What a document of ours says of its allergens starts with this: they are found anew when it is read. */
export const ALLERGENS_SAY = "Allergens by the food table, every part in it:";

/** A part's heading as a name: "Sauce (optional)". */
export function partName(part: { readonly name: string; readonly optional: boolean }): string {
  return partHeading(part.name, part.optional).replace(/:$/u, "");
}

/** The parts in words, for readers that show only the flat list of ingredients. */
export function partsSentence(names: readonly string[]): string {
  return `Made in parts: ${names.join("; ")}.`;
}
