import { foldWords } from "../words/fold.ts";
import { singular } from "../words/plural.ts";
import { excerpt } from "../words/problems.ts";
import type { Draft, DraftPart } from "./draft.ts";
import type { RecipeProblem } from "./problems.ts";
import { NOTHING_STATED } from "./read-keeping.ts";
import type { StatedKeeping } from "./types.ts";

/** What is stated for the whole and for each part, and the faults found on the way. */
export interface StatedFor {
  readonly whole: StatedKeeping;
  readonly part: (part: DraftPart) => StatedKeeping;
  readonly problems: readonly RecipeProblem[];
}

/** Gives every statement to the part it names; of several about one thing the shorter counts. */
export function keepingOf(draft: Draft, title: string, portionWord: string): StatedFor {
  const stated = new Map<DraftPart | null, StatedKeeping>();
  const problems: RecipeProblem[] = [];
  const whole = (name: string) => (meansWhole(name, portionWord, title) ? null : undefined);
  for (const { line, text, part, clause } of draft.keeping) {
    const named =
      clause.about === "" ? part : (partNamed(draft.parts, clause.about) ?? whole(clause.about));
    if (named === undefined) {
      const parts = draft.parts.map(({ name }) => name);
      problems.push({ code: "keeping of unknown part", line, name: clause.about, parts });
      continue;
    }
    if (clause.outOfRange)
      problems.push({
        code: "keeping out of range",
        line,
        text: excerpt(text),
      });
    stated.set(named, shorter(stated.get(named) ?? NOTHING_STATED, clause.keeping));
  }
  return {
    whole: stated.get(null) ?? NOTHING_STATED,
    part: (part) => stated.get(part) ?? NOTHING_STATED,
    problems,
  };
}

/** Whether a name means the whole: "the wraps" of a recipe that makes wraps, "the bake" of a bean bake. */
function meansWhole(name: string, portionWord: string, title: string): boolean {
  const said = wordsOf(name);
  const own = wordsOf(title);
  const word = said.join(" ");
  if (word === portionWord || word === "portion") return true;
  return said.at(-1) === own.at(-1) && said.every((one) => own.includes(one));
}

function wordsOf(text: string): readonly string[] {
  return foldWords(text).split(" ").map(singular);
}

/** By its whole name, else by words that only one part's name has ("the sauce"). */
function partNamed(parts: readonly DraftPart[], name: string): DraftPart | undefined {
  const exact = parts.find((part) => foldWords(part.name) === foldWords(name));
  if (exact !== undefined) return exact;
  const said = wordsOf(name);
  const holding = parts.filter((part) => said.every((word) => wordsOf(part.name).includes(word)));
  return holding.length === 1 ? holding[0] : undefined;
}

const WORST_FIRST = ["no", "poorly", "well"] as const;

function shorter(a: StatedKeeping, b: StatedKeeping): StatedKeeping {
  const freezes = WORST_FIRST.find((word) => a.freezes === word || b.freezes === word) ?? null;
  const reason = [a, b].find((one) => one.freezes === freezes && one.reason !== "")?.reason ?? "";
  return {
    fridgeDays: least(a.fridgeDays, b.fridgeDays),
    freezerMonths: freezes === "no" ? null : least(a.freezerMonths, b.freezerMonths),
    freezes,
    reason,
  };
}

function least(a: number | null, b: number | null): number | null {
  return a === null || b === null ? (a ?? b) : Math.min(a, b);
}
