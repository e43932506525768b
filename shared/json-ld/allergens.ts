import type { AllergenIn, AllergensFound } from "../allergen/find.ts";
import { ALLERGENS_SAY } from "./words.ts";

/** What is known of a recipe's allergens, in one sentence that never says "free of". */
export function allergensSentence(found: AllergensFound): string {
  const contains = found.contains.map(nameOf);
  // One food may hide what another contains for sure: said once, by the surer word.
  const mayHide = found.mayHide.map(nameOf).filter((name) => !contains.includes(name));
  const said = [
    listed("contains", contains),
    listed("may hide", mayHide),
    listed("not known of", found.unknown),
    listed("a swap contains", found.inSwaps.contains.map(nameOf)),
    listed("a swap may hide", found.inSwaps.mayHide.map(nameOf)),
    listed("not known of the swap", found.inSwaps.unknown),
    "the packs decide",
  ];
  return `${ALLERGENS_SAY} ${said.filter((piece) => piece !== "").join("; ")}.`;
}

function listed(words: string, names: readonly string[]): string {
  return names.length === 0 ? "" : `${words} ${names.join(", ")}`;
}

function nameOf({ allergen }: AllergenIn): string {
  return allergen;
}
