import type { AllergenProblem, AllergenRemark } from "../../shared/allergen/read.ts";
import type { RangeProblem } from "../../shared/book/read-range.ts";
import type { BookEntry, BookQuery, FigureRange } from "../../shared/book/types.ts";
import { ALLERGENS } from "../../shared/food/types.ts";
import type { LabelStyle } from "../../shared/label/types.ts";
import { usFigure } from "../../shared/label/us.ts";
import { sumsBy } from "../../shared/nutrition/sum.ts";
import type { NutrientSums } from "../../shared/nutrition/types.ts";
import { writeFigure } from "../../shared/nutrition/write.ts";
import { count } from "../../shared/words/plural.ts";
import { excerpt } from "../../shared/words/problems.ts";
import { listed } from "../kit/say-problem.ts";

const EXAMPLES = {
  energy: "400-600, under 500 or at least 300",
  protein: "at least 30, 30-45 or under 20",
} as const;

export function sayRangeProblem(problem: RangeProblem, figure: "energy" | "protein"): string {
  const unit = figure === "energy" ? "kcal" : "g";
  switch (problem.code) {
    case "range not understood":
      return `“${problem.text}” is no range of ${figure} I understand: type such as ${EXAMPLES[figure]} (${unit} a portion).`;
    case "range needs a side":
      return `${problem.figure} ${unit} could be a floor or a ceiling: type under ${problem.figure}, at least ${problem.figure}, or a range such as ${Math.max(0, problem.figure - 50)}-${problem.figure + 50}.`;
    case "range backwards":
      return `The range of ${figure} from ${Math.round(problem.from)} to ${Math.round(problem.to)} runs backwards: type the smaller figure first.`;
  }
}

export function sayFreeOfProblem({ texts }: AllergenProblem): string {
  const quoted = texts.slice(0, 4).map((text) => `“${excerpt(text)}”`);
  return `I cannot search for what is free of ${listed(quoted)}: type from ${ALLERGENS.join(", ")}, or mine for what you told /me.`;
}

export function sayFreeOfRemark({ note, said, allergens }: AllergenRemark): string {
  switch (note) {
    case "tree nuts alone":
      return "Tree nuts do not take in peanut: type nuts for both.";
    case "wheat alone":
      return "Wheat does not take in barley, rye and oats: type gluten for those.";
    default:
      return `“${excerpt(said)}” was taken for ${and(allergens)}.`;
  }
}

/** "a, b and c"; of many the first and how many more. */
export function and(names: readonly string[], most = 6): string {
  const shown = names.slice(0, most).map(excerpt);
  const more = names.length - shown.length;
  if (more > 0) return `${shown.join(", ")} and ${more} more`;
  const last = shown.at(-1) ?? "";
  return shown.length < 2 ? last : `${shown.slice(0, -1).join(", ")} and ${last}`;
}

/** What was asked, in few words: “chicken”, uses rice, 400 to 600 kcal, freezes, free of milk. */
export function sayQuery({
  words,
  uses,
  energyKcal,
  proteinG,
  freezes,
  freeOf,
}: BookQuery): string {
  return [
    words === "" ? "" : `“${excerpt(words)}”`,
    uses.length === 0 ? "" : `uses ${listed(uses.map(excerpt))}`,
    sayRange(energyKcal, "kcal"),
    sayRange(proteinG, "g protein"),
    freezes === null ? "" : FREEZES[freezes ? "well" : "no"],
    freeOf.length === 0 ? "" : `free of ${and(freeOf, ALLERGENS.length)}`,
  ]
    .filter((piece) => piece !== "")
    .join(", ");
}

const FREEZES = { well: "freezes well", no: "does not freeze well" } as const;

function sayRange(range: FigureRange | null, unit: string): string {
  if (range === null) return "";
  const [from, to] = [range.from, range.to].map((figure) => Math.round((figure ?? 0) * 10) / 10);
  if (range.to === null) return `at least ${from} ${unit}`;
  return range.from === null ? `at most ${to} ${unit}` : `${from} to ${to} ${unit}`;
}

/** "512 kcal · 40 g protein", a portion, by the rules of the style as on the card. */
export function figuresOf({ energyKcal, proteinG }: BookEntry, style: LabelStyle): string {
  const write = style === "us" ? usText : writeFigure;
  const energy = write(
    sumsBy(() => energyKcal[style]),
    "energyKcal",
  );
  const protein = write(
    sumsBy(() => proteinG),
    "proteinG",
  );
  return [
    energy === NOT_KNOWN ? `energy ${NOT_KNOWN}` : energy,
    protein === NOT_KNOWN ? `protein ${NOT_KNOWN}` : `${protein} protein`,
  ].join(" · ");
}

function usText(sums: NutrientSums, key: "energyKcal" | "proteinG"): string {
  return usFigure(sums, key).text;
}

const NOT_KNOWN = "not known";

export function sayFreezing({ freezes, freezerMonths }: BookEntry): string {
  if (freezes === "no") return "does not freeze";
  if (freezes === "poorly") return "freezes badly";
  return freezerMonths === null ? "freezes" : `freezes ${count(freezerMonths, "month")}`;
}
