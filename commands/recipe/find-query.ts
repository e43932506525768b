import { type AllergenRemark, readAllergens } from "../../shared/allergen/read.ts";
import {
  type RangeProblem,
  readEnergyRange,
  readProteinRange,
} from "../../shared/book/read-range.ts";
import type { BookQuery, FigureRange } from "../../shared/book/types.ts";
import type { Allergen } from "../../shared/food/types.ts";
import type { LabelStyle } from "../../shared/label/types.ts";
import type { Outcome } from "../../shared/outcome.ts";
import { excerpt } from "../../shared/words/problems.ts";
import { Refusal } from "../kit/command.ts";
import { sayFreeOfProblem, sayFreeOfRemark, sayRangeProblem } from "./find-words.ts";

/** What is asked, as typed. */
export interface FindAsked {
  readonly words?: string | undefined;
  readonly uses?: string | undefined;
  readonly energy?: string | undefined;
  readonly protein?: string | undefined;
  readonly freezes?: boolean | undefined;
  readonly "free-of"?: string | undefined;
}

export interface FindRequest {
  readonly query: BookQuery;
  /** What was taken for more, or for another thing, than was typed. */
  readonly remarks: readonly string[];
}

/** Reads all that is asked, or refuses with a sentence for each thing that is not understood. */
export function readFind(
  asked: FindAsked,
  { own, style }: { readonly own: readonly Allergen[]; readonly style: LabelStyle },
): FindRequest {
  const faults: string[] = [];
  const range = (
    text: string | undefined,
    read: (text: string) => Outcome<FigureRange, RangeProblem>,
    figure: "energy" | "protein",
  ): FigureRange | null => {
    const value = text === undefined ? null : read(text);
    if (value === null || value.ok) return value?.value ?? null;
    faults.push(sayRangeProblem(value.problem, figure));
    return null;
  };
  const energyKcal = range(asked.energy, readEnergyRange, "energy");
  const proteinG = range(asked.protein, readProteinRange, "protein");
  const free = readFreeOf(asked["free-of"] ?? "", own);
  const uses = inHand(asked.uses ?? "");
  if (asked.uses !== undefined && uses.length === 0) faults.push(noFoods(asked.uses));
  faults.push(...free.faults);
  if (faults.length > 0) throw new Refusal(faults);
  return {
    query: {
      style,
      words: asked.words ?? "",
      uses,
      energyKcal,
      proteinG,
      freezes: asked.freezes ?? null,
      freeOf: free.allergens,
    },
    remarks: free.remarks.map(sayFreeOfRemark),
  };
}

function noFoods(typed: string): string {
  return `“${excerpt(typed)}” names no foods: type such as chicken thigh, rice, yoghurt.`;
}

const AMOUNT =
  /^(?:(?:about|some|a|an|half an?|\d[\d.,/½¼¾]*) ?(?:(?:k?g|ml|l|lbs?|oz|tins?|cups?)\b)?(?: of\b)? ?)(?=\p{L})/iu;

/** The foods named, without amounts: what is asked is what uses them. */
function inHand(text: string): readonly string[] {
  return text
    .split(/[,;\n]| and | & /u)
    .map((name) => name.trim().replace(AMOUNT, "").trim())
    .filter((name) => /\p{L}/u.test(name));
}

const MINE = /\b(?:mine|my own|my allergen(?:s|ies)?|my allerg(?:y|ies)|what i avoid)\b/giu;

function readFreeOf(text: string, own: readonly Allergen[]) {
  const none = { allergens: [] as readonly Allergen[], remarks: [] as readonly AllergenRemark[] };
  if (text === "") return { ...none, faults: [] };
  const rest = text.replace(MINE, " ");
  const asksOwn = rest !== text;
  if (asksOwn && own.length === 0) {
    return {
      ...none,
      faults: [
        `You have not said what you avoid: type /me allergens: first, or name it here, such as free-of:milk, nuts.`,
      ],
    };
  }
  const isMore = /\p{L}/u.test(rest.replace(/\band\b/giu, ""));
  if (!isMore && asksOwn) return { ...none, allergens: own, faults: [] };
  const read = readAllergens(rest);
  if (!read.ok) return { ...none, faults: [sayFreeOfProblem(read.problem)] };
  const all = new Set([...(asksOwn ? own : []), ...read.value.allergens]);
  return { allergens: [...all], remarks: read.value.remarks, faults: [] };
}
