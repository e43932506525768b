import type { AllergenProblem, AllergenRemark } from "../../shared/allergen/read.ts";
import { ALLERGENS, type Allergen } from "../../shared/food/types.ts";
import type { TableProblem } from "../../shared/people/read-table.ts";
import { VULNERABLE } from "../../shared/people/types.ts";
import { excerpt } from "../../shared/words/problems.ts";

/** "a, b and c"; the whole list, for it is a closed one. */
export function allOf(names: readonly string[], last: "and" | "or" = "and"): string {
  const end = names.at(-1) ?? "";
  return names.length < 2 ? end : `${names.slice(0, -1).join(", ")} ${last} ${end}`;
}

function quoted(texts: readonly string[]): string {
  return allOf(texts.slice(0, 4).map((text) => `“${excerpt(text)}”`));
}

export function sayAllergenProblem({ texts }: AllergenProblem): string {
  const are = texts.length === 1 ? "is not an allergen" : "are not allergens";
  return `${quoted(texts)} ${are} I can watch for. Type from ${allOf(ALLERGENS, "or")}, or none; for anything else read each card and pack.`;
}

export function sayTableProblem({ texts }: TableProblem): string {
  const says = texts.length === 1 ? "says" : "say";
  return `I do not know who ${quoted(texts)} ${says}. Type from ${allOf(VULNERABLE, "or")}, or nobody.`;
}

/** What a member no longer avoids after this: a list typed anew replaces the old one. */
export function droppedAllergens(
  before: readonly Allergen[],
  after: readonly Allergen[],
): readonly string[] {
  const gone = before.filter((one) => !after.includes(one));
  if (gone.length === 0) return [];
  return [
    `No longer watched for: ${allOf(gone)}. A new list replaces the old one: to keep both, type /me allergens:${[...before, ...after.filter((one) => !before.includes(one))].join(", ")}.`,
  ];
}

export function sayAllergenRemark({ note, said, allergens }: AllergenRemark): string {
  switch (note) {
    case "spelling":
      return `I took “${said}” for ${allOf(allergens)}. If that is wrong, type it again.`;
    case "nuts with peanut":
      return "“nuts” counts as tree nuts and peanut, to be safe. Peanut is a pulse and a list of its own: type tree nuts if you can eat it.";
    case "tree nuts alone":
      return "Tree nuts do not take in peanut: type nuts if you avoid both.";
    case "shellfish are two":
      return "“shellfish” counts as crustaceans (prawn, crab) and molluscs (mussel, squid): type one of them if it is only that.";
    case "seafood is three":
      return "“seafood” counts as fish, crustaceans and molluscs: type only those you avoid if it is fewer.";
    case "lactose is milk":
      return "“lactose” counts as milk, all of it: lactose-free milk is milk too, and I warn of it as well.";
    case "gluten and oats":
      return "Gluten here takes in wheat, barley, rye and oats; oats sold as gluten-free too.";
    case "wheat alone":
      return "Wheat does not take in barley, rye and oats: type gluten if you avoid those.";
    case "whole group":
      return `I cannot watch for ${said} alone: it counts as ${allOf(allergens)}, all kinds.`;
  }
}
